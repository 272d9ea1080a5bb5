/** The increments of every size, solved from its cells; cells that contradict the others are left out. */
import { NO_SLOPE, RULE_RIGHT, SAME_PLACE } from '../../tolerance';
import type { AnswerKey } from '../mark/answer-key';
import type { Series } from '../mark/series';
import { keyPoint } from '../mark/series';
import { expectedAt, slippedDigits } from './expected-growth';
import type { Interval } from './increment-intervals';
import { incrementIntervals } from './increment-intervals';
import { leastSquares } from './least-squares';
import type { RobustFit } from './robust-fit';
import { robustFit } from './robust-fit';

/** A cell that was left out, and why. */
export interface LeftOut {
  /** Such as `front.side_hip dx`. */
  readonly cell: string;
  /** mm as the sheet has it. */
  readonly given: number;
  /** mm that the rest of the sheet leads to; undefined where it does not tell. */
  readonly meant: number | undefined;
  /** `against`: the others agree without it; `either`: it or another one is wrong; `alone`: none
   * speaks against it, and it lies ten times too far or too near beside the other sizes. */
  readonly why: 'against' | 'either' | 'alone';
}

/** One size of the sheet. */
export interface InferredSize {
  readonly label: string;
  /** mm from the base, one a measurement; undefined where the sheet cannot tell. */
  readonly increments: readonly (number | undefined)[];
  /** mm from the base, one a measurement: within what they lie if the cells are rounded to the sheet's ruler. */
  readonly within: readonly Interval[] | undefined;
  /** Root of the mean square of what the cells that were used leave over, mm. */
  readonly residual: number;
  /** The cell that fits worst of those that were used, by how much in mm, and how much would be right. */
  readonly worst:
    | { readonly cell: string; readonly miss: number; readonly off: number }
    | undefined;
  readonly leftOut: readonly LeftOut[];
}

/** How the cells of a sheet came to their marks. */
export interface Rounding {
  /** mm between the marks. */
  readonly mark: number;
  /** How many rounded numbers were added up to a cell. */
  readonly added: (series: Series, size: number) => number;
}

/** All sizes in the order of the key. */
export interface Inferred {
  /** Measurements that the rules of the given points depend on. */
  readonly measurements: readonly string[];
  readonly sizes: readonly InferredSize[];
}

/** The equations of one size: its cells, their slopes, and what is given. */
interface Equations {
  readonly cells: readonly Series[];
  readonly rows: readonly (readonly number[])[];
  readonly wanted: readonly number[];
  /** mm by which each cell may be off. */
  readonly off: readonly number[];
}

/** The increments of all sizes from the base, in the order of the key. */
export function inferredSizes(
  key: AnswerKey,
  series: readonly Series[],
  rounding?: Rounding,
): Inferred {
  const measurements = measurementsOf(key, series);
  const equations = key.sizes.map((_, i) => equationsOf(key, series, measurements, i, rounding));
  const still: Growths = measurements.map(() => 0);
  const first = equations.map((own, i) =>
    i === key.base ? undefined : robustFit(own.rows, own.wanted, own.off),
  );
  const growths = (fits: readonly (RobustFit | undefined)[]): readonly Growths[] =>
    measurements.map((_, k) =>
      fits.map((fit, i) => (i === key.base ? still[k] : fit?.settled ? fit.values[k] : undefined)),
    );
  const known = growths(first);
  // What one size alone leaves open, or gives against all others, its neighbors may tell.
  const fits = first.map((fit, i) => {
    const own = equations[i];
    if (fit === undefined || own === undefined || fit.doubtful.length === 0) return fit;
    return robustFit(
      own.rows,
      own.wanted,
      own.off,
      known.map((growth) => expectedAt(growth, i)),
    );
  });
  const digits = growths(fits).map(slippedDigits);
  const sizes = key.sizes.map((label, i): InferredSize => {
    const [fit, own] = [fits[i], equations[i]];
    if (fit === undefined || own === undefined)
      return {
        label,
        increments: still,
        within: undefined,
        residual: 0,
        worst: undefined,
        leftOut: [],
      };
    return inferredSize(
      label,
      own,
      fit,
      digits.map((meant) => meant.get(i)),
      rounding !== undefined,
    );
  });
  return { measurements, sizes };
}

type Growths = readonly (number | undefined)[];

/**
 * `meant` has, of measurements that lie far from those of the neighbors, what was meant; `isRounded` whether
 * cells are off by rounding alone.
 */
function inferredSize(
  label: string,
  { cells, rows, wanted, off }: Equations,
  fit: RobustFit,
  meant: Growths,
  isRounded: boolean,
): InferredSize {
  const isOut = (i: number): boolean => fit.out.includes(i) || fit.doubtful.includes(i);
  const isOwnOf = (k: number, i: number): boolean =>
    rows[i]?.every((slope, m) => m === k || slope === 0) ?? false;
  const lone = meant.flatMap((value, k) => {
    const telling = rows.flatMap((row, i) => (!isOut(i) && (row[k] ?? 0) !== 0 ? [i] : []));
    return value === undefined || !telling.every((i) => isOwnOf(k, i))
      ? []
      : telling.map((i) => ({ i, k, mm: value * (rows[i]?.[k] ?? NaN) }));
  });
  const used = cells.flatMap((_, i) => (isOut(i) || lone.some((one) => one.i === i) ? [] : [i]));
  const missAt = (i: number): number => Math.abs(fit.residuals[i] ?? NaN);
  const worst = used.reduce<number | undefined>(
    (most, i) => (most === undefined || missAt(i) > missAt(most) ? i : most),
    undefined,
  );
  const nameAt = (i: number): string => {
    const { piece = '', point = '', axis = '' } = cells[i] ?? {};
    return `${piece}.${point} d${axis}`;
  };
  const leftOut = (i: number, why: LeftOut['why'], mm?: number): LeftOut => {
    const own = wanted[i] ?? NaN;
    const should = mm ?? own + (fit.residuals[i] ?? NaN);
    return { cell: nameAt(i), given: own, meant: Number.isNaN(should) ? undefined : should, why };
  };
  const rounded = used.map((i) => ({
    row: rows[i] ?? [],
    given: wanted[i] ?? NaN,
    off: off[i] ?? NaN,
  }));
  const squares = used.reduce((sum, i) => sum + missAt(i) ** 2, 0);
  return {
    label,
    increments: meant.map((_, k) => (lone.some((one) => one.k === k) ? undefined : fit.values[k])),
    within: fit.settled && isRounded ? incrementIntervals(rounded, meant.length) : undefined,
    residual: Math.sqrt(squares / Math.max(1, used.length)),
    worst:
      worst === undefined
        ? undefined
        : { cell: nameAt(worst), miss: missAt(worst), off: off[worst] ?? NaN },
    leftOut: [
      ...fit.out.map((i) => leftOut(i, 'against')),
      ...fit.doubtful.map((i) => leftOut(i, 'either')),
      ...lone.map(({ i, mm }) => leftOut(i, 'alone', mm)),
    ],
  };
}

/** Sum of squares that all cells leave over, none left out, mm squared. */
export function squaresOf(key: AnswerKey, series: readonly Series[]): number {
  const measurements = measurementsOf(key, series);
  return key.sizes.reduce((sum, _, i) => {
    if (i === key.base) return sum;
    const { rows, wanted } = equationsOf(key, series, measurements, i);
    return leastSquares(rows, wanted).residuals.reduce((all, miss) => all + miss ** 2, sum);
  }, 0);
}

/**
 * Whether every measurement that moves points along y alone shrinks as those that move them along x
 * grow, and one of them does at all: bodies that get wider do not all get shorter.
 */
export function everyLengthShrinks(key: AnswerKey, series: readonly Series[]): boolean {
  const { measurements, sizes } = inferredSizes(key, series);
  const along = (axis: Series['axis']): ReadonlySet<string> =>
    new Set(
      measurementsOf(
        key,
        series.filter((one) => one.axis === axis),
      ),
    );
  const [x, y] = [along('x'), along('y')];
  const girths = measurements.flatMap((name, k) => (x.has(name) ? [k] : []));
  const lengths = measurements.flatMap((name, k) => (y.has(name) && !x.has(name) ? [k] : []));
  const products = sizes.map(({ increments }) => {
    const wider = girths.reduce((sum, k) => sum + (increments[k] ?? 0), 0);
    return lengths.map((k) => (increments[k] ?? 0) * wider);
  });
  const shorter = products.filter((own) => own.some((product) => product < -SAME_PLACE));
  return (
    shorter.length >= Math.min(SIZES_THAT_TELL, sizes.length - 1) &&
    products.flat().every((product) => product <= SAME_PLACE)
  );
}

/** One size alone may have a slip of its own. */
const SIZES_THAT_TELL = 2;

function measurementsOf(key: AnswerKey, series: readonly Series[]): readonly string[] {
  const names = series.flatMap((one) =>
    [...keyPoint(key, one).slopes[one.axis]]
      .filter(([, slope]) => Math.abs(slope) > NO_SLOPE)
      .map(([name]) => name),
  );
  return [...new Set(names)];
}

function equationsOf(
  key: AnswerKey,
  series: readonly Series[],
  measurements: readonly string[],
  size: number,
  rounding?: Rounding,
): Equations {
  const cells = series.filter(({ given }) => given[size] !== undefined);
  return {
    cells,
    rows: cells.map((one) => {
      const slopes = keyPoint(key, one).slopes[one.axis];
      const slope = (name: string): number => slopes.get(name) ?? 0;
      return measurements.map((name) => (Math.abs(slope(name)) > NO_SLOPE ? slope(name) : 0));
    }),
    wanted: cells.map(({ given }) => given[size] ?? NaN),
    off: cells.map((one) =>
      rounding === undefined
        ? RULE_RIGHT
        : Math.max(RULE_RIGHT, (rounding.added(one, size) * rounding.mark) / 2),
    ),
  };
}
