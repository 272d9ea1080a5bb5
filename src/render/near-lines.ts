/** Where lines of several sizes lie so near each other that they cannot be told: along waist and hem. */
import { runsOf } from '../lists/runs';
import type { Box } from '../geometry/bounds';
import { point } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { LINES_APART, LINES_TOGETHER, SAME_PLACE } from '../tolerance';
import type { Chord } from './chords';
import { chordsOf, flattened } from './chords';

/** A straight line through the stretch, and the ranks of its sizes, rising. */
export interface NearRun {
  readonly line: Segment;
  readonly ranks: readonly number[];
  /** mm by which they part at most. */
  readonly apart: number;
}

/** mm between the places at which lines are compared. */
const STEP = 5;
/** mm. A shorter stretch has no room for its words. */
const LEAST = 60;
/** No tolerance: a line that climbs more steeply, mm for each mm along, is a side and not waist or hem. */
const STEEPEST = 0.5;

/** Sizes that lie together at one place along, and the level in their middle. */
interface Bundle {
  readonly ranks: readonly number[];
  readonly level: number;
  readonly apart: number;
}

/**
 * The stretches at the upper and at the lower end of outlines, one outline a size, within their box, but for
 * those in which they are in one place.
 */
export function nearRuns(
  outlines: readonly (readonly Segment[])[],
  { left, right }: Pick<Box, 'left' | 'right'>,
): readonly NearRun[] {
  const chords = outlines.map((segments) => chordsOf([flattened(segments)]));
  const count = Math.max(0, Math.floor((right - left) / STEP));
  return ([-1, 1] as const).flatMap((side) => {
    const levels = chords.map((own) => levelsOf(own, left, count, side));
    const found: NearRun[] = [];
    let open: readonly NearRun[] = [];
    for (let i = 0; i <= count; i++) {
      const x = left + i * STEP;
      const bundles = bundled(levels.map((own) => own[i]));
      const next = bundles.map(({ ranks, level, apart }): NearRun => {
        const before = open.find((run) => run.ranks.join() === ranks.join());
        const to = point(x, level);
        return {
          line: { kind: 'line', from: before?.line.from ?? to, to },
          ranks,
          apart: Math.max(apart, before?.apart ?? 0),
        };
      });
      found.push(...open.filter((run) => !next.some(({ line }) => line.from === run.line.from)));
      open = next;
    }
    return [...found, ...open].filter(
      ({ line, apart }) => line.to.x - line.from.x >= LEAST && apart > SAME_PLACE,
    );
  });
}

/**
 * How high an outline reaches on one side, -1 for the upper one, at each of `count` steps and before the
 * first; undefined where it is steep there.
 */
function levelsOf(
  chords: readonly Chord[],
  left: number,
  count: number,
  side: -1 | 1,
): readonly (number | undefined)[] {
  const levels = new Array<number | undefined>(count + 1).fill(undefined);
  const steep = new Set<number>();
  for (const { from, to } of chords) {
    if (from.x === to.x) continue;
    const start = Math.min(from.x, to.x);
    const end = Math.max(from.x, to.x);
    const slope = (to.y - from.y) / (to.x - from.x);
    for (let i = Math.max(0, Math.floor((start - left) / STEP)); i <= count; i++) {
      const x = left + i * STEP;
      if (x > end) break;
      if (x < start) continue;
      const y = from.y + slope * (x - from.x);
      const level = levels[i];
      if (level !== undefined && side * y <= side * level) continue;
      levels[i] = y;
      if (Math.abs(slope) > STEEPEST) steep.add(i);
      else steep.delete(i);
    }
  }
  return levels.map((level, i) => (steep.has(i) ? undefined : level));
}

interface Leveled {
  readonly level: number;
  readonly rank: number;
}

/** Sizes whose lines touch each other as they are drawn, as far as a pair of scissors does not care. */
function bundled(levels: readonly (number | undefined)[]): readonly Bundle[] {
  const sorted = levels
    .flatMap((level, rank) => (level === undefined ? [] : [{ level, rank }]))
    .toSorted((a, b) => a.level - b.level);
  const isNear = (one: Leveled, last: Leveled, [first = last]: readonly Leveled[]): boolean =>
    one.level - last.level < LINES_APART && one.level - first.level <= LINES_TOGETHER;
  return runsOf(sorted, isNear)
    .filter((own) => own.length > 1)
    .map((own) => {
      const [upper = NaN, lower = NaN] = [own[0]?.level, own.at(-1)?.level];
      return {
        ranks: own.map(({ rank }) => rank).toSorted((a, b) => a - b),
        level: (upper + lower) / 2,
        apart: lower - upper,
      };
    });
}
