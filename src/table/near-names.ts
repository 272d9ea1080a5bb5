/** Names that are nearly what somebody typed, so that a slip of the finger is told and not a list. */
import { distance } from 'fastest-levenshtein';
import type { InputProblem } from '../errors';
import { labelKey } from './label';

/** Names told at most where some are near. */
export const MOST_NEAR = 3;
/** Names that are listed whole where none is near. */
const MOST_LISTED = 12;
/** Letters of what was typed, from which on a longer name that has them all in a row is near. */
const LEAST_PART = 3;

/**
 * At most three of the names, nearest first: those that become the text by changing, adding or taking
 * away a third of their letters at most, or that contain it; where there is none, those that it begins with. Two letters exchanged count as one change.
 * Letters of either case, without blanks, hyphens and underscores.
 */
export function nearNames(text: string, names: readonly string[]): readonly string[] {
  const key = labelKey(text);
  if (key === '') return [];
  const all = [...new Set(names)].map((name) => ({ name, key: labelKey(name) }));
  const alike = all
    .map((known) => ({ ...known, slips: slipsBetween(key, known.key) }))
    .filter(
      (known) =>
        known.slips <= Math.min(key.length, known.key.length) / 3 ||
        (key.length >= LEAST_PART && known.key.includes(key)),
    )
    .toSorted((a, b) => a.slips - b.slips);
  const begun = all.filter((known) => known.key.length >= LEAST_PART && key.startsWith(known.key));
  return (alike.length > 0 ? alike : begun).slice(0, MOST_NEAR).map(({ name }) => name);
}

function slipsBetween(a: string, b: string): number {
  const slips = distance(a, b);
  const isExchange = slips === 2 && [...a].toSorted().join('') === [...b].toSorted().join('');
  return isExchange ? 1 : slips;
}

/** What a refusal says of the names there are: those that are near, or else what is allowed. */
export function wantedNames(
  text: string,
  names: readonly string[],
  allowed = listedNames(names),
): Pick<InputProblem, 'near' | 'allowed'> {
  const near = nearNames(text, names);
  return near.length > 0 ? { near } : { allowed };
}

/** What a refusal says of the sizes there are: all of a few, or those of many that are nearest. */
export function wantedSizes(
  text: string,
  sizes: readonly string[],
): Pick<InputProblem, 'near' | 'allowed'> {
  if (sizes.length <= MOST_LISTED) return { allowed: sizes.join(', ') };
  const offOf = (size: string): number => Math.abs(Number(size) - Number(text));
  const near = sizes
    .filter((size) => Number.isFinite(offOf(size)))
    .toSorted((a, b) => offOf(a) - offOf(b))
    .slice(0, MOST_NEAR);
  return near.length > 0 ? { near } : wantedNames(text, sizes);
}

/** All names where they are few, or their number and the first of them. */
export function listedNames(names: readonly string[]): string {
  return names.length <= MOST_LISTED
    ? names.join(', ')
    : `one of ${names.length} names, such as ${names.slice(0, MOST_NEAR).join(', ')}`;
}
