/** The sizes of a rule sheet in their order, and the base among them. */
import type { SizeChart } from '../chart/size-chart';
import type { Place } from '../errors';
import { InputError } from '../errors';
import type { TableCell } from '../table/typed-table';

/** The sizes of a range. */
export interface SizeList {
  /** From the smallest to the largest. */
  readonly labels: readonly string[];
  /** Place of the base among them. */
  readonly base: number;
}

/** Whatever may tell the sizes of a range. */
export interface SizeSources {
  /** Name for messages. */
  readonly file: string;
  readonly chart: SizeChart | undefined;
  /** What `# sizes: 8, 10, 12` states. */
  readonly stated: TableCell | undefined;
  /** The size cells of the sheet, blank ones left out. */
  readonly cells: readonly TableCell[];
  /** The base as asked for or as a file states it; undefined if nobody does. */
  readonly base: string | undefined;
}

/**
 * The sizes of the chart; without one those that the sheet states, or else lists, in their order
 * there. Throws InputError `base-missing`, `size-missing`, `size-twice`, `size-unknown` or
 * `sizes-too-few`.
 */
export function sizeList(sources: SizeSources): SizeList {
  const { file, chart, stated, cells, base } = sources;
  if (base === undefined) {
    throw new InputError('base-missing', {
      what: 'nothing says which size the pattern shows',
      allowed: 'a line such as `# base: 12` in the pattern or the rule sheet',
      orField: 'base',
      place: { file },
    });
  }
  const labels =
    chart?.sizes ?? (stated === undefined ? listed(cells, base, file) : statedSizes(stated));
  const allowed = labels.join(', ');
  const unknown = cells.find(({ text }) => !labels.includes(text));
  if (unknown !== undefined) {
    refuse('a rule is for a size that the range does not have', unknown.text, unknown.place);
  }
  if (!labels.includes(base)) refuse('the range has no such base size', base, { file });
  if (labels.length < 2) {
    throw new InputError('sizes-too-few', {
      what: 'one size alone is no range',
      allowed: 'two sizes or more',
      got: allowed,
      place: { file },
    });
  }
  return { labels, base: labels.indexOf(base) };

  function refuse(what: string, got: string, place: Place): never {
    throw new InputError('size-unknown', { what, allowed, got, place });
  }
}

/** The sizes of `8, 10, 12`. Throws InputError `size-twice`. */
export function statedSizes({ text, place }: TableCell): readonly string[] {
  const labels = text.split(text.includes(',') ? /\s*,\s*/u : /[\s;]+/u).filter((s) => s !== '');
  const twice = labels.find((label, i) => labels.indexOf(label) !== i);
  if (twice === undefined) return labels;
  throw new InputError('size-twice', {
    what: 'a size is stated twice',
    allowed: 'each size once, from the smallest to the largest',
    got: twice,
    place,
  });
}

/** The sizes in the order in which they first appear; the base may be left out where all count up. */
function listed(cells: readonly TableCell[], base: string, file: string): readonly string[] {
  const labels = [...new Set(cells.map(({ text }) => text))];
  if (labels.includes(base)) return labels;
  const all = [...labels, base];
  if (labels.length > 0 && all.every((label) => /^\d+$/u.test(label))) {
    return all.toSorted((a, b) => Number(a) - Number(b));
  }
  throw new InputError('size-missing', {
    what: 'the sizes and their order cannot be told from the rule sheet',
    allowed: 'a line such as `# sizes: XS, S, M, L` in it, or a chart',
    got: labels.join(', '),
    place: { file },
  });
}
