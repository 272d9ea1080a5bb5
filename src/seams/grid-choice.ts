/**
 * Which of the two grid lines beside it each coordinate takes, so that sums of lengths hold: a search
 * by small changes, one and two at a time, for as long as anything gets better.
 */

/** A sum of lengths as it follows coordinates. */
export interface GridSum {
  /** How the sum grows with each coordinate, mm per mm; a coordinate may come twice. */
  readonly slopes: readonly (readonly [coordinate: number, slope: number])[];
  /** mm within which a miss is none. */
  readonly tolerance: number;
  readonly weight: number;
}

/** The grid lines beside a coordinate, in mm from where it belongs; equal where it lies on one. */
export interface GridLines {
  readonly lower: number;
  readonly upper: number;
}

/** The start of a search. */
export interface GridStart {
  /** True for each coordinate that is on its upper line. */
  readonly chosen: readonly boolean[];
  /** mm by which each sum is off with these. */
  readonly missed: readonly number[];
}

/** Weight of a square mm by which a coordinate is off, beside one by which a seam is. */
const DISTANCE_WEIGHT = 1 / 50;
/** Less is no gain, so that equal choices do not chase each other. */
const LEAST_GAIN = 1e-6;
/** Changes after which it is enough, so that no rounding of numbers can loop for ever. */
const MOST_CHANGES = 1000;

/** A set of coordinates brought to their lower or upper lines, and the sums that follow it. */
interface Change {
  readonly set: readonly number[];
  readonly to: 0 | 1;
}

/**
 * Chooses a line for every coordinate, true for the upper one. `sets` are the coordinates that are
 * tried together, some of them by themselves. The result depends on the numbers alone.
 */
export function chooseGrid(
  lines: readonly GridLines[],
  sums: readonly GridSum[],
  sets: readonly (readonly number[])[],
  start: GridStart,
): readonly boolean[] {
  const state = Uint8Array.from(start.chosen, Number);
  const miss = Float64Array.from(start.missed);
  const columns = columnsOf(lines.length, sums);
  const tolerances = Float64Array.from(sums, ({ tolerance }) => tolerance);
  const weights = Float64Array.from(sums, ({ weight }) => weight);
  const costAt = (k: number, off: number): number => {
    const excess = Math.abs(off) - (tolerances[k] as number);
    return excess > 0 ? (weights[k] as number) * excess * excess : 0;
  };
  const costs = Float64Array.from(miss, (off, k) => costAt(k, off));
  const changes = sets.flatMap((set): Change[] => [
    { set, to: 0 },
    { set, to: 1 },
  ]);
  const beside = furtherOn(changes, columns, sums);
  const openers = changes.map((): number[] => []);
  beside.forEach((all, i) => {
    for (const j of all) openers[j]?.push(i);
  });

  /** Flips a coordinate and gives what that costs. */
  const flip = (c: number): number => {
    const { lower, upper } = lines[c] as GridLines;
    const up = state[c] === 0;
    state[c] = up ? 1 : 0;
    const by = up ? upper - lower : lower - upper;
    let cost =
      DISTANCE_WEIGHT * (up ? upper * upper - lower * lower : lower * lower - upper * upper);
    const { which, slopes } = columns[c] as Column;
    for (let i = 0; i < which.length; i++) {
      const k = which[i] as number;
      const off = (miss[k] as number) + (slopes[i] as number) * by;
      const now = costAt(k, off);
      cost += now - (costs[k] as number);
      miss[k] = off;
      costs[k] = now;
    }
    return cost;
  };
  const flipped: number[] = [];
  const apply = ({ set, to }: Change): number => {
    let cost = 0;
    for (const c of set)
      if (state[c] !== to) {
        flipped.push(c);
        cost += flip(c);
      }
    return cost;
  };
  const undoTo = (count: number): void => {
    while (flipped.length > count) flip(flipped.pop() as number);
  };

  const open = Uint8Array.from(changes, () => 1);
  let left = MOST_CHANGES;
  for (let again = true; again && left > 0;) {
    again = false;
    changes.forEach((change, i) => {
      if (open[i] === 0 || left <= 0) return;
      open[i] = 0;
      flipped.length = 0;
      const cost = apply(change);
      const own = flipped.length;
      if (own === 0) return;
      let best = { cost, with: -1 };
      for (const j of beside[i] as readonly number[]) {
        const both = cost + apply(changes[j] as Change);
        if (both < best.cost - LEAST_GAIN && flipped.length > own) best = { cost: both, with: j };
        undoTo(own);
      }
      if (best.cost > -LEAST_GAIN) {
        undoTo(0);
        return;
      }
      const second = changes[best.with];
      if (second !== undefined) apply(second);
      left--;
      again = true;
      open[i] = 1;
      for (const moved of [i, best.with])
        for (const all of [beside[moved], openers[moved]]) for (const j of all ?? []) open[j] = 1;
    });
  }
  return Array.from(state, (upper) => upper === 1);
}

/** Places of the sums that follow a coordinate, and how. */
interface Column {
  readonly which: Int32Array;
  readonly slopes: Float64Array;
}

/** The sums that follow each coordinate. */
function columnsOf(count: number, sums: readonly GridSum[]): readonly Column[] {
  const columns = Array.from({ length: count }, () => new Map<number, number>());
  sums.forEach(({ slopes }, k) => {
    for (const [c, slope] of slopes) columns[c]?.set(k, (columns[c].get(k) ?? 0) + slope);
  });
  return columns.map((column) => {
    const own = [...column].filter(([, slope]) => Math.abs(slope) > LEAST_SLOPE);
    return {
      which: Int32Array.from(own, ([k]) => k),
      slopes: Float64Array.from(own, ([, slope]) => slope),
    };
  });
}

/** mm per mm. A sum that follows a coordinate by less is not mended by it. */
const LEAST_SLOPE = 1e-3;

/** For each change those further on in the list that touch one of its sums. */
function furtherOn(
  changes: readonly Change[],
  columns: readonly Column[],
  sums: readonly GridSum[],
): readonly (readonly number[])[] {
  const touched = changes.map(({ set }) => [
    ...new Set(set.flatMap((c) => [...(columns[c] as Column).which])),
  ]);
  const touching = sums.map((): number[] => []);
  touched.forEach((all, i) => {
    for (const k of all) touching[k]?.push(i);
  });
  const seen = new Int32Array(changes.length).fill(-1);
  return touched.map((all, i) => {
    const found: number[] = [];
    for (const k of all)
      for (const j of touching[k] as readonly number[])
        if (j > i && seen[j] !== i) {
          seen[j] = i;
          found.push(j);
        }
    return found;
  });
}
