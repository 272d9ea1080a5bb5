/** The sizes of a rule sheet in their order, and the base among them. */
import { labelRanks } from '../chart/label-order';
import type { Place } from '../errors';
import { InputError } from '../errors';
import { matchSize } from '../table/name-match';
import { wantedSizes } from '../table/near-names';
import { checkSizeCount } from '../table/size-label';
import type { TypedCell } from '../table/typed-table';
import type { RuleSheet } from './rule-sheet';

/** The sizes of a range. */
export interface SizeList {
  /** Labels from the smallest to the largest. */
  readonly labels: readonly string[];
  /** Place of the base among them. */
  readonly base: number;
}

/**
 * The sizes that are known, or else those that the sheet lists: by number, or in their order there.
 * `orElse` is what could tell them beside the sheet, for the words of a refusal (`, or a chart`).
 * Throws InputError `base-missing`, `size-missing`, `size-unknown`, `sizes-too-few` or `file-too-large`.
 */
export function sizeList(
  { file, sizes, sizesKnown }: RuleSheet,
  base: string | undefined,
  orElse = '',
): SizeList {
  if (base === undefined) {
    throw new InputError('base-missing', {
      what: 'nothing says which size the pattern shows',
      allowed: 'a line such as `# base: 12` in the pattern or the rule sheet',
      orField: 'base',
      place: { file },
    });
  }
  const labels = sizesKnown ? sizes : inOrder(sizes, base, file, orElse);
  const known = matchSize(base, labels);
  if (known === undefined) {
    throw new InputError('size-unknown', {
      what: 'the range has no such base size',
      ...wantedSizes(base, labels),
      got: base,
      place: { file },
    });
  }
  checkSizeCount(labels.length, { file });
  if (labels.length < 2) {
    throw new InputError('sizes-too-few', {
      what: 'one size alone is no range',
      allowed: 'two sizes or more',
      got: labels.join(', '),
      place: { file },
    });
  }
  return { labels, base: labels.indexOf(known) };
}

/** `8 - 16` and `8 to 16`, which leave out the sizes between. */
const RANGE = /^(?:[^\s,;]+ ?[-\u2013\u2192>]+ ?[^\s,;]+|\S+ to \S+)$/iu;

/**
 * The sizes of `8, 10, 12`, from the smallest to the largest, however they are listed. Throws InputError
 * `size-twice`, `sheet-malformed` where they fall and it cannot be told which are the smaller, and
 * `size-missing` for a range that does not name those between.
 */
export function statedSizes({ text, place }: TypedCell): readonly string[] {
  const parts = /[,;]/u.test(text) ? /[,;]|\s(?:and|&)\s/u : /\s(?:and|&)\s|\s/u;
  if (RANGE.test(text)) {
    throw new InputError('size-missing', {
      what: 'the sizes are stated by their ends, and those between are not named',
      allowed: 'each size, from the smallest to the largest, such as "# sizes: 8, 10, 12"',
      got: text,
      place,
    });
  }
  const listed = text
    .split(parts)
    .map((label) => label.trim())
    .filter((label) => label !== '');
  const labels = smallestFirst(listed, place);
  const twice = labels.find((label, i) => labels.indexOf(label) !== i);
  if (twice === undefined) return labels;
  throw new InputError('size-twice', {
    what: 'a size is stated twice',
    allowed: 'each size once, from the smallest to the largest',
    got: twice,
    place,
  });
}

/** By their names, of which 00 is smaller than 0; what names do not tell stays as listed, unless it falls. */
function smallestFirst(labels: readonly string[], place: Place): readonly string[] {
  const ranks = (some: readonly string[]): readonly number[] | undefined =>
    labelRanks(some.map((label) => label.toUpperCase()));
  const all = ranks(labels);
  if (all !== undefined) {
    const order = labels.map((label, i) => ({ label, rank: all[i] ?? NaN }));
    return order
      .toSorted((a, b) => a.rank - b.rank || b.label.length - a.label.length)
      .map(({ label }) => label);
  }
  const falling = labels.find((label, i) => {
    const [before = 0, own = 0] = ranks([labels[i - 1] ?? label, label]) ?? [];
    return own < before;
  });
  if (falling === undefined) return labels;
  throw new InputError('sheet-malformed', {
    what: 'the sizes are not listed from the smallest to the largest',
    allowed: 'the smallest first, so that each step leads to a larger size',
    got: falling,
    place,
  });
}

/** Numbers count up; other labels go by their names, or stand as the sheet first has them. */
function inOrder(
  listed: readonly string[],
  base: string,
  file: string,
  orElse: string,
): readonly string[] {
  const all = matchSize(base, listed) === undefined ? [...listed, base] : listed;
  if (listed.length > 0 && all.every((label) => /^\d+$/u.test(label))) {
    return all.toSorted((a, b) => Number(a) - Number(b) || b.length - a.length);
  }
  if (all === listed) return smallestFirst(listed, { file });
  throw new InputError('size-missing', {
    what: 'the sizes and their order cannot be told from the rule sheet',
    allowed: `a line such as \`# sizes: XS, S, M, L\` in it${orElse}`,
    got: listed.join(', '),
    place: { file },
  });
}
