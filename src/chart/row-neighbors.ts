/** What the other sizes of a row make of one of its values. */
import { OFF_NEIGHBORS, OFF_STEADY, OFF_TWO_NEIGHBORS } from '../tolerance';

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

/** mm. And by this much besides `OFF_STEADY`: short depths are measured and rounded to half an inch. */
const OFF_STEADY_LEAST = 15;
/** It must do so by this many usual steps, and by as many times what the row is unsteady by itself. */
const STEADY_STEPS = 3;
/** A row with fewer other values has no habit. */
const STEADY_OTHERS = 3;

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
 * one slip moves neither the step nor the middle of the answers. A value that jumps away from a
 * steady row and back again is doubted much sooner (a stature of 186 among 168). `odd` says of a value by itself
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
    if (away > reach) return [{ index, expected, odd: odd(value), share: away / expected }];
    const steady = offSteadyRow(known, at);
    return steady === undefined ? [] : [{ index, odd: odd(value), ...steady }];
  });
  const [first] = doubts.sort((a, b) => Number(b.odd) - Number(a.odd) || b.share - a.share);
  return first && { index: first.index, expected: first.expected };
}

interface Known {
  readonly index: number;
  readonly value: number;
}

/**
 * What lies midway between the neighbors of a value that is beyond both of them, in a row whose other
 * values go steadily on; undefined where it is not so. A row that rises all along has no such value.
 */
function offSteadyRow(known: readonly Known[], at: number) {
  const [before, it, after] = [known[at - 1], known[at], known[at + 1]];
  if (before === undefined || it === undefined || after === undefined) return undefined;
  const beyond = Math.max(
    it.value - Math.max(before.value, after.value),
    Math.min(before.value, after.value) - it.value,
  );
  const others = known.filter((other) => other !== it);
  if (beyond <= 0 || others.length < STEADY_OTHERS) return undefined;
  const steps = others
    .slice(1)
    .map(
      ({ index, value }, i) =>
        (value - (others[i]?.value ?? NaN)) / (index - (others[i]?.index ?? NaN)),
    );
  const step = median(steps).middle;
  const unsteady = Math.max(...steps.map((each) => Math.abs(each - step)));
  const expected = (before.value + after.value) / 2;
  const reach = Math.max(
    OFF_STEADY * expected,
    OFF_STEADY_LEAST,
    STEADY_STEPS * Math.abs(step),
    STEADY_STEPS * unsteady,
  );
  return beyond > reach ? { expected, share: beyond / expected } : undefined;
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
  const sorted = Float64Array.from(values).sort();
  const low = sorted[Math.floor((sorted.length - 1) / 2)] ?? NaN;
  const high = sorted[Math.ceil((sorted.length - 1) / 2)] ?? NaN;
  return { low, high, middle: (low + high) / 2 };
}
