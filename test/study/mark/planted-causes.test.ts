import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { markSheet } from '../../../src/study/mark/mark-sheet';
import { PRINTED_SEED, SEED, runs } from '../../samples';
import type { PlantedChart } from './planted-chart';
import { plantedChart, plantedChartText } from './planted-chart';
import type { Column, Planted } from './planted-slips';
import { COLUMNS, handedIn, sheetText } from './planted-slips';

type Cells = readonly (number | undefined)[];

/** What a habit makes of the right moves of one column, and what the engine should call it. */
interface Habit {
  readonly id: (chart: PlantedChart) => string;
  readonly write: (moves: readonly number[], chart: PlantedChart, column: Column) => Cells;
}

const labelOf = ({ sizes }: PlantedChart, i: number): string => sizes[i] ?? '';
const otherBase = ({ base, sizes }: PlantedChart): number =>
  base > 1 ? base - 1 : sizes.length - 1;

/** The largest size, or beside the largest as base the smallest, has the numbers of its neighbor. */
const copy = ({ sizes, base }: PlantedChart): { readonly to: number; readonly from: number } =>
  base < sizes.length - 2 ? { to: sizes.length - 1, from: sizes.length - 2 } : { to: 0, from: 1 };

/** The quarter method in inches also for a metric chart, whose shops round otherwise. */
const IN_INCHES = {
  ...{ hip_ease: '2 in', hem_taper: '1 in', front_dart_intake: '1 in', back_dart_intake: '1 in' },
  ...{ front_dart_length: '4 in', back_dart_length: '5 in' },
};

/** Where a point of the quarter method lies in the base size, worked out by hand, in the chart's unit. */
function placeOf({ base, unit, ...chart }: PlantedChart, { name, axis }: Column): number {
  const at = (row: 'waist' | 'hip' | 'depth' | 'length'): number => chart[row][base] ?? NaN;
  const [waist, hip, depth, length] = [at('waist'), at('hip'), at('depth'), at('length')];
  const [piece = '', point = ''] = name.split('.');
  const inch = unit === 'in' ? 1 : 2.54;
  const side = waist / 4 + inch;
  const places: Readonly<Record<string, readonly [number, number]>> = {
    center_waist: [0, 0],
    dart_inner: [side / 2 - inch / 2, 0],
    dart_tip: [side / 2, (piece === 'front' ? 4 : 5) * inch],
    dart_outer: [side / 2 + inch / 2, 0],
    side_waist: [side, 0],
    side_hip: [hip / 4 + inch / 2, depth],
    side_hem: [hip / 4 + inch / 2 - inch, length],
    center_hem: [0, length],
  };
  const [x, y] = places[point] ?? [NaN, NaN];
  return axis === 'x' ? x : y;
}

const HABITS: Readonly<Record<string, Habit>> = {
  'another base': {
    id: (chart) => `base ${labelOf(chart, otherBase(chart))}`,
    write: (moves, chart) => moves.map((move) => move - (moves[otherBase(chart)] ?? NaN)),
  },
  'the smallest size': {
    id: (chart) => `base ${labelOf(chart, 0)}`,
    write: (moves) => moves.map((move) => move - (moves[0] ?? NaN)),
  },
  'steps upward': {
    id: () => 'upward',
    write: (moves) => moves.map((move, i) => (i === 0 ? undefined : move - (moves[i - 1] ?? NaN))),
  },
  'columns shifted': {
    id: () => 'shifted 1',
    write: (moves) => moves.map((_, i) => moves[i - 1]),
  },
  'a column copied': {
    id: (chart) => `copied ${labelOf(chart, copy(chart).to)} ${labelOf(chart, copy(chart).from)}`,
    write: (moves, chart) =>
      moves.map((move, i) => (i === copy(chart).to ? moves[copy(chart).from] : move)),
  },
  coordinates: {
    id: () => 'coordinates',
    write: (moves, chart, column) => moves.map((move) => move + placeOf(chart, column)),
  },
  'columns exchanged': {
    id: (chart) => `exchanged ${labelOf(chart, 0)} ${labelOf(chart, chart.sizes.length - 1)}`,
    write: (moves) =>
      moves.map((move, i) => (i === 0 ? moves.at(-1) : i === moves.length - 1 ? moves[0] : move)),
  },
};

/** The whole share at the side of the front, in the hip: a slip that may meet a habit. */
const SLIP: Planted = {
  id: 'whole',
  kind: 'whole',
  at: ({ name, axis }) => name === 'front.side_hip' && axis === 'x',
};

function named(chart: PlantedChart, { id, write }: Habit, slips: readonly Planted[]): boolean {
  const cells = handedIn(chart, slips).map((moves, c) => write(moves, chart, COLUMNS[c] as Column));
  // Blanks are written as such; a sheet is typed with five digits.
  const blank = sheetText(
    chart,
    cells.map((column) => column.map((cell) => cell ?? NaN)),
  ).replaceAll('NaN', '');
  const { cause, diagnosis } = markSheet({
    style: 'pencil',
    chart: plantedChartText(chart),
    base: labelOf(chart, chart.base),
    sheet: blank,
    set: IN_INCHES,
  });
  const causes = cause === undefined ? [] : [cause.cause, ...cause.alike];
  return (
    causes.some((one) => one.id === id(chart)) &&
    diagnosis.unexplained.length === 0 &&
    diagnosis.found.map(({ slip }) => slip.id).join() === slips.map((slip) => slip.id).join()
  );
}

describe('a habit of the whole sheet, planted in any chart', () => {
  it.each(Object.entries(HABITS))('%s is named', (_, habit) => {
    const charts = fc.sample(plantedChart, { seed: SEED, numRuns: runs(2, 80) });
    const found = charts.filter((chart) => named(chart, habit, []));
    expect(found.length / charts.length, PRINTED_SEED).toBe(1);
  });

  it.each(Object.entries(HABITS))('%s is named beside a slip', (_, habit) => {
    const charts = fc.sample(plantedChart, { seed: SEED, numRuns: runs(2, 80) });
    const found = charts.filter((chart) => named(chart, habit, [SLIP]));
    expect(found.length / charts.length, PRINTED_SEED).toBeGreaterThanOrEqual(0.85);
  });
});
