import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exercise } from '../../../src/study/exercise/exercise';
import { DIFFICULTIES } from '../../../src/study/exercise/exercise-chart';
import { seeded } from '../../../src/study/exercise/seeded';
import { readChart } from '../../../src/index';
import { markSheet } from '../../../src/study/mark/mark-sheet';
import { expectRefusal } from '../../expect-refusal';
import { runs } from '../../samples';

const anyExercise = fc.record({
  seed: fc.integer({ min: 0, max: 2 ** 32 - 1 }),
  difficulty: fc.constantFrom(...DIFFICULTIES),
  unit: fc.constantFrom('in', 'cm'),
});

function text({ files }: ReturnType<typeof exercise>, name: string): string {
  return files.find((file) => file.name === name)?.text ?? '';
}

/** Steps of a girth in mm. */
function stepsOf(chart: string, girth: string): readonly number[] {
  const values = readChart(chart, 'chart').rows.find(({ name }) => name === girth)?.values ?? [];
  return values
    .slice(1)
    .map((value, i) => Math.round(((value ?? NaN) - (values[i] ?? NaN)) * 100) / 100);
}

describe('an exercise', () => {
  it('is the same for the same seed, and its key is right', () => {
    fc.assert(
      fc.property(anyExercise, (request) => {
        const made = exercise(request);
        expect(exercise(request)).toEqual(made);
        const mark = (sheet: string) =>
          markSheet({ style: 'pencil', chart: text(made, 'chart.csv'), base: made.base, sheet });
        expect(made.files.map(({ name }) => name)).not.toContain('key.csv');
        expect(mark(made.key.text).cells.every(({ verdict }) => verdict === 'right')).toBe(true);
        const blank = mark(text(made, 'sheet.csv')).cells;
        expect(blank.every(({ verdict }) => verdict === 'missing')).toBe(true);
        expect(blank).toHaveLength(8 * 2 * (made.sizes.length - 1));
      }),
      { numRuns: runs(6) },
    );
  });

  it('is as difficult as it is called', () => {
    fc.assert(
      fc.property(anyExercise, (request) => {
        const chart = text(exercise(request), 'chart.csv');
        const [waist, hip] = [stepsOf(chart, 'waist_girth'), stepsOf(chart, 'hip_girth')];
        const breaks = (steps: readonly number[]) =>
          steps.flatMap((step, i) => (i > 0 && step !== steps[i - 1] ? [i] : []));
        switch (request.difficulty) {
          case 'even':
            expect([breaks(waist), breaks(hip)]).toEqual([[], []]);
            expect(waist).toEqual(hip);
            break;
          case 'break':
            expect(breaks(waist)).toHaveLength(1);
            expect(waist).toEqual(hip);
            break;
          case 'apart':
            expect(breaks(waist)).toHaveLength(1);
            expect(breaks(hip)).toEqual(breaks(waist).map((at) => at - 1));
            break;
          case 'drop':
            waist.forEach((step, i) => {
              expect(step).not.toBe(hip[i]);
            });
        }
      }),
      { numRuns: runs(12) },
    );
  });

  it('refuses a seed that is no whole number', () => {
    for (const seed of [-1, 1.5, NaN, 2 ** 32])
      expectRefusal(() => exercise({ seed }), 'bad-option', { field: 'seed' });
  });
});

it('draws evenly', () => {
  const draw = seeded(1);
  const counts = [0, 0, 0, 0, 0];
  for (let i = 0; i < 10_000; i++) counts[draw(5)] = (counts[draw(5)] ?? 0) + 1;
  for (const count of counts) expect(Math.abs(count - 2000)).toBeLessThan(200);
});
