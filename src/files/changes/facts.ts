/** Single numbers and words of a version of something, and those that a later version has otherwise. */
import { WRITTEN_ALIKE } from '../../tolerance';
import { millimeters } from './rows';

/** One number or word of a version. */
export interface Fact {
  /** What it is of, such as `point`. */
  readonly of: string;
  /** What it belongs to, such as `front.side_hip`, and the size; empty where it has none. */
  readonly name: string;
  readonly size: string;
  /** Which of its numbers, such as `x`. */
  readonly value: string;
  readonly text: string;
  /** `in`, `cm` or `mm`; empty for what is no length. */
  readonly unit: string;
}

/** One number or word that changed; empty `before` where it came, empty `after` where it went. */
export interface VersionRow extends Omit<Fact, 'text' | 'unit'> {
  readonly before: string;
  readonly after: string;
  /** mm by which a length grew; undefined for what is no length on both sides. */
  readonly growth: number | undefined;
}

/**
 * All that changed, in the order of the earlier version, then what came. A length counts as changed where its
 * millimeters differ, in whatever unit each version has it.
 */
export function changedFacts(
  earlier: readonly Fact[],
  now: readonly Fact[],
): readonly VersionRow[] {
  const [before, after] = [byPlace(earlier), byPlace(now)];
  const keys = [...new Set([...before.keys(), ...after.keys()])];
  return keys.flatMap((key) => changed(before.get(key), after.get(key)));
}

function byPlace(facts: readonly Fact[]): ReadonlyMap<string, Fact> {
  return new Map(
    facts.map((fact) => [JSON.stringify([fact.of, fact.name, fact.size, fact.value]), fact]),
  );
}

function changed(before: Fact | undefined, after: Fact | undefined): readonly VersionRow[] {
  const shown = after ?? before;
  if (shown === undefined) return [];
  const [was, is] = [lengthOf(before), lengthOf(after)];
  const isSame =
    was === undefined || is === undefined
      ? (before?.text ?? '') === (after?.text ?? '')
      : Math.abs(is - was) <= WRITTEN_ALIKE;
  if (isSame) return [];
  const told = (fact: Fact | undefined): string =>
    fact === undefined ? '' : fact.unit === '' ? fact.text : `${fact.text} ${fact.unit}`;
  const { of, name, size, value } = shown;
  const growth = was === undefined || is === undefined ? undefined : is - was;
  return [{ of, name, size, value, before: told(before), after: told(after), growth }];
}

/** mm of a length; undefined for a formula, a word or an empty cell. */
function lengthOf(fact: Fact | undefined): number | undefined {
  if (fact === undefined || fact.text === '') return undefined;
  const mm = millimeters(fact.text, fact.unit);
  return Number.isFinite(mm) ? mm : undefined;
}
