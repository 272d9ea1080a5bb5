/** What the other sizes of a row make of one of its values. */
import { OFF_NEIGHBORS, OFF_TWO_NEIGHBORS } from '../tolerance';

/** How many sizes are asked: two on each side, or the nearest four at an end of the range. */
const ASKED = 4;
/** Sizes on each side that have a say in the usual step; no published range has as many. */
const NEARBY = 16;
/** A value this many usual steps away from its place in the row is no step of a grade. */
const STEPS_AWAY = 4;
/** Where the neighbors disagree by themselves, the value must be this many times as far off. */
const SPREADS_AWAY = 4;
/** Two sizes alone have no usual step; twice the other's girth is beyond any two of one range. */
const TWICE = 2;

/** A value that lies far from what its neighbors lead one to expect. */
export interface Doubt {
  readonly index: number;
  /** What its neighbors make likely, in the unit of the values. */
  readonly expected: number;
}

/**
 * The value of a row, listed in the order of the sizes, that lies farthest from what its neighbors
 * make of it; undefined where none lies far. Each neighbor says where the value would be at the
 * usual step of the row, which is the median of the slopes between the other values nearby, so that
 * one slip moves neither the step nor the middle of the answers. `odd` says of a value by itself
 * whether it is the one to doubt, where two could be.
 */
export function farthestFromNeighbors(
  values: readonly (number | null)[],
  odd: (value: number) => boolean,
): Doubt | undefined {
  const known = values.flatMap((value, index) => (value === null ? [] : [{ index, value }]));
  const doubts = known.flatMap(({ index, value }, at) => {
    const nearby = known.slice(Math.max(0, at - NEARBY), at + NEARBY + 1);
    const others = nearby.filter((other) => other.index !== index);
    const { expected, reach } = expectation(others, index, value);
    const away = Math.abs(value - expected);
    return away > reach ? [{ index, expected, odd: odd(value), share: away / expected }] : [];
  });
  const [first] = doubts.sort((a, b) => Number(b.odd) - Number(a.odd) || b.share - a.share);
  return first && { index: first.index, expected: first.expected };
}

interface Known {
  readonly index: number;
  readonly value: number;
}

/** Where the value is expected, as near to it as the answers allow, and how far off it may be. */
function expectation(others: readonly Known[], index: number, value: number) {
  const [only] = others;
  if (only === undefined) return { expected: value, reach: Infinity };
  if (others.length === 1) {
    const reach = value > only.value ? only.value * (TWICE - 1) : only.value / TWICE;
    return { expected: only.value, reach };
  }
  const step = median(
    others.flatMap((a, i) =>
      others.slice(i + 1).map((b) => (b.value - a.value) / (b.index - a.index)),
    ),
  ).middle;
  const answers = others
    .toSorted((a, b) => Math.abs(a.index - index) - Math.abs(b.index - index))
    .slice(0, ASKED)
    .map((other) => other.value + step * (index - other.index));
  // Where the answers are parted, as between two lengths of one skirt, anything between is fine.
  const { low, high } = median(answers);
  const expected = Math.min(Math.max(value, low), high);
  const { middle } = median(answers);
  const share = others.length > 2 ? OFF_NEIGHBORS : OFF_TWO_NEIGHBORS;
  const spread = median(answers.map((answer) => Math.abs(answer - middle))).middle;
  return {
    expected,
    reach: Math.max(STEPS_AWAY * Math.abs(step), share * expected, SPREADS_AWAY * spread),
  };
}

function median(values: readonly number[]) {
  const sorted = values.toSorted((a, b) => a - b);
  const low = sorted[Math.floor((sorted.length - 1) / 2)] ?? NaN;
  const high = sorted[Math.ceil((sorted.length - 1) / 2)] ?? NaN;
  return { low, high, middle: (low + high) / 2 };
}
