/** Random charts, in inches and in centimeters, from which rule sheets are worked out by hand. */
import fc from 'fast-check';
import { chartText } from '../../skirts';

/** A chart with evenly growing stretches and breaks, as real charts have them; lengths in its unit. */
export interface PlantedChart {
  readonly unit: 'in' | 'cm';
  readonly sizes: readonly string[];
  readonly base: number;
  readonly waist: readonly number[];
  readonly hip: readonly number[];
  readonly depth: readonly number[];
  readonly length: readonly number[];
}

/**
 * Girth steps: the three-grade tradition of the US, and 1 1/4 and 2 1/2 in; 4 and 6 cm of EN 13402-3,
 * and 2, 3 and 5 cm. Depths, lengths and rulers: common practice, no source.
 */
export const WAYS = {
  in: {
    steps: [1, 1.25, 1.5, 2, 2.5],
    depths: [0, 1 / 16, 1 / 8],
    lengths: [0, 1 / 8, 1 / 4],
    rulers: new Map([
      [1 / 16, '1/16 in'],
      [1 / 8, '1/8 in'],
      [1 / 4, '1/4 in'],
    ]),
    first: { waist: 24, hip: 35, depth: 7.5, length: 25 },
    tolerance: 1 / 32,
  },
  cm: {
    steps: [2, 3, 4, 5, 6],
    depths: [0, 0.2, 0.3],
    lengths: [0, 0.5, 1],
    rulers: new Map([
      [0.1, '0.1 cm'],
      [0.25, '0.25 cm'],
      [0.5, '0.5 cm'],
    ]),
    first: { waist: 62, hip: 88, depth: 19, length: 62 },
    tolerance: 2.54 / 32,
  },
} as const;

function grown(first: number, steps: readonly number[]): number[] {
  return steps.reduce((all, step) => [...all, (all.at(-1) ?? 0) + step], [first]);
}

export const plantedChart: fc.Arbitrary<PlantedChart> = fc
  .tuple(fc.constantFrom('in', 'cm'), fc.integer({ min: 5, max: 11 }))
  .chain(([unit, steps]) => {
    const way = WAYS[unit];
    const ladder = fc
      .array(fc.constantFrom(...way.steps), { minLength: 3, maxLength: 3 })
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
      depthStep: fc.constantFrom(...way.depths),
      lengthStep: fc.constantFrom(...way.lengths),
      steps: fc.constant(steps),
      unit: fc.constant(unit),
    });
  })
  .map(({ base, waistSteps, hipSteps, depthStep, lengthStep, steps, unit }) => {
    const { first } = WAYS[unit];
    const even = (start: number, step: number) =>
      Array.from({ length: steps + 1 }, (_, i) => start + i * step);
    return {
      unit,
      sizes: even(4, 2).map(String),
      base,
      waist: grown(first.waist, waistSteps),
      hip: grown(first.hip, hipSteps),
      depth: even(first.depth, depthStep),
      length: even(first.length, lengthStep),
    };
  });

export function plantedChartText({ unit, sizes, waist, hip, depth, length }: PlantedChart): string {
  return chartText(
    unit,
    { waist_girth: waist, hip_girth: hip, waist_to_hip: depth, skirt_length: length },
    sizes,
  );
}
