/** An exercise: a chart, a sheet to fill in, and its key; the same for the same seed. */
import { InputError } from '../../errors';
import { answerKey, askedPoints } from '../mark/answer-key';
import { gradeUnchecked } from '../../jobs/grade-chart';
import type { ResultFile } from '../../files/result-file';
import { QUARTER_METHOD } from '../../draft/default-style';
import { UNIT_WORDS, inchFraction, tableNumber, toMillimeters } from '../../units';
import type { Difficulty, ExerciseUnit } from './exercise-chart';
import { exerciseChart } from './exercise-chart';
import { seeded } from './seeded';

/** What is asked for; the same request gives the same exercise. */
export interface ExerciseRequest {
  /** A whole number from 0 to 2^32 - 1. */
  readonly seed: number;
  /** `even` if absent. */
  readonly difficulty?: Difficulty;
  /** Inches if absent. */
  readonly unit?: ExerciseUnit;
}

/** The exercise as texts, with what its reader must be told. */
export interface Exercise {
  readonly base: string;
  /** Labels from the smallest size; the base is among them. */
  readonly sizes: readonly string[];
  readonly difficulty: Difficulty;
  readonly unit: ExerciseUnit;
  /** For the student: `chart.csv`, `sheet.csv` to fill in, and the project `skirt.csv` that names the style. */
  readonly files: readonly ResultFile[];
  /** `key.csv`: the sheet as it is right. */
  readonly key: ResultFile;
}

const PIECE = 'front';

/** Makes an exercise on the front of the quarter method. Throws InputError `bad-option`. */
export function exercise({ seed, difficulty = 'even', unit = 'in' }: ExerciseRequest): Exercise {
  if (!Number.isInteger(seed) || seed < 0 || seed >= 2 ** 32)
    throw new InputError('bad-option', {
      what: 'the seed is not usable',
      allowed: 'a whole number from 0 to 4294967295',
      got: String(seed),
      place: { field: 'seed' },
    });
  const { sizes, base, rows } = exerciseChart(difficulty, unit, seeded(seed));
  const show = (mm: number): string => (unit === 'in' ? inchFraction(mm) : tableNumber(mm, unit));
  const chart = [
    `# title: Exercise ${seed}, ${difficulty} (invented, not a standard)`,
    `# unit: ${unit}`,
    ['measurement', ...sizes].join(','),
    ...[...rows].map(([name, values]) =>
      [name, ...values.map((value) => show(toMillimeters(value, unit)))].join(','),
    ),
    '',
  ].join('\n');
  const result = gradeUnchecked({ chart, base, style: QUARTER_METHOD });
  const key = answerKey(result);
  const plan = result.range.plans.find(({ name }) => name === PIECE);
  const sheet = (cell: (moves: readonly number[], size: number) => string): string =>
    [
      `# title: Exercise ${seed}, ${difficulty}, in ${UNIT_WORDS[unit]}`,
      `# base: ${base}`,
      `# pieces: ${PIECE}`,
      '# y: down',
      ['point', 'axis', ...sizes].join(','),
      ...(plan === undefined ? [] : askedPoints(plan)).flatMap((point) =>
        (['x', 'y'] as const).map((axis) => {
          const moves = key.points.get(`${PIECE}.${point}`)?.moves[axis] ?? [];
          return [
            `${PIECE}.${point}`,
            `d${axis}_${unit}`,
            ...sizes.map((_, i) => cell(moves, i)),
          ].join(',');
        }),
      ),
      '',
    ].join('\n');
  return {
    base,
    sizes,
    difficulty,
    unit,
    files: [
      { name: 'chart.csv', text: chart },
      { name: 'sheet.csv', text: sheet((_, i) => (i === key.base ? '0' : '')) },
      {
        name: 'skirt.csv',
        text: `parameter,value,note\nchart,chart.csv,\nstyle,${QUARTER_METHOD},\nbase,${base},\n`,
      },
    ],
    key: { name: 'key.csv', text: sheet((moves, i) => show(moves[i] ?? NaN)) },
  };
}
