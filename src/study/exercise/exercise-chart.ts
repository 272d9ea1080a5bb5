/** Invented charts for exercises, by difficulty. */
import type { Draw } from './seeded';

/**
 * How girths grow. `even`: one step all through; `break`: the step changes once; `apart`: waist and hip change
 * at different sizes; `drop`: waist and hip grow by different steps, so that the drop is never the same;
 * `off-grid`: one step, an eighth of which no ruler has, in so many sizes that rounding adds up.
 */
export type Growth = 'even' | 'break' | 'apart' | 'drop' | 'off-grid';

/** A chart as values, before it is written. */
export interface ExerciseChart {
  /** Labels from the smallest size. */
  readonly sizes: readonly string[];
  readonly base: string;
  /** Measurement rows in the unit of the chart, by name. */
  readonly rows: ReadonlyMap<string, readonly number[]>;
}

/** Units in which exercises come. */
export const EXERCISE_UNITS = ['in', 'cm'] as const;

/** What rulers show: inches in fractions, or centimeters. */
export type ExerciseUnit = (typeof EXERCISE_UNITS)[number];

interface Scale {
  readonly labels: readonly string[];
  /** Girth steps from small to large: the three-grade tradition, and 4, 5 and 6 cm. */
  readonly steps: readonly number[];
  /** Steps of which an eighth is between two lines of the ruler, far from both. */
  readonly offGrid: readonly number[];
  readonly waist: number;
  readonly hip: number;
  /** Choices for the steps of waist-to-hip and skirt length. */
  readonly depths: readonly number[];
  readonly lengths: readonly number[];
  readonly depth: number;
  readonly length: number;
}

const SCALES: Readonly<Record<ExerciseUnit, Scale>> = {
  in: {
    labels: ['4', '6', '8', '10', '12', '14', '16', '18', '20'],
    steps: [1, 1.5, 2],
    offGrid: [0.75, 1.25, 1.75],
    waist: 25,
    hip: 35,
    depths: [0, 1 / 16, 1 / 8],
    lengths: [0, 1 / 8, 1 / 4],
    depth: 7.75,
    length: 24,
  },
  cm: {
    labels: ['34', '36', '38', '40', '42', '44', '46', '48', '50'],
    steps: [4, 5, 6],
    offGrid: [3.5, 4.5, 4.5],
    waist: 64,
    hip: 88,
    depths: [0, 0.2, 0.3],
    lengths: [0, 0.5, 1],
    depth: 20,
    length: 60,
  },
};

/** A chart of five to eight sizes with the base inside it. */
export function exerciseChart(growth: Growth, unit: ExerciseUnit, draw: Draw): ExerciseChart {
  const scale = SCALES[unit];
  // Rounded by steps, seven sizes are wrong by more than a rule may be off on one side of any base.
  const count = growth === 'off-grid' ? 7 + draw(2) : 5 + draw(4);
  const first = draw(scale.labels.length - count + 1);
  const sizes = scale.labels.slice(first, first + count);
  const { waist, hip } = girthSteps(
    growth,
    count - 1,
    growth === 'off-grid' ? scale.offGrid : scale.steps,
    draw,
  );
  const even = (values: readonly number[]): readonly number[] => {
    const step = values[draw(values.length)] ?? 0;
    return waist.map(() => step);
  };
  return {
    sizes,
    base: sizes[1 + draw(count - 2)] ?? '',
    rows: new Map([
      ['waist_girth', summed(scale.waist + draw(3), waist)],
      ['hip_girth', summed(scale.hip + draw(3), hip)],
      ['waist_to_hip', summed(scale.depth, even(scale.depths))],
      ['skirt_length', summed(scale.length + draw(3), even(scale.lengths))],
    ]),
  };
}

function girthSteps(
  growth: Growth,
  count: number,
  steps: readonly number[],
  draw: Draw,
): { readonly waist: readonly number[]; readonly hip: readonly number[] } {
  const [small = 0, middle = 0, large = 0] = steps;
  const pairs = [
    [small, middle],
    [middle, large],
    [small, large],
  ] as const;
  const [below, above] = pairs[draw(pairs.length)] ?? [small, large];
  const broken = (at: number): readonly number[] =>
    Array.from({ length: count }, (_, i) => (i < at ? below : above));
  const at = 1 + draw(count - 2);
  switch (growth) {
    case 'even':
    case 'off-grid':
      return { waist: broken(count), hip: broken(count) };
    case 'break':
      return { waist: broken(at), hip: broken(at) };
    case 'apart':
      return { waist: broken(at + 1), hip: broken(at) };
    case 'drop':
      // The hip keeps a step between those of the waist: the drop grows, then falls.
      return { waist: broken(at), hip: Array.from({ length: count }, () => (below + above) / 2) };
  }
}

function summed(start: number, steps: readonly number[]): readonly number[] {
  return steps.reduce<readonly number[]>(
    (all, step) => [...all, (all.at(-1) ?? 0) + step],
    [start],
  );
}
