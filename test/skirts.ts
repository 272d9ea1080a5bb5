/** Charts as a person types them, and what the tests read out of a graded result. */
import fc from 'fast-check';
import { pointOf } from '../src/index';
import type { GradeResult, LengthUnit, Piece } from '../src/index';

export type Row = readonly (number | string)[];

/** A chart of one measurement a row. Sizes are named 1, 2, ... unless they are given. */
export function chartText(
  unit: LengthUnit,
  rows: Readonly<Record<string, Row>>,
  sizes: readonly string[] = (Object.values(rows)[0] ?? []).map((_, i) => `${i + 1}`),
): string {
  const lines = Object.entries(rows).map(([name, cells]) => [name, ...cells].join());
  return `# unit: ${unit}\n${['measurement', ...sizes].join()}\n${lines.join('\n')}\n`;
}

/** The measures of sizes that each grow by a step over the one before. */
export function growing(sizes: readonly string[], first: number, step: number): readonly number[] {
  return sizes.map((_, i) => first + step * i);
}

/** The same chart with one size a row. */
export function sizeRowsText(
  unit: LengthUnit,
  rows: Readonly<Record<string, Row>>,
  sizes: readonly string[],
): string {
  const lines = sizes.map((size, i) => [size, ...Object.values(rows).map((row) => row[i])].join());
  return `# unit: ${unit}\n${['size', ...Object.keys(rows)].join()}\n${lines.join('\n')}\n`;
}

/** One graded piece of one size. */
export function pieceOf(result: GradeResult, size: string, name: string): Piece {
  const pieces = result.range.sizes.find(({ label }) => label === size)?.pieces;
  const piece = pieces?.find(({ plan }) => plan.name === name);
  if (piece === undefined) throw new RangeError(`no ${name} of size ${size}`);
  return piece;
}

/** Where a point of one size lies, in inches. */
export function inches(
  result: GradeResult,
  size: string,
  piece: string,
  point: string,
): readonly [number, number] {
  const { x, y } = pointOf(pieceOf(result, size, piece), point);
  return [(x * 10) / 254, (y * 10) / 254];
}

/** Cumulative move and step of a point in the rules, in millimeters. */
export function movesOf(
  moves: GradeResult['range']['rules']['moves'],
  result: GradeResult,
  size: string,
  piece: string,
  point: string,
): { readonly x: number; readonly y: number } {
  const { sizes, plans } = result.range;
  const s = sizes.findIndex(({ label }) => label === size);
  const p = plans.findIndex(({ name }) => name === piece);
  const move = moves[s]?.[p]?.[plans[p]?.pointNames.indexOf(point) ?? -1];
  if (move === undefined) throw new RangeError(`no rule for ${piece} ${point} in size ${size}`);
  return move;
}

/** Every point of every size and piece as `size piece point` with its place. */
export function allPoints(
  result: GradeResult,
): ReadonlyMap<string, { readonly x: number; readonly y: number }> {
  return new Map(
    result.range.sizes.flatMap(({ label, pieces }) =>
      pieces.flatMap(({ plan }) =>
        plan.pointNames.map((point) => [
          `${label} ${plan.name} ${point}`,
          pointOf(pieceOf(result, label, plan.name), point),
        ]),
      ),
    ),
  );
}

/** The largest coordinate difference between two results of the same sizes and points. */
export function farthest(a: GradeResult, b: GradeResult): number {
  const [ours, theirs] = [allPoints(a), allPoints(b)];
  if (ours.size !== theirs.size) return NaN;
  let worst = 0;
  for (const [key, { x, y }] of ours) {
    const other = theirs.get(key);
    const gap = Math.max(Math.abs(x - (other?.x ?? NaN)), Math.abs(y - (other?.y ?? NaN)));
    if (!(gap <= worst)) worst = gap;
  }
  return worst;
}

/** A body measurement chart in whole sixteenths of an inch, from the smallest size. */
export interface SixteenthsChart {
  readonly waist: readonly number[];
  readonly hip: readonly number[];
  readonly hipDepth: readonly number[];
  readonly length: readonly number[];
}

function sums(start: number, steps: readonly number[]): number[] {
  return steps.reduce((all, step) => [...all, (all.at(-1) ?? 0) + step], [start]);
}

/** Random charts of 2 to 7 sizes whose girths never fall; steps and breaks are arbitrary. */
export const anyChart: fc.Arbitrary<SixteenthsChart> = fc
  .integer({ min: 1, max: 6 })
  .chain((steps) => {
    const grow = (most: number) =>
      fc.array(fc.integer({ min: 0, max: most }), { minLength: steps, maxLength: steps });
    return fc
      .record({
        waist: fc.integer({ min: 22 * 16, max: 36 * 16 }),
        drop: fc.integer({ min: 4 * 16, max: 14 * 16 }),
        hipDepth: fc.integer({ min: 7 * 16, max: 9 * 16 }),
        length: fc.integer({ min: 18 * 16, max: 32 * 16 }),
        waistSteps: grow(40),
        hipSteps: grow(40),
        depthSteps: grow(3),
        lengthSteps: grow(8),
      })
      .map((chart) => ({
        waist: sums(chart.waist, chart.waistSteps),
        hip: sums(chart.waist + chart.drop, chart.hipSteps),
        hipDepth: sums(chart.hipDepth, chart.depthSteps),
        length: sums(chart.length, chart.lengthSteps),
      }));
  })
  // The first and last size must tell the order of the chart.
  .filter(
    ({ waist, hip }) => (waist.at(-1) ?? 0) + (hip.at(-1) ?? 0) > (waist[0] ?? 0) + (hip[0] ?? 0),
  );

/** The chart typed in inches, or in the centimeters that are exactly as long. */
export function sixteenthsText(chart: SixteenthsChart, unit: 'in' | 'cm' = 'in'): string {
  // 1/16 in is 0.15875 cm, so five decimals hold every sixteenth.
  const typed = (count: number): string =>
    unit === 'in' ? `${count / 16}` : `${(count * 15875) / 100000}`;
  return chartText(unit, {
    waist_girth: chart.waist.map(typed),
    hip_girth: chart.hip.map(typed),
    waist_to_hip: chart.hipDepth.map(typed),
    skirt_length: chart.length.map(typed),
  });
}

/** The quarter method of the pencil skirt with all its defaults, worked out by hand, in inches. */
export function quarterByHand(
  panel: 'front' | 'back',
  body: { waist: number; hip: number; hipDepth: number; length: number },
): Readonly<Record<string, readonly [number, number]>> {
  const sideWaist = body.waist / 4 + 1;
  const sideHip = body.hip / 4 + 0.5;
  const takeUp = sideHip - sideWaist;
  const dart = sideWaist / 2;
  const back = { zip_waist: [-1, 0], zip_hem: [-1, body.length] } as const;
  return {
    center_waist: [0, 0],
    dart_inner: [dart - 0.5, 0],
    dart_center: [dart, 0],
    dart_tip: [dart, panel === 'front' ? 4 : 5],
    dart_outer: [dart + 0.5, 0],
    side_waist: [sideWaist, 0],
    side_waist_handle: [sideWaist + (takeUp * 2) / 3, body.hipDepth / 3],
    side_hip_handle: [sideHip, (body.hipDepth * 2) / 3],
    side_hip: [sideHip, body.hipDepth],
    side_hem: [sideHip - 1, body.length],
    center_hem: [0, body.length],
    center_hip: [0, body.hipDepth],
    ...(panel === 'back' ? back : {}),
  };
}

/** What the pencil skirt brings along for a chart in inches, to be set for the same chart in cm. */
export const INCH_PENCIL: Readonly<Record<string, string>> = {
  hip_ease: '2 in',
  waist_to_hip: '8 in',
  skirt_length: '27 in',
  hem_taper: '1 in',
  front_dart_intake: '1 in',
  front_dart_length: '4 in',
  back_dart_intake: '1 in',
  back_dart_length: '5 in',
  zip_allowance: '1 in',
};
