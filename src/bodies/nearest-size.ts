/** Orders against sizes: the size of a chart that fits a body best, and what made to measure would change. */
import { findRow } from '../chart/size-chart';
import type { SizeChart } from '../chart/size-chart';
import type { Measure } from '../grade/graded-pattern';
import { gradeReadChart } from '../jobs/grade-chart';
import { MEETS_TARGET } from '../tolerance';
import type { BodyRequest, DraftedBody } from './draft-bodies';
import type { FittedSize, Girths, Tolerance } from './fit';
import { fittedSize, misfit } from './fit';
import type { FitRequest } from './fit-rules';
import { fitRules, sizeBodies } from './fit-rules';

/** A girth of a body in a size, all in mm. */
export interface GirthInSize {
  /** The body less the body that the size is made for. */
  readonly off: number;
  /** The finished garment less the body: what is left to move in, negative where there is nothing. */
  readonly easeLeft: number;
  /** By how much it is too tight, positive, or too loose, negative; 0 within the tolerance. */
  readonly beyond: number;
  /** The skirt made to measure less the size, finished. */
  readonly differs: number;
}

/** The size that fits best. */
export interface NearestSize {
  readonly label: string;
  /** True where waist and hip are both within their tolerances. */
  readonly fits: boolean;
  readonly waist: GirthInSize;
  readonly hip: GirthInSize;
  /** mm, the center front made to measure less that of the size. */
  readonly lengthDiffers: number;
  /** True where no finished measure of the skirt made to measure is another than that of the size. */
  readonly isSame: boolean;
}

/** The sizes of a chart, ready to be tried on. */
export interface TriedRange {
  readonly file: string;
  readonly nearest: (body: DraftedBody) => NearestSize;
}

/**
 * A chart whose sizes are tried on one body after another; each size is drafted once, alone, when it is
 * first the nearest. Throws InputError as `gradeReadChart` does.
 */
export function triedRange(chart: SizeChart, request: BodyRequest & FitRequest): TriedRange {
  const { rules } = fitRules(chart, request);
  const sizes = sizeBodies(chart).map((size) => fittedSize(size, rules));
  const drafted = new Map<string, readonly Measure[]>();
  const measuresOf = (label: string): readonly Measure[] => {
    const known = drafted.get(label);
    if (known !== undefined) return known;
    const { shown } = gradeReadChart(sizeAlone(chart, label), request);
    const measures = shown[0]?.measures ?? [];
    drafted.set(label, measures);
    return measures;
  };
  return {
    file: chart.file,
    nearest: ({ chart: own, result }) => {
      const girth = (name: string): number => findRow(own, name)?.values[0] ?? NaN;
      const body = { waist: girth('waist_girth'), hip: girth('hip_girth') };
      const size = bestOf(sizes, body);
      return inSize(body, size, measuresOf(size.label), result.shown[0]?.measures ?? []);
    },
  };
}

function bestOf(sizes: readonly FittedSize[], body: Girths): FittedSize {
  return sizes.reduce((best, size) => (misfit(body, size) < misfit(body, best) ? size : best));
}

function inSize(
  body: Girths,
  size: FittedSize,
  finished: readonly Measure[],
  own: readonly Measure[],
): NearestSize {
  const differs = (name: string): number => measureNamed(own, name) - measureNamed(finished, name);
  const inGirth = (girth: 'waist' | 'hip', tolerance: Tolerance): GirthInSize => ({
    off: body[girth] - size[girth],
    easeLeft: measureNamed(finished, girth) - body[girth],
    beyond: beyondOf(body[girth] - size[girth], tolerance),
    differs: differs(girth),
  });
  const names = new Set([...own, ...finished].map(({ name }) => name));
  return {
    label: size.label,
    fits: misfit(body, size) <= 1,
    waist: inGirth('waist', size.waistTolerance),
    hip: inGirth('hip', size.hipTolerance),
    lengthDiffers: differs('center_front_length'),
    // What only one of the two has, such as a second dart, makes them differ too.
    isSame: [...names].every((name) =>
      isSameMeasure(measureNamed(own, name), measureNamed(finished, name)),
    ),
  };
}

/** mm; NaN for what is not taken. */
function measureNamed(measures: readonly Measure[], name: string): number {
  return measures.find((measure) => measure.name === name)?.value ?? NaN;
}

function isSameMeasure(a: number, b: number): boolean {
  return a === b || Math.abs(a - b) < MEETS_TARGET;
}

function beyondOf(off: number, { larger, smaller }: Tolerance): number {
  return Math.max(0, off - larger) + Math.min(0, off + smaller);
}

/** The chart with one of its sizes alone. */
function sizeAlone(chart: SizeChart, label: string): SizeChart {
  const at = chart.sizes.indexOf(label);
  const only = <Value>(values: readonly Value[]): readonly Value[] => values.slice(at, at + 1);
  return {
    ...chart,
    sizes: [label],
    rows: chart.rows.map((row) => ({
      ...row,
      values: only(row.values),
      cells: only(row.cells),
      places: only(row.places),
    })),
  };
}
