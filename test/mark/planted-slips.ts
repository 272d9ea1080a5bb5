/** Rule sheets worked out by hand from random charts, and slips planted into them by plain arithmetic. */
import fc from 'fast-check';
import { chartText } from '../skirts';

/** A chart in inches with evenly growing stretches and breaks, as real charts have them. */
export interface PlantedChart {
  readonly sizes: readonly string[];
  readonly base: number;
  readonly waist: readonly number[];
  readonly hip: readonly number[];
  readonly depth: readonly number[];
  readonly length: readonly number[];
}

/** The girth steps of the three-grade tradition of the US, and 1 1/4 and 2 1/2 in. */
const STEPS = [1, 1.25, 1.5, 2, 2.5];

function grown(first: number, steps: readonly number[]): number[] {
  return steps.reduce((all, step) => [...all, (all.at(-1) ?? 0) + step], [first]);
}

export const plantedChart: fc.Arbitrary<PlantedChart> = fc
  .integer({ min: 5, max: 11 })
  .chain((steps) => {
    const ladder = fc
      .array(fc.constantFrom(...STEPS), { minLength: 3, maxLength: 3 })
      .chain((three) =>
        fc.tuple(fc.nat(steps), fc.nat(steps)).map((breaks) => {
          const [a = 0, b = 0] = [...breaks].sort((one, other) => one - other);
          const [small = 1, middle = 1, large = 1] = [...three].sort((one, other) => one - other);
          return Array.from({ length: steps }, (_, i) => (i < a ? small : i < b ? middle : large));
        }),
      );
    return fc.record({
      base: fc.integer({ min: 1, max: steps - 1 }),
      waistSteps: ladder,
      hipSteps: ladder,
      depthStep: fc.constantFrom(0, 1 / 16, 1 / 8),
      lengthStep: fc.constantFrom(0, 1 / 8, 1 / 4),
      steps: fc.constant(steps),
    });
  })
  .map(({ base, waistSteps, hipSteps, depthStep, lengthStep, steps }) => {
    const even = (first: number, step: number) =>
      Array.from({ length: steps + 1 }, (_, i) => first + i * step);
    return {
      sizes: even(4, 2).map(String),
      base,
      waist: grown(24, waistSteps),
      hip: grown(35, hipSteps),
      depth: even(7.5, depthStep),
      length: even(25, lengthStep),
    };
  });

export function plantedChartText({ sizes, waist, hip, depth, length }: PlantedChart): string {
  return chartText(
    'in',
    { waist_girth: waist, hip_girth: hip, waist_to_hip: depth, skirt_length: length },
    sizes,
  );
}

export type Measurement = 'waist' | 'hip' | 'depth' | 'length';

/** One column of a sheet: a point along an axis, and the share of a measurement it moves by. */
export interface Column {
  readonly name: string;
  readonly axis: 'x' | 'y';
  readonly share: number;
  readonly from: Measurement | undefined;
}

/** The quarter method by hand: a quarter at the side, half of it at the dart. */
const POINTS: readonly (readonly [
  string,
  number,
  Measurement | undefined,
  Measurement | undefined,
])[] = [
  ['center_waist', 0, undefined, undefined],
  ['dart_inner', 1 / 8, 'waist', undefined],
  ['dart_tip', 1 / 8, 'waist', undefined],
  ['dart_outer', 1 / 8, 'waist', undefined],
  ['side_waist', 1 / 4, 'waist', undefined],
  ['side_hip', 1 / 4, 'hip', 'depth'],
  ['side_hem', 1 / 4, 'hip', 'length'],
  ['center_hem', 0, undefined, 'length'],
];

export const COLUMNS: readonly Column[] = ['front', 'back'].flatMap((piece) =>
  POINTS.flatMap(([point, share, x, y]): Column[] => [
    { name: `${piece}.${point}`, axis: 'x', share, from: x },
    { name: `${piece}.${point}`, axis: 'y', share: 1, from: y },
  ]),
);

/** One planted slip: its id as the engine would name it, and where. */
export interface Planted {
  readonly id: string;
  readonly kind: string;
  readonly at: (column: Column) => boolean;
  /** Which step is taken as which, for a break. */
  readonly steps?: readonly [number, number];
  /** in, for rounding. */
  readonly ruler?: number;
}

/** The cells of every column after the slips, in inches, one a size. */
export function handedIn(
  chart: PlantedChart,
  slips: readonly Planted[],
): readonly (readonly number[])[] {
  const worked = COLUMNS.map((column) =>
    workedColumn(
      chart,
      column,
      slips.filter(({ at }) => at(column)),
    ),
  );
  return COLUMNS.map((column, c) => {
    const swapped = slips.some(({ kind, at }) => kind === 'swap' && at(column));
    const from = swapped ? c + (column.axis === 'x' ? 1 : -1) : c;
    return worked[from] ?? [];
  });
}

function workedColumn(
  chart: PlantedChart,
  column: Column,
  slips: readonly Planted[],
): readonly number[] {
  const has = (kind: string) => slips.find((slip) => slip.kind === kind);
  let from = column.from;
  if (from === 'waist' && has('hip-for-waist')) from = 'hip';
  else if (from === 'hip' && has('waist-for-hip')) from = 'waist';
  const girth = from === 'waist' || from === 'hip';
  let share = column.share;
  if (girth && has('whole')) share *= 4;
  if (girth && has('half')) share *= 2;
  const row = from === undefined ? chart.sizes.map(() => 0) : chart[from];
  const steps = row.slice(1).map((value, i) => (value - (row[i] ?? 0)) * share);
  for (const { steps: mixed } of slips)
    if (mixed !== undefined) steps[mixed[0]] = steps[mixed[1]] ?? 0;
  const sign = has('sign') ? -1 : 1;
  const still = has('dart-tip') ? 0 : 1;
  const unit = has('centimeters') ? 1 / 2.54 : has('inches') ? 2.54 : 1;
  const ruler = has('rounded-steps')?.ruler;
  const signed = steps.map((step) => {
    const moved = step * sign * still;
    return ruler === undefined
      ? moved
      : Math.sign(moved) * Math.floor(Math.abs(moved) / ruler + 0.5 + 1e-9) * ruler;
  });
  return chart.sizes.map((_, i) => {
    // From the base outward; with the form exchanged only the last step is written.
    const first = has('form') ? (i > chart.base ? i - 1 : i) : Math.min(i, chart.base);
    const last = has('form') ? (i < chart.base ? i + 1 : i) : Math.max(i, chart.base);
    const sum = signed.slice(first, last).reduce((all, step) => all + step, 0);
    return (i < chart.base ? -sum : sum) * unit;
  });
}

/** The sheet as a student types it: decimals of an inch, one size a column. */
export function sheetText(chart: PlantedChart, cells: readonly (readonly number[])[]): string {
  const rows = COLUMNS.map(({ name, axis }, c) =>
    [name, `d${axis}_in`, ...(cells[c] ?? []).map((inches) => inches.toFixed(5))].join(),
  );
  return [['point', 'axis', ...chart.sizes].join(), ...rows, ''].join('\n');
}

/** Cells that differ by more than 1/32 in. */
export function differing(
  a: readonly (readonly number[])[],
  b: readonly (readonly number[])[],
): number {
  return a.flatMap((column, c) =>
    column.filter((cell, i) => Math.abs(cell - (b[c]?.[i] ?? NaN)) > 1 / 32 + 1e-6),
  ).length;
}

const KINDS = [
  'whole',
  'half',
  'sign',
  'swap',
  'hip-for-waist',
  'waist-for-hip',
  'form',
  'break',
  'centimeters',
  'inches',
  'rounded-steps',
  'dart-tip',
] as const;

export const PLANTED_KINDS: readonly string[] = KINDS;

/** Kinds that go through the whole sheet, since a student has one unit and one form in mind. */
const EVERYWHERE: ReadonlySet<string> = new Set(['centimeters', 'inches', 'form']);

/** The measurements at whose points a kind can happen. */
const MEASUREMENTS: Readonly<Record<string, readonly Measurement[]>> = {
  whole: ['waist', 'hip'],
  half: ['waist', 'hip'],
  break: ['waist', 'hip'],
  'hip-for-waist': ['waist'],
  'waist-for-hip': ['hip'],
};

/** Neighboring steps of which a girth has different ones, in both orders; any two if it has none. */
function breaksOf({ waist, hip }: PlantedChart): readonly (readonly [number, number])[] {
  const steps = (row: readonly number[]) => row.slice(1).map((value, i) => value - (row[i] ?? 0));
  const neighbors = steps(waist).flatMap((_, i): [number, number][] => [
    [i, i + 1],
    [i + 1, i],
  ]);
  const breaks = neighbors.filter(([a, b]) =>
    [steps(waist), steps(hip)].some((row) => Math.abs((row[a] ?? NaN) - (row[b] ?? NaN)) > 0.1),
  );
  return breaks.length > 0 ? breaks : [[0, 1]];
}

export function plantedSlip(chart: PlantedChart, kind: string): fc.Arbitrary<Planted> {
  const wanted = MEASUREMENTS[kind] ?? ['waist', 'hip', 'depth', 'length'];
  const columns = COLUMNS.filter(
    ({ from, name }) =>
      from !== undefined &&
      wanted.includes(from) &&
      (kind !== 'dart-tip' || name.endsWith('dart_tip')),
  );
  const place = fc
    .record({ chosen: fc.constantFrom(...columns), bothPieces: fc.boolean() })
    .map(({ chosen, bothPieces }) => ({ name, axis }: Column) => {
      if (EVERYWHERE.has(kind)) return true;
      const same = (text: string) => (bothPieces ? text.split('.')[1] : text);
      return same(name) === same(chosen.name) && (kind === 'swap' || axis === chosen.axis);
    });
  return fc
    .record({
      at: place,
      steps: fc.constantFrom(...breaksOf(chart)),
      ruler: fc.constantFrom(1 / 16, 1 / 8, 1 / 4),
    })
    .map(({ at, steps, ruler }): Planted => {
      const name = (i: number) => `${chart.sizes[i] ?? ''}-${chart.sizes[i + 1] ?? ''}`;
      if (kind === 'break')
        return { id: `break ${name(steps[0])} as ${name(steps[1])}`, kind, at, steps };
      const words =
        new Map([
          [1 / 16, '1/16'],
          [1 / 8, '1/8'],
          [1 / 4, '1/4'],
        ]).get(ruler) ?? '';
      if (kind === 'rounded-steps') return { id: `${kind} ${words} in`, kind, at, ruler };
      return { id: kind, kind, at };
    });
}
