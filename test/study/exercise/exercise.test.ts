import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exercise } from '../../../src/study/exercise/exercise';
import type { Exercise } from '../../../src/study/exercise/exercise';
import type { Lesson } from '../../../src/study/exercise/lessons';
import { DIFFICULTIES, LESSONS } from '../../../src/study/exercise/lessons';
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

function text({ files }: Pick<Exercise, 'files'>, name: string): string {
  return files.find((file) => file.name === name)?.text ?? '';
}

/** Steps of a girth in mm. */
function stepsOf(chart: string, girth: string): readonly number[] {
  const values = readChart(chart, 'chart').rows.find(({ name }) => name === girth)?.values ?? [];
  return values
    .slice(1)
    .map((value, i) => Math.round(((value ?? NaN) - (values[i] ?? NaN)) * 100) / 100);
}

/** What stands in a cell, in the unit of its table: `-1 3/16`, `0.35`, or nothing. */
function typedNumber(cell: string): number {
  if (cell === '') return NaN;
  const sum = cell
    .replace('-', '')
    .split(' ')
    .map((part) => {
      const [over = NaN, under = 1] = part.split('/').map(Number);
      return over / under;
    })
    .reduce((a, b) => a + b, 0);
  return cell.startsWith('-') ? -sum : sum;
}

/** The rows of a table by their first cells, without lines that state something. */
function rowsOf(table: string, heads: number): ReadonlyMap<string, readonly number[]> {
  return new Map(
    table
      .split('\n')
      .filter((line) => line !== '' && !line.startsWith('#') && !/^(point|measurement),/.test(line))
      .map((line) => {
        const cells = line.split(',');
        return [cells.slice(0, heads).join(' '), cells.slice(heads).map(typedNumber)];
      }),
  );
}

type Rules = ReadonlyMap<string, (i: number) => number>;

/** The quarter method by hand, from the numbers of the chart: what each point moves by, in its unit. */
function byHand(made: Exercise): Rules {
  const { difficulty, sizes, base, unit } = made;
  const chart = rowsOf(text(made, 'chart.csv'), 1);
  const at = sizes.indexOf(base);
  const grown =
    (name: string) =>
    (i: number): number =>
      (chart.get(name)?.[i] ?? NaN) - (chart.get(name)?.[at] ?? NaN);
  const [waist, hip] = [grown('waist_girth'), grown('hip_girth')];
  const [depth, length] = [grown('waist_to_hip'), grown('skirt_length')];
  // The dart takes an eighth of the drop, or always the same; its middle is halfway to the side.
  const intake = (i: number): number => (difficulty === 'shares' ? (hip(i) - waist(i)) / 8 : 0);
  const side = (i: number): number => waist(i) / 4 + intake(i);
  const none = (): number => 0;
  const points: readonly (readonly [string, (i: number) => number, (i: number) => number])[] = [
    ['center_waist', none, none],
    ['dart_inner', (i) => side(i) / 2 - intake(i) / 2, none],
    ['dart_tip', (i) => side(i) / 2, none],
    ['dart_outer', (i) => side(i) / 2 + intake(i) / 2, none],
    ['side_waist', side, none],
    ['side_hip', (i) => hip(i) / 4, depth],
    ['side_hem', (i) => hip(i) / 4, length],
    ['center_hem', none, length],
  ];
  const asked = difficulty === 'darts' ? points.slice(0, 5) : points;
  const isTurned = difficulty === 'turned';
  return new Map(
    asked.flatMap(([name, x, y]) => [
      // Counted from the side at the hip line, with y up.
      [`front.${name} dx_${unit}`, (i) => x(i) - (isTurned ? hip(i) / 4 : 0)],
      [`front.${name} dy_${unit}`, (i) => (isTurned ? depth(i) - y(i) : y(i))],
    ]),
  );
}

const RULERS = { in: 1 / 16, cm: 0.1 };

describe('an exercise', () => {
  it.each(DIFFICULTIES)('%s has the key that is worked out by hand', (difficulty) => {
    fc.assert(
      fc.property(anyExercise, (request) => {
        const made = exercise({ ...request, difficulty });
        const [key, hand] = [rowsOf(made.key.text, 2), byHand(made)];
        expect([...key.keys()]).toEqual([...hand.keys()]);
        const ruler = RULERS[request.unit];
        for (const [name, cells] of key)
          cells.forEach((cell, i) => {
            const exact = hand.get(name)?.(i) ?? NaN;
            if (difficulty === 'rounding') {
              expect(Math.abs(cell - exact), name).toBeLessThanOrEqual(ruler / 2 + 1e-9);
              expect(Math.abs(cell / ruler - Math.round(cell / ruler)), name).toBeLessThan(1e-9);
            } else expect(cell, name).toBeCloseTo(exact, 3);
          });
      }),
      { numRuns: runs(4) },
    );
  });

  it('off the grid is wrong where each step is rounded by itself', () => {
    fc.assert(
      fc.property(anyExercise, (request) => {
        const made = exercise({ ...request, difficulty: 'rounding' });
        const hand = byHand(made);
        const ruler = RULERS[request.unit];
        const at = made.sizes.indexOf(made.base);
        // From the base outward, each step rounded: how far off is the last size on either side?
        const off = [...hand.values()].flatMap((move) =>
          [made.sizes.length - 1, 0].map((end) => {
            const way = Math.sign(end - at);
            let sum = 0;
            for (let i = at; i !== end; i += way)
              sum += Math.round((move(i + way) - move(i)) / ruler) * ruler;
            return Math.abs(sum - move(end));
          }),
        );
        // What a right number may be off: 1/32 in.
        expect(Math.max(...off)).toBeGreaterThan(request.unit === 'in' ? 1 / 32 : 2.54 / 32);
      }),
      { numRuns: runs(6) },
    );
  });

  it('with a slip has one row that is not the key, which is named', () => {
    const factors = new Map([
      ['sign turned', -1],
      ['whole step', 4],
      ['half instead', 2],
      ['an eighth instead', 1 / 2],
    ]);
    const seen = new Set<string>();
    fc.assert(
      fc.property(anyExercise, (request) => {
        const made = exercise({ ...request, difficulty: 'slip' });
        const hand = byHand(made);
        const sheet = rowsOf(text(made, 'sheet.csv'), 2);
        const wrong = [...sheet].filter(([name, cells]) =>
          cells.some((cell, i) => Math.abs(cell - (hand.get(name)?.(i) ?? NaN)) > 0.001),
        );
        expect(wrong).toHaveLength(1);
        const [[name = '', cells = []] = []] = wrong;
        expect(made.slip).toContain(`${name.replace(/_(in|cm)$/, '')}: `);
        for (const [words, factor] of factors)
          if (made.slip?.includes(`: ${words}`) === true) {
            seen.add(words);
            cells.forEach((cell, i) => {
              expect(cell).toBeCloseTo(factor * (hand.get(name)?.(i) ?? NaN), 3);
            });
          }
      }),
      { numRuns: runs(12) },
    );
    expect(seen.size).toBeGreaterThan(1);
  });

  it('is the same for the same seed, and its key is right', () => {
    fc.assert(
      fc.property(anyExercise, (request) => {
        const made = exercise(request);
        expect(exercise(request)).toEqual(made);
        const { points, set }: Lesson = LESSONS[request.difficulty];
        const mark = (sheet: string) =>
          markSheet({
            ...{ style: 'pencil', chart: text(made, 'chart.csv'), base: made.base, sheet },
            ...(points === undefined ? {} : { points }),
            ...(set === undefined ? {} : { set }),
          });
        expect(made.files.map(({ name }) => name)).not.toContain('key.csv');
        expect(mark(made.key.text).cells.every(({ verdict }) => verdict === 'right')).toBe(true);
        if (request.difficulty === 'slip') return;
        const blank = mark(text(made, 'sheet.csv')).cells;
        expect(blank.every(({ verdict }) => verdict === 'missing')).toBe(true);
        expect(blank).toHaveLength((points?.length ?? 8) * 2 * (made.sizes.length - 1));
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
        switch (LESSONS[request.difficulty].growth) {
          case 'even':
          case 'off-grid':
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
