/** Rule sheets worked out by hand from random charts, and slips planted into them by plain arithmetic. */
import fc from 'fast-check';
import type { PlantedChart } from './planted-chart';
import { WAYS } from './planted-chart';

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
  /** In the unit of the chart, for rounding and for a dart that opens. */
  readonly ruler?: number;
  /** The step that all beyond it on this side are taken as large as. */
  readonly never?: { readonly side: 'after' | 'before'; readonly kept: number };
  /** The size from which moves change over to steps. */
  readonly from?: number;
  /** The column whose numbers are written instead. */
  readonly row?: (name: string) => string;
}

/** What every number is multiplied by where another unit was written. */
const UNIT_FACTORS: Readonly<Record<string, number>> = {
  centimeters: 1 / 2.54,
  inches: 2.54,
  'inches rounded': 2.54,
  'millimeters for inches': 25.4,
  millimeters: 10,
};

/** The cells of every column after the slips, in the unit of the chart, one a size. */
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
    const row = slips.find((slip) => slip.row !== undefined && slip.at(column))?.row?.(column.name);
    if (row !== undefined)
      return (
        worked[COLUMNS.findIndex(({ name, axis }) => name === row && axis === column.axis)] ?? []
      );
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
  if (girth && has('eighth')) share /= 2;
  const row = from === undefined ? chart.sizes.map(() => 0) : chart[from];
  const steps = row.slice(1).map((value, i) => (value - (row[i] ?? 0)) * share);
  for (const { steps: mixed } of slips)
    if (mixed !== undefined) steps[mixed[0]] = steps[mixed[1]] ?? 0;
  const { side, kept = 0 } = has('break-never')?.never ?? {};
  const kind = steps[kept] ?? 0;
  if (side === 'after') steps.fill(kind, kept);
  if (side === 'before') steps.fill(kind, 0, kept);
  const opened = has('intake')?.ruler ?? 0;
  const leg =
    column.axis === 'y'
      ? 0
      : column.name.endsWith('outer')
        ? 1
        : column.name.endsWith('inner')
          ? -1
          : 0;
  steps.forEach((step, i) => (steps[i] = step + (leg * opened) / 2));
  const sign = has('sign') ? -1 : 1;
  const still = has('dart-tip') ? 0 : 1;
  const unit =
    slips.map(({ kind: own }) => UNIT_FACTORS[own]).find((factor) => factor !== undefined) ?? 1;
  const late = has('form-from')?.from;
  const ruler = has('rounded-steps')?.ruler;
  const signed = steps.map((step) => {
    const moved = step * sign * still;
    return ruler === undefined
      ? moved
      : Math.sign(moved) * Math.floor(Math.abs(moved) / ruler + 0.5 + 1e-9) * ruler;
  });
  const cells = chart.sizes.map((_, i) => {
    // From the base outward; with the form exchanged only the last step is written.
    const isStep =
      has('form') !== undefined ||
      (late !== undefined && (late > chart.base ? i >= late : i <= late));
    const first = isStep ? (i > chart.base ? i - 1 : i) : Math.min(i, chart.base);
    const last = isStep ? (i < chart.base ? i + 1 : i) : Math.max(i, chart.base);
    const sum = signed.slice(first, last).reduce((all, step) => all + step, 0);
    if (i === chart.base && has('base')) return 0.4;
    const cell = (i < chart.base ? -sum : sum) * unit;
    return has('inches rounded')
      ? (Math.sign(cell) * Math.floor(Math.abs(cell) * 10 + 0.5 + 1e-9)) / 10
      : cell;
  });
  if (has('unsigned-row')) return cells.map((cell, i) => (i < chart.base ? -cell : cell));
  // The first column is left at zero.
  return has('shifted-row') ? cells.map((_, i) => cells[i - 1] ?? 0) : cells;
}

/** The sheet as a student types it: decimals, one size a column. */
export function sheetText(chart: PlantedChart, cells: readonly (readonly number[])[]): string {
  const rows = COLUMNS.map(({ name, axis }, c) =>
    [name, `d${axis}_${chart.unit}`, ...(cells[c] ?? []).map((cell) => cell.toFixed(5))].join(),
  );
  return [['point', 'axis', ...chart.sizes].join(), ...rows, ''].join('\n');
}

/** Cells that differ by more than 1/32 in. */
export function differing(
  { unit }: PlantedChart,
  a: readonly (readonly number[])[],
  b: readonly (readonly number[])[],
): number {
  return a.flatMap((column, c) =>
    column.filter((cell, i) => Math.abs(cell - (b[c]?.[i] ?? NaN)) > WAYS[unit].tolerance + 1e-6),
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
  'eighth',
  'break-never',
  'inches rounded',
  'millimeters for inches',
  'millimeters',
  'copied',
  'rows',
  'form-from',
  'base',
  'intake',
  'shifted-row',
  'unsigned-row',
] as const;

export const PLANTED_KINDS: readonly string[] = KINDS;

/** Kinds that go through the whole sheet, since a student has one unit and one form in mind. */
const EVERYWHERE: ReadonlySet<string> = new Set([
  ...['centimeters', 'inches', 'form', 'inches rounded', 'millimeters for inches', 'millimeters'],
  ...['form-from', 'base', 'intake'],
]);

/** Kinds that a sheet in one unit alone can have. */
const OF_UNIT: Readonly<Record<string, PlantedChart['unit']>> = {
  'inches rounded': 'in',
  'millimeters for inches': 'in',
  millimeters: 'cm',
};

/** Kinds that are not looked for in the company of others. */
export const LONELY: ReadonlySet<string> = new Set([
  'copied',
  'rows',
  'form-from',
  'base',
  'intake',
  'shifted-row',
  'unsigned-row',
]);

/** The measurements at whose points a kind can happen. */
const MEASUREMENTS: Readonly<Record<string, readonly Measurement[]>> = {
  whole: ['waist', 'hip'],
  half: ['waist', 'hip'],
  eighth: ['waist', 'hip'],
  'break-never': ['waist', 'hip'],
  copied: ['waist', 'hip'],
  rows: ['waist', 'hip'],
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
      if (LONELY.has(kind)) return name === chosen.name && axis === chosen.axis;
      const same = (text: string) => (bothPieces ? text.split('.')[1] : text);
      return same(name) === same(chosen.name) && (kind === 'swap' || axis === chosen.axis);
    });
  return fc
    .record({
      at: place,
      steps: fc.constantFrom(...breaksOf(chart)),
      ruler: fc.constantFrom(...WAYS[chart.unit].rulers.entries()),
    })
    .map(({ at, steps, ruler: [ruler, words] }): Planted => {
      const name = (i: number) => `${chart.sizes[i] ?? ''}-${chart.sizes[i + 1] ?? ''}`;
      if (kind === 'break')
        return { id: `break ${name(steps[0])} as ${name(steps[1])}`, kind, at, steps };
      if (kind === 'rounded-steps') return { id: `${kind} ${words}`, kind, at, ruler };
      return plantedLonely(chart, { id: kind, kind, at }, steps, [ruler, words]);
    });
}

/** A slip with the particulars of its kind. */
function plantedLonely(
  chart: PlantedChart,
  plain: Planted,
  [one, other]: readonly [number, number],
  [ruler, words]: readonly [number, string],
): Planted {
  const { sizes, base } = chart;
  const name = (i: number) => `${sizes[i] ?? ''}-${sizes[i + 1] ?? ''}`;
  const [to] = COLUMNS.filter(plain.at);
  const [piece = '', point = ''] = to?.name.split('.') ?? [];
  const another = point === 'side_hip' ? 'side_waist' : 'side_hip';
  const row = `${piece}.${another}`;
  switch (plain.kind) {
    case 'break-never': {
      const side = one < other ? 'after' : 'before';
      const changed = side === 'after' ? sizes.length - 2 - one : one;
      if (changed < 2)
        return { ...plain, id: `break ${name(other)} as ${name(one)}`, steps: [other, one] };
      return { ...plain, id: `break-never ${side} ${name(one)}`, never: { side, kept: one } };
    }
    case 'copied':
      return {
        ...plain,
        id: `copied ${to?.name ?? ''} ${another} ${to?.axis ?? ''}`,
        row: () => row,
      };
    case 'rows': {
      const [first = '', second = ''] = POINTS.map(([own]) => own).filter(
        (own) => own === point || own === another,
      );
      return {
        ...plain,
        id: `rows ${piece}.${first} ${second} ${to?.axis ?? ''}`,
        at: (column) =>
          column.axis === to?.axis && (column.name === to.name || column.name === row),
        row: (own) => (own === row ? (to?.name ?? '') : row),
      };
    }
    case 'form-from': {
      // In the last size alone a step may be a copy of its neighbor's number.
      const from = base + 3 < sizes.length ? base + 2 : base - 2;
      return { ...plain, id: `steps from ${sizes[from] ?? ''}`, from };
    }
    case 'intake':
      return { ...plain, id: `intake ${words}`, ruler };
    case 'shifted-row':
      return { ...plain, id: 'shifted row 1' };
    case 'unsigned-row':
      return { ...plain, id: 'unsigned row' };
    default:
      return plain;
  }
}

/** True for a slip that a sheet in the unit of this chart can have. */
export function isOfUnit({ unit }: PlantedChart, { kind }: Planted): boolean {
  return (OF_UNIT[kind] ?? unit) === unit;
}

/** True for a sign turned wherever y moves at all: that is a sheet with y up, which is no slip. */
export function turnsAxis(chart: PlantedChart, { kind, at }: Planted): boolean {
  const right = handedIn(chart, []);
  const moving = COLUMNS.filter(
    ({ axis }, c) => axis === 'y' && right[c]?.some((cell) => cell !== 0),
  );
  return kind === 'sign' && moving.length > 0 && moving.every(at);
}
