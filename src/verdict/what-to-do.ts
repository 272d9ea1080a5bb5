/** The remedy of findings as a sentence: the text of their check with their own numbers. */
import type { Finding, Quantity } from '../check/finding';
import { roundTo } from '../grade/rounding';
import type { LengthDisplay, LengthUnit } from '../units';
import { fromMillimeters, inchFraction, showNumber, toMillimeters, trimmed } from '../units';
import { REMEDIES } from './remedies';

/** Names said before the rest is counted. */
const NAMED = 4;
/** mm. From here on a length is told to an eighth of an inch; below it to a thirty-second. */
const COARSE_FROM = 25;
/** mm. Shorter ones are not measured but compared, in one unit and to its last decimal. */
const FINE_BELOW = 3;

/**
 * What to do about one finding, or about several of one check and severity: lengths in the unit of
 * `display`, what differs as a range; what a check without a remedy says itself. Without capital and full
 * stop; empty for what held.
 */
export function whatToDo(findings: readonly Finding[], display: LengthDisplay): string {
  const [first] = findings;
  if (first === undefined || first.severity === 'ok') return '';
  const remedy = REMEDIES[first.check];
  if (remedy === undefined) return first.message;
  const { note } = remedy;
  const texts = first.severity === 'note' && note !== undefined ? [note] : remedy.act;
  const filled = texts.map((text) => fill(text, findings, display));
  return filled.find((text) => text !== undefined) ?? first.message;
}

/** Undefined where a brace cannot be filled by every finding. */
function fill(
  text: string,
  findings: readonly Finding[],
  display: LengthDisplay,
): string | undefined {
  let isFull = true;
  const words = text.replace(/\{(\w+)\}/gu, (_, name: string) => {
    const value = valueOf(name, findings, display);
    if (value === '') isFull = false;
    return value;
  });
  return isFull ? words : undefined;
}

function valueOf(name: string, findings: readonly Finding[], display: LengthDisplay): string {
  const numbers = (of: (finding: Finding) => number | undefined): string =>
    range(findings.map(of), findings[0]?.quantity ?? 'number', display);
  switch (name) {
    case 'pieces':
      return listed(findings.map(({ piece }) => piece));
    case 'subjects':
      return listed(findings.map(({ subject }) => subject));
    case 'measured':
      return numbers(({ measured }) => measured);
    case 'expected':
      return numbers(({ expected }) => expected);
    case 'most':
      return numbers(() => Math.max(...findings.map((finding) => gapOf(finding) ?? NaN)));
    default:
      return factOf(name, findings, display);
  }
}

function gapOf({ measured, expected }: Finding): number | undefined {
  return measured === undefined || expected === undefined
    ? undefined
    : Math.abs(measured - expected);
}

function factOf(name: string, findings: readonly Finding[], display: LengthDisplay): string {
  const facts = findings.map(({ facts: own }) => own?.[name]);
  if (facts.includes(undefined)) return '';
  const texts = facts.filter((fact) => typeof fact === 'string');
  if (texts.length > 0) return listed(texts);
  return lengths(
    facts.filter((fact) => typeof fact === 'number'),
    display,
  );
}

/** `front and back`; empty where one has no name. */
function listed(names: readonly string[]): string {
  if (names.includes('')) return '';
  const each = [...new Set(names)];
  const told = each.length > NAMED ? each.slice(0, NAMED - 1) : each;
  const rest = each.length - told.length;
  const all = rest > 0 ? [...told, `${rest} more`] : told;
  const last = all.at(-1) ?? '';
  return all.length < 2 ? last : `${all.slice(0, -1).join(', ')} and ${last}`;
}

/** `15.1 to 18.2 in`; empty where one has no number. */
function range(
  values: readonly (number | undefined)[],
  quantity: Quantity,
  display: LengthDisplay,
): string {
  const known = values.filter((value) => Number.isFinite(value ?? NaN)) as readonly number[];
  if (known.length < values.length || known.length === 0) return '';
  const [least, most] = [Math.min(...known), Math.max(...known)];
  if (quantity !== 'length') {
    const [from, to] = [trimmed(least, 3), trimmed(most, 3)];
    return (from === to ? to : `${from} to ${to}`) + (quantity === 'angle' ? ' degrees' : '');
  }
  return lengths(known, display);
}

/** `15 1/8 to 18 1/4 in (38.5 to 46.4 cm)`: what somebody acts on wants no thousandths. */
function lengths(values: readonly number[], display: LengthDisplay): string {
  const other = display.unit === 'in' ? 'cm' : 'in';
  const told = (unit: LengthUnit): string => {
    const [from = '', to = ''] = [Math.min(...values), Math.max(...values)].map((mm) =>
      number(mm, unit),
    );
    return `${from === to ? '' : `${from} to `}${to} ${unit}`;
  };
  const isFine = Math.max(...values.map(Math.abs)) < FINE_BELOW;
  return isFine ? told(display.unit) : `${told(display.unit)} (${told(other)})`;
}

function number(mm: number, unit: LengthUnit): string {
  if (Math.abs(mm) < FINE_BELOW) return showNumber(mm, { unit, fractions: false });
  if (unit !== 'in') return trimmed(fromMillimeters(mm, unit), unit === 'mm' ? 0 : 1);
  const parts = Math.abs(mm) < COARSE_FROM ? 32 : 8;
  return inchFraction(roundTo(mm, toMillimeters(1 / parts, 'in')), parts);
}
