/** An exercise: a chart, a sheet to fill in, and its key; the same for the same seed. */
import { InputError } from '../../errors';
import { roundTo } from '../../grade/rounding';
import { writtenCsv } from '../../table/written-csv';
import { answerKey, askedPoints } from '../mark/answer-key';
import type { Convention } from '../mark/convention';
import { OWN_CONVENTION, inConvention } from '../mark/convention';
import type { SeriesName } from '../mark/series';
import { rightValues } from '../mark/series';
import { gradeUnchecked } from '../../jobs/grade-chart';
import type { ResultFile } from '../../files/result-file';
import { QUARTER_METHOD } from '../../draft/default-style';
import { UNIT_WORDS, inchFraction, tableNumber, toMillimeters } from '../../units';
import type { ExerciseChart, ExerciseUnit } from './exercise-chart';
import { plantedRow } from './exercise-slip';
import type { Difficulty, Lesson } from './lessons';
import { LESSONS } from './lessons';
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
  /** What it practices, in words. */
  readonly practices: string;
  readonly unit: ExerciseUnit;
  /** For the student: `chart.csv`, `sheet.csv` to fill in, and the project `skirt.csv` that names the style. */
  readonly files: readonly ResultFile[];
  /** `key.csv`: the sheet as it is right. */
  readonly key: ResultFile;
  /** Where a finished sheet has a slip, in which row, and what was done. */
  readonly slip?: string;
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
  const draw = seeded(seed);
  const lesson: Lesson = LESSONS[difficulty];
  const chart = exerciseChart(lesson.growth, unit, draw);
  const made = { seed, difficulty, unit, lesson, ...chart };
  const text = chartText(made);
  const result = gradeUnchecked({
    ...{ chart: text, base: chart.base, style: QUARTER_METHOD },
    ...(lesson.set === undefined ? {} : { set: lesson.set }),
  });
  const key = inConvention(answerKey(result), conventionOf(lesson));
  const plan = result.range.plans.find(({ name }) => name === PIECE);
  const points = lesson.points ?? (plan === undefined ? [] : askedPoints(plan));
  const names = points.flatMap((point): SeriesName[] => [
    { piece: PIECE, point, axis: 'x', form: 'move' },
    { piece: PIECE, point, axis: 'y', form: 'move' },
  ]);
  const right = names.map((row): Row => ({ row, moves: rightValues(key, row) }));
  const planted = lesson.slip === true ? plantedRow(key, names, unit, draw) : undefined;
  const handed = right.map(({ row, moves }): Row =>
    planted === undefined
      ? { row, moves: moves.map((_, i) => (i === key.base ? 0 : undefined)) }
      : { row, moves: row === planted.row ? planted.moves : moves },
  );
  return {
    ...{ base: chart.base, sizes: chart.sizes, difficulty, unit },
    practices: lesson.practices,
    files: [
      { name: 'chart.csv', text },
      { name: 'sheet.csv', text: sheetText(made, handed) },
      { name: 'skirt.csv', text: projectText(made) },
    ],
    key: { name: 'key.csv', text: sheetText(made, right) },
    ...(planted === undefined ? {} : { slip: planted.words }),
  };
}

/** What the files of one exercise are made from. */
interface Made extends ExerciseChart {
  readonly seed: number;
  readonly difficulty: Difficulty;
  readonly unit: ExerciseUnit;
  readonly lesson: Lesson;
}

/** A row with its numbers, mm; undefined where it is to be filled in. */
interface Row {
  readonly row: SeriesName;
  readonly moves: readonly (number | undefined)[];
}

function conventionOf({ zero, up = OWN_CONVENTION.up }: Lesson): Convention {
  const zeros = zero === undefined ? new Map<string, never>() : new Map([[PIECE, [zero]]]);
  return { ...OWN_CONVENTION, zeros, up };
}

/** What a ruler shows, and the numbers of the charts fall on it. */
const RULER: Readonly<Record<ExerciseUnit, number>> = {
  in: toMillimeters(1 / 16, 'in'),
  cm: toMillimeters(1 / 10, 'cm'),
};

function shown(mm: number, unit: ExerciseUnit): string {
  return unit === 'in' ? inchFraction(mm) : tableNumber(mm, unit);
}

function chartText({ seed, difficulty, unit, sizes, rows }: Made): string {
  return [
    `# title: Exercise ${seed}, ${difficulty} (invented, not a standard)`,
    `# unit: ${unit}`,
    ['measurement', ...sizes].join(','),
    ...[...rows].map(([name, values]) =>
      [name, ...values.map((value) => shown(toMillimeters(value, unit), unit))].join(','),
    ),
    '',
  ].join('\n');
}

function sheetText(
  { seed, difficulty, unit, base, sizes, lesson }: Made,
  rows: readonly Row[],
): string {
  const cell = (mm: number | undefined): string => {
    if (mm === undefined) return '';
    return shown(lesson.rounded === true ? roundTo(mm, RULER[unit]) : mm, unit);
  };
  return [
    `# title: Exercise ${seed}, ${difficulty}, in ${UNIT_WORDS[unit]}`,
    `# base: ${base}`,
    `# pieces: ${PIECE}`,
    ...(lesson.zero === undefined ? [] : [`# zero: ${lesson.zero}`]),
    `# y: ${lesson.up === true ? 'up' : 'down'}`,
    ['point', 'axis', ...sizes].join(','),
    ...rows.map(({ row: { piece, point, axis }, moves }) =>
      [`${piece}.${point}`, `d${axis}_${unit}`, ...moves.map(cell)].join(','),
    ),
    '',
  ].join('\n');
}

function projectText({ base, lesson: { points, set = {} } }: Made): string {
  return writtenCsv([
    ['parameter', 'value', 'note'],
    ['chart', 'chart.csv', ''],
    ['style', QUARTER_METHOD, ''],
    ['base', base, ''],
    ...Object.entries(set).map(([name, formula]) => [name, formula, '']),
    ...(points === undefined
      ? []
      : [['points', points.join(','), 'the points that are asked for']]),
  ]);
}
