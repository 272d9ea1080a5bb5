/** Levels on one of two grid lines each, and what it costs that sums of lengths are off. */
import { SUM_FOLLOWS } from '../tolerance';

/** A sum of lengths as it follows levels. */
export interface GridSum {
  /** How the sum grows with each level, mm per mm; a level may come twice. */
  readonly slopes: readonly (readonly [level: number, slope: number])[];
  /** mm within which a miss is none. */
  readonly tolerance: number;
  readonly weight: number;
}

/** The grid lines beside a level, in mm from where it belongs; equal where it lies on one. */
export interface GridLines {
  readonly lower: number;
  readonly upper: number;
  /** How many coordinates stand on the level, and are off as far as it is. */
  readonly count: number;
}

/** The start of a search. */
export interface GridStart {
  /** True for each level that is on its upper line. */
  readonly chosen: readonly boolean[];
  /** mm by which each sum is off with these. */
  readonly missed: readonly number[];
}

/** Weight of a square mm by which a coordinate is off, beside one by which a seam is. */
const DISTANCE_WEIGHT = 1 / 50;

/** Places of the sums that follow a level, and how. */
interface Column {
  readonly which: Int32Array;
  readonly slopes: Float64Array;
}

/** Where the levels of a search stand; costs are in square mm, less is better. */
export class GridState {
  private readonly state: Uint8Array;
  private readonly miss: Float64Array;
  private readonly costs: Float64Array;
  private readonly tolerances: Float64Array;
  private readonly weights: Float64Array;
  private readonly columns: readonly Column[];

  /** Starts with the lines and misses of `start`. */
  constructor(
    private readonly lines: readonly GridLines[],
    sums: readonly GridSum[],
    start: GridStart,
  ) {
    this.state = Uint8Array.from(start.chosen, Number);
    this.miss = Float64Array.from(start.missed);
    this.tolerances = Float64Array.from(sums, ({ tolerance }) => tolerance);
    this.weights = Float64Array.from(sums, ({ weight }) => weight);
    this.columns = columnsOf(lines.length, sums);
    this.costs = this.miss.map((off, k) => this.costAt(k, off));
  }

  /** Places of the sums that follow a level. */
  sumsOf(c: number): Iterable<number> {
    return this.columns[c]?.which ?? [];
  }

  /** Whether a level is on its upper line. */
  isUpper(c: number): boolean {
    return this.state[c] === 1;
  }

  /** True for each level that is on its upper line. */
  chosen(): readonly boolean[] {
    return Array.from(this.state, (upper) => upper === 1);
  }

  /** What it would cost to bring a level to its other line. */
  costOfFlip(c: number): number {
    const { which, slopes } = this.columns[c] as Column;
    const by = this.way(c);
    let cost = this.ownCost(c);
    for (let i = 0; i < which.length; i++) {
      const k = which[i] as number;
      const off = (this.miss[k] as number) + (slopes[i] as number) * by;
      cost += this.costAt(k, off) - (this.costs[k] as number);
    }
    return cost;
  }

  /** Brings a level to its other line. */
  flip(c: number): void {
    const { which, slopes } = this.columns[c] as Column;
    const by = this.way(c);
    for (let i = 0; i < which.length; i++) {
      const k = which[i] as number;
      const off = (this.miss[k] as number) + (slopes[i] as number) * by;
      this.miss[k] = off;
      this.costs[k] = this.costAt(k, off);
    }
    this.state[c] = 1 - (this.state[c] as number);
  }

  /** mm from the line of a level to its other line. */
  private way(c: number): number {
    const { lower, upper } = this.lines[c] as GridLines;
    return this.state[c] === 0 ? upper - lower : lower - upper;
  }

  private ownCost(c: number): number {
    const { lower, upper, count } = this.lines[c] as GridLines;
    const more = count * (upper * upper - lower * lower);
    return DISTANCE_WEIGHT * (this.state[c] === 0 ? more : -more);
  }

  private costAt(k: number, off: number): number {
    const excess = Math.abs(off) - (this.tolerances[k] as number);
    return excess > 0 ? (this.weights[k] as number) * excess * excess : 0;
  }
}

/** The sums that follow each level. */
function columnsOf(count: number, sums: readonly GridSum[]): readonly Column[] {
  const columns = Array.from({ length: count }, () => new Map<number, number>());
  sums.forEach(({ slopes }, k) => {
    for (const [c, slope] of slopes) columns[c]?.set(k, (columns[c].get(k) ?? 0) + slope);
  });
  return columns.map((column) => {
    const own = [...column].filter(([, slope]) => Math.abs(slope) > SUM_FOLLOWS);
    return {
      which: Int32Array.from(own, ([k]) => k),
      slopes: Float64Array.from(own, ([, slope]) => slope),
    };
  });
}
