/** A derivation as headings, sentences and tables, for whichever writer shows it. */
import { fraction, plus, quotient, times } from '../../formula/fraction';
import type { LinearForm } from '../../formula/linear-form';
import type { LengthDisplay } from '../../units';
import { UNIT_WORDS, fromMillimeters, showLength, toMillimeters, trimmed } from '../../units';
import type { AxisDerivation, Derivation, DerivedStep } from './derivation';
import { exactText, lengthFraction } from './exact';
import { rulesInWords } from './share-words';
import { sumText } from './sum-text';
import { addsUp } from './derivation';
import { ARITHMETIC, SAME_PLACE } from '../../tolerance';

/** One thing on the board. The first row of a table is its header. */
export type BoardLine =
  | { readonly kind: 'heading'; readonly words: string }
  | { readonly kind: 'words'; readonly words: string }
  | { readonly kind: 'formula'; readonly words: string }
  | { readonly kind: 'table'; readonly rows: readonly (readonly string[])[] };

/** The whole derivation; lengths in the unit of `display`, as exact fractions. */
export function board(derived: Derivation, display: LengthDisplay): readonly BoardLine[] {
  const { piece, point, base, zero, axes } = derived;
  return [
    heading(`The grade rule of ${piece}.${point}`),
    words(
      `Base ${base}, zero at ${zero}, lengths in ${UNIT_WORDS[display.unit]}. x runs from the ` +
        'center line to the side, y down from the waist.',
    ),
    ...axes.flatMap((axis) => axisLines(axis, derived, display)),
  ];
}

function heading(text: string): BoardLine {
  return { kind: 'heading', words: text };
}

function words(text: string): BoardLine {
  return { kind: 'words', words: text };
}

function axisLines(
  axis: AxisDerivation,
  derived: Derivation,
  display: LengthDisplay,
): readonly BoardLine[] {
  const name = `d${axis.axis}`;
  const { terms, steps } = axis;
  const opening = placeLines(axis, derived, display);
  if (terms.length === 0 && steps.every(({ move }) => Math.abs(move) < SAME_PLACE))
    return [
      ...opening,
      words(`Seen from the zero nothing that grows moves the point: ${name} is 0 in every size.`),
    ];
  return [
    ...opening,
    heading(`${name}: the rule`),
    ...ruleLines(axis, display),
    ...(steps.length === 0
      ? [words(`In the base size ${derived.base} every move is 0.`)]
      : stepLines(axis, derived, display)),
  ];
}

/** How the coordinate comes about, and what of the body moves it. */
function placeLines(
  { axis, chain, fromZero, named, reached }: AxisDerivation,
  { zero, point }: Derivation,
  { unit }: LengthDisplay,
): readonly BoardLine[] {
  const { links, together } = chain;
  const [, ...others] = links;
  const formula = (left: string, right: string): BoardLine => ({
    kind: 'formula',
    words: `${left} = ${right}`,
  });
  const summed = (form: LinearForm): string => sumText(form, unit);
  const beside = reached.filter((one) => !named.includes(one));
  const idle = named.filter((one) => !reached.includes(one));
  return [
    heading(`d${axis}: the formula`),
    ...(links.length === 0
      ? [words('No formula gives this coordinate: the piece is made from the finished panels.')]
      : links.map(({ name, given }) =>
          formula(name, typeof given === 'string' ? given : summed(given)),
        )),
    ...(others.some(({ isEnd }) => !isEnd) && together !== undefined
      ? [words('Put together:'), formula(`${point}.${axis}`, summed(together))]
      : []),
    ...(fromZero !== undefined && together !== undefined && summed(fromZero) !== summed(together)
      ? [words(`Seen from the zero, ${zero}:`), formula(`d${axis}`, summed(fromZero))]
      : []),
    words(
      reached.length === 0
        ? 'No measurement moves it.'
        : `Measurements that move it: ${reached.join(', ')}.`,
    ),
    ...(links.length > 0 && beside.length > 0
      ? [words(`By truing, and not by a formula above: ${beside.join(', ')}.`)]
      : []),
    ...(idle.length > 0 ? [words(`Named, but without effect here: ${idle.join(', ')}.`)] : []),
  ];
}

/** The rule in the words of a sample room, and its derivatives as a footnote. */
function ruleLines(
  { axis, kind, terms, rule }: AxisDerivation,
  { unit }: LengthDisplay,
): readonly BoardLine[] {
  if (terms.length === 0) return [words(`No one rule: it is ${rule}, so only the drafts tell.`)];
  const slopes = terms.map(
    ({ measurement, share }) => `by ${measurement} ${exactText(share, 'in')}`,
  );
  const one = UNIT_WORDS[unit].replace(/(?:e?s)$/u, '');
  const footnote = `(As derivatives: ${slopes.join(', ')}, in ${UNIT_WORDS[unit]} for one ${one}`;
  return [
    words(`${kind === 'linear' ? '' : 'At the base, '}d${axis} is ${rulesInWords(terms)}.`),
    words(
      {
        linear: `What is the same in every size, such as ease, falls away. ${footnote}.)`,
        smooth: `It holds at the base size and bends away from it. ${footnote}, to four decimals.)`,
        implicit:
          'Truing moves the point too, so it is measured beside the base size. ' +
          `${footnote}, to four decimals.)`,
      }[kind],
    ),
  ];
}

function stepLines(
  axis: AxisDerivation,
  { ruler }: Derivation,
  display: LengthDisplay,
): readonly BoardLine[] {
  const name = `d${axis.axis}`;
  const near = [
    words(
      'The rule is not the same in every size, so the products only come near. What is applied ' +
        'is the difference of the two drafts, in the last column.',
    ),
  ];
  return [
    ...(axis.terms.length === 0
      ? []
      : [
          heading(`${name}: increments times the rule`),
          words('Each step is taken away from the base: the next size less the one before.'),
          productTable(axis, display),
          heading(`${name}: cumulative`),
          words('The steps are added up from the base outward.'),
          sumTable(axis, display),
          ...(axis.steps.every((step) => addsUp(step, toMillimeters(1, display.unit))) ? [] : near),
        ]),
    heading(`${name}: rounding`),
    words(
      `Rounded once, at the end, to ${showLength(ruler, { ...display, fractions: true })}; ` +
        'beside it what rounding every step would have given.',
    ),
    roundingTable(axis, display),
  ];
}

/** True where every figure is what it says, not the nearest decimal. */
function isExact({ kind, terms, steps }: AxisDerivation, { unit }: LengthDisplay): boolean {
  return (
    kind === 'linear' &&
    terms.every(({ share }) => Number.isInteger(share.top)) &&
    steps.every((step) => addsUp(step, toMillimeters(1, unit)))
  );
}

function productTable({ terms, steps }: AxisDerivation, { unit }: LengthDisplay): BoardLine {
  const text = (value: DerivedStep['step']): string => exactText(value, unit);
  const rows = steps.flatMap((step) =>
    step.terms.map(({ before, after, growth, product }, t) => [
      t === 0 ? `${step.from} to ${step.to}` : '',
      terms[t]?.measurement ?? '',
      `${text(after)} - ${text(before)} = ${text(growth)}`,
      `${factor(terms[t]?.share)} x ${text(growth)} = ${text(product)}`,
    ]),
  );
  return { kind: 'table', rows: [['step', 'measurement', 'increment', 'product'], ...rows] };
}

function factor(share: DerivedStep['step'] | undefined): string {
  return share === undefined ? '' : exactText(share, 'in');
}

function sumTable(axis: AxisDerivation, display: LengthDisplay): BoardLine {
  const { steps } = axis;
  const text = (value: DerivedStep['step']): string => exactText(value, display.unit);
  const rows = steps.map((step) => {
    const before = quotient(step.sum) - quotient(step.step);
    const start = Math.abs(before) < ARITHMETIC ? '0' : text(previous(steps, step));
    const sign = quotient(step.step) < 0 ? '-' : '+';
    const size = text(step.step).replace(/^-/u, '');
    return [
      step.to,
      `${start} ${sign} ${size} = ${text(step.sum)}`,
      moveText(step, isExact(axis, display), display),
    ];
  });
  return { kind: 'table', rows: [['size', 'sum', 'from the drafts'], ...rows] };
}

/** The sum before a step. */
function previous(steps: readonly DerivedStep[], step: DerivedStep): DerivedStep['sum'] {
  return steps.find(({ to }) => to === step.from)?.sum ?? step.sum;
}

function roundingTable(axis: AxisDerivation, display: LengthDisplay): BoardLine {
  const exact = isExact(axis, display);
  const rows = axis.steps.map((step) => {
    const off = (mm: number): string => {
      const rounded = lengthFraction(mm, display.unit);
      return exact
        ? exactText(plus(rounded, times(step.sum, fraction(-1))), display.unit)
        : decimals(mm - step.move, display);
    };
    const onRuler = (mm: number): string =>
      exactText(lengthFraction(mm, display.unit), display.unit);
    const { to, rounded, drifted } = step;
    const move = moveText(step, exact, display);
    return [to, move, onRuler(rounded), off(rounded), onRuler(drifted), off(drifted)];
  });
  const move = exact ? 'exact' : 'to 4 decimals';
  return {
    kind: 'table',
    rows: [['size', move, 'rounded once', 'off', 'rounded per step', 'off'], ...rows],
  };
}

/** The move that the drafts give: the fraction that it is, or four decimals. */
function moveText({ sum, move }: DerivedStep, exact: boolean, display: LengthDisplay): string {
  return exact ? exactText(sum, display.unit) : decimals(move, display);
}

function decimals(mm: number, { unit }: LengthDisplay): string {
  return trimmed(fromMillimeters(mm, unit), 4);
}

/** The board as Markdown. */
export function markdown(lines: readonly BoardLine[]): string {
  return lines
    .map((line, i) => {
      switch (line.kind) {
        case 'heading':
          return `${i === 0 ? '#' : '##'} ${line.words}\n`;
        case 'words':
          return `${line.words}\n`;
        case 'formula':
          return `    ${line.words}\n`;
        case 'table':
          return `${markdownTable(line.rows)}\n`;
      }
    })
    .join('\n');
}

function markdownTable([header = [], ...rows]: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [line(header), line(header.map(() => '---')), ...rows.map(line)].join('\n');
}
