/**
 * How short a lay could be at most, proved without laying anything out.
 *
 * On any line across the cloth the widths of the pieces that it meets add up to the width at most, and
 * on any line along it their lengths add up to the length. Summed over all lines that gives the area
 * bound. It holds as well for a function of the shares of the line that pieces take, if no shares that
 * add up to 1 at most have values that add up to more: a dual feasible function (Fekete and Schepers,
 * New classes of lower bounds for bin packing problems, 2001). So two pieces wider than half the cloth
 * count with both their lengths, and two pieces longer than half the lay with both their widths.
 */
import { LAY_STEP, SAME_PLACE } from '../tolerance';
import type { Cloth } from './cloth';
import type { Lanes } from './folding';
import { cuttableWidth, FLAPS } from './folding';
import type { LayShape } from './shapes';
import type { Spread } from './spread';
import { widerThan } from './spread';

/**
 * A dual feasible function: `cut`, shares above `1 - at` count as 1 and those below `at` as nothing;
 * `count`, shares above k of `at + 1` parts count as k of `at`.
 */
interface Counting {
  readonly by: 'cut' | 'count';
  readonly at: number;
}

/** The area, some shares, and pieces of which no more than 1, 2 or 3 lie side by side. */
const USUAL: readonly Counting[] = [
  ...[0, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 1 / 3, 0.35, 0.4, 0.45].map((at) => ({
    by: 'cut' as const,
    at,
  })),
  ...[1, 2, 3].map((at) => ({ by: 'count' as const, at })),
];

/** Halvings between two lengths of which one is proved to be too short. */
const HALVINGS = 5;

/** mm. What is this much longer is longer, rounding errors aside. */
const STRICTLY = 4 * SAME_PLACE;

/** Shapes of one kind in lanes, as far as the bound asks. */
interface Kind {
  readonly shape: LayShape;
  readonly times: number;
  /** 2 where the shape is half of what is laid. */
  readonly wider: 1 | 2;
}

/**
 * mm. The greatest of the bounds that no lay of the shapes on the cloth can go below. A lay on folded
 * cloth is also one on open cloth, where what is cut from two layers lies twice. `known` is the length
 * of a lay, beyond which nothing can be proved.
 */
export function lengthBound(shapes: readonly LayShape[], cloth: Cloth, known = Infinity): number {
  const flat: Lanes = { width: cloth.width - 2 * cloth.selvage, count: 1 };
  if (cloth.fold === 'open') return boundIn(asLaid(shapes), flat, known);
  const flaps: Lanes = { width: cuttableWidth(cloth), count: FLAPS[cloth.fold] };
  const doubled = shapes.filter(({ layers }) => layers === 2);
  const opened = boundIn(asOpened(shapes), flat, known);
  return Math.max(opened, boundIn(asLaid(doubled), flaps, known));
}

/** mm. The area of the shapes, every layer counted, over the width between the selvages. */
export function areaBound(shapes: readonly LayShape[], cloth: Cloth): number {
  const layers = ({ layers: n }: LayShape): number => (cloth.fold === 'open' ? 1 : n);
  return sum(shapes.map((s) => layers(s) * s.area)) / (cloth.width - 2 * cloth.selvage);
}

/** mm. What no fill of the lanes with these shapes can go below. */
export function fillBound(shapes: readonly LayShape[], lanes: Lanes): number {
  return boundIn(asLaid(shapes), lanes, Infinity);
}

function asLaid(shapes: readonly LayShape[]): readonly Kind[] {
  return kindsOf(shapes, () => ({ times: 1, wider: 1 }));
}

/** The same after the folded cloth is opened. */
function asOpened(shapes: readonly LayShape[]): readonly Kind[] {
  return kindsOf(shapes, ({ onFold, layers }) =>
    onFold ? { times: 1, wider: 2 } : { times: layers, wider: 1 },
  );
}

function kindsOf(
  shapes: readonly LayShape[],
  laid: (shape: LayShape) => Omit<Kind, 'shape'>,
): readonly Kind[] {
  const kinds = new Map<Spread, Kind>();
  for (const shape of shapes) {
    const { times, wider } = laid(shape);
    const before = kinds.get(shape.across)?.times ?? 0;
    kinds.set(shape.across, { shape, times: before + times, wider });
  }
  return [...kinds.values()];
}

function boundIn(kinds: readonly Kind[], { width, count }: Lanes, known: number): number {
  const across = (counting: Counting): number => {
    let total = 0;
    for (const { shape, times, wider } of kinds)
      total += times * counted(shape.across, width / wider, counting);
    return total;
  };
  const along = (counting: Counting, length: number): number => {
    let total = 0;
    for (const { shape, times, wider } of kinds)
      total += times * wider * counted(shape.along, length, counting);
    return total;
  };
  const heights = distinct(kinds.map(({ shape }) => heightOf(shape)));
  const edges = kinds.map(({ shape, times, wider }) =>
    wider === 1 ? times * edgeOnFold(shape) : 0,
  );
  const least = Math.max(
    0,
    ...USUAL.map((counting) => across(counting) / count),
    ...heights,
    sum(edges) / count,
  );
  const isTooShort = (length: number): boolean => {
    const shares = heights.map((height) => height / length).filter((at) => at < 1 / 2);
    const countings = [...USUAL, ...shares.map((at) => ({ by: 'cut' as const, at }))];
    return countings.some((counting) => along(counting, length) > count * width + SAME_PLACE);
  };
  if (least >= known - SAME_PLACE) return least;
  return proved(least, known, stacks(heights), isTooShort);
}

function heightOf({ positions }: LayShape): number {
  return positions[0]?.profile.height ?? 0;
}

/** mm along the fold of a shape that lies on one. */
function edgeOnFold({ onFold, positions }: LayShape): number {
  const atFold = positions[0]?.profile.slices[0];
  return onFold && atFold !== undefined ? atFold.far - atFold.near : 0;
}

/** The greatest length found that is proved to be too short, from one that no lay goes below. */
function proved(
  least: number,
  known: number,
  lengths: readonly number[],
  isTooShort: (length: number) => boolean,
): number {
  const above = lengths.filter((l) => l > least + SAME_PLACE && l <= known + SAME_PLACE);
  const highest = above.findLastIndex((length) => isTooShort(length - STRICTLY));
  let low = above[highest] ?? least;
  let high = above[highest + 1] ?? Math.min(known, 2 * low);
  if (high - low <= LAY_STEP) return low;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (isTooShort(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** Lengths of two and of three shapes one after the other, rising. */
function stacks(each: readonly number[]): readonly number[] {
  const two = each.flatMap((a) => each.map((b) => a + b));
  return distinct([...two, ...two.flatMap((pair) => each.map((a) => a + pair))]);
}

function distinct(values: readonly number[]): readonly number[] {
  return values
    .toSorted((a, b) => a - b)
    .filter((value, i, all) => i === 0 || value - (all[i - 1] ?? 0) > SAME_PLACE);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** mm. The lines that a shape takes for itself, each share of the line counted by the function. */
function counted(spread: Spread, line: number, { by, at }: Counting): number {
  if (by === 'count') {
    let steps = 0;
    for (let k = 1; k <= at; k++)
      steps += widerThan(spread, (k * line) / (at + 1) + SAME_PLACE).length;
    return steps / at;
  }
  const most = widerThan(spread, (1 - at) * line + SAME_PLACE);
  const least = widerThan(spread, at * line - SAME_PLACE);
  return most.length + (least.area - most.area) / line;
}
