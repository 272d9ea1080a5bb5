/** Between which bounds increments lie when the cells of a sheet are rounded to the marks of a ruler. */
import { ARITHMETIC, ON_MARK } from '../../tolerance';
import type { LengthUnit } from '../../units';
import { toMillimeters } from '../../units';

/** mm, the least and the most; infinite where nothing bounds it. */
export type Interval = readonly [least: number, most: number];

/** One rounded cell: what its rule is in the measurements, and what it says. */
export interface RoundedCell {
  /** The share that each measurement has in it. */
  readonly row: readonly number[];
  /** mm. */
  readonly given: number;
  /** mm by which it may be off: half a mark, and that for each step that was added up. */
  readonly off: number;
}

/** Rulers that sheets are rounded to, coarsest first. */
const RULERS: Readonly<Record<LengthUnit, readonly number[]>> = {
  in: [8, 16, 32].map((parts) => toMillimeters(1 / parts, 'in')),
  cm: [1, 0.5],
  mm: [1, 0.5],
};

/**
 * mm between the marks on which all of `cells` (mm) lie, the coarsest of the usual rulers of `unit`; undefined
 * where they lie between the marks of every ruler, and so are not rounded to one.
 */
export function rulerOf(cells: readonly number[], unit: LengthUnit): number | undefined {
  return RULERS[unit].find((mark) =>
    cells.every((mm) => Math.abs(mm / mark - Math.round(mm / mark)) <= ON_MARK),
  );
}

/**
 * The bounds of each of `count` measurements: no increments outside them give all of the cells. A cell of
 * several measurements bounds each by what the others are known to lie within, again and again until nothing
 * gets narrower. Undefined where no increments give all cells.
 */
export function incrementIntervals(
  cells: readonly RoundedCell[],
  count: number,
): readonly Interval[] | undefined {
  const bounds = Array.from({ length: count }, (): [number, number] => [-Infinity, Infinity]);
  for (let isNarrower = true; isNarrower;) {
    isNarrower = false;
    for (const { row, given, off } of cells)
      for (const [k, share] of row.entries()) {
        const own = bounds[k];
        if (share === 0 || own === undefined) continue;
        const [least, most] = restOf(row, bounds, k);
        const ends = [(given - off - most) / share, (given + off - least) / share];
        const [low, high] = [Math.min(...ends), Math.max(...ends)];
        isNarrower ||= low > own[0] + ARITHMETIC || high < own[1] - ARITHMETIC;
        own[0] = Math.max(own[0], low);
        own[1] = Math.min(own[1], high);
        if (own[0] > own[1] + ARITHMETIC) return undefined;
      }
  }
  return bounds;
}

/** What the other measurements of a cell add to it, at the least and at the most. */
function restOf(row: readonly number[], bounds: readonly Interval[], own: number): Interval {
  let [least, most] = [0, 0];
  row.forEach((share, k) => {
    const [low, high] = bounds[k] ?? [-Infinity, Infinity];
    if (k === own || share === 0) return;
    least += share * (share > 0 ? low : high);
    most += share * (share > 0 ? high : low);
  });
  return [least, most];
}
