/** `skirtgrade exercise`: a chart and a sheet to fill in, or with `--key` the key of these alone. */
import type { Exercise } from '../study/exercise/exercise';
import { exercise } from '../study/exercise/exercise';
import type { ExerciseUnit } from '../study/exercise/exercise-chart';
import type { Difficulty, Lesson } from '../study/exercise/lessons';
import { LESSONS } from '../study/exercise/lessons';
import { taskWords } from '../study/exercise/task-words';
import { UNIT_WORDS } from '../units';
import type { ExitCode, Io } from './io';
import type { Telling } from './json-document';
import { tell } from './json-document';
import { writtenFacts } from './json-facts';
import { wholeNumber } from './whole-number';
import { wrappedParagraph } from './text-table';
import { namesReport } from './written-report';

/** The options of `exercise` as commander reads them. */
export interface ExerciseCommandOptions extends Telling {
  /** As typed; anything but digits is refused. */
  readonly seed: string;
  readonly difficulty: Difficulty;
  readonly unit: ExerciseUnit;
  /** True for the key, which a student's folder never has. */
  readonly key?: boolean;
  readonly out?: string;
  readonly replace?: boolean;
}

/**
 * Writes the files and tells how to go on. Throws InputError `bad-option` for a seed, or
 * what writing throws.
 */
export async function exerciseCommand(
  {
    seed,
    difficulty,
    unit,
    key: wantsKey = false,
    out,
    replace,
    json,
    quiet,
  }: ExerciseCommandOptions,
  io: Io,
): Promise<ExitCode> {
  const number = seedOf(seed);
  const made = exercise({ seed: number, difficulty, unit });
  const folder = out ?? `output/exercise-${seed}-${difficulty}${wantsKey ? '-key' : ''}`;
  const written = await io.write(folder, wantsKey ? [made.key] : made.files, {
    set: wantsKey ? 'exercise key' : 'exercise',
    replace,
  });
  const { base, sizes } = made;
  return tell(
    io,
    'exercise',
    { json, quiet },
    {
      exitCode: 0,
      words: () => (wantsKey ? keyWords(number, made, folder) : handoutWords(number, made, folder)),
      brief: () => namesReport(written),
      facts: () => ({
        ...{ seed: number, difficulty, practices: made.practices, unit, base, sizes },
        ...(wantsKey && made.slip !== undefined ? { slip: made.slip } : {}),
        ...writtenFacts(written),
      }),
    },
  );
}

function handoutWords(seed: number, made: Exercise, folder: string): string {
  const [grade, fill] = taskWords(made);
  const { slip }: Lesson = LESSONS[made.difficulty];
  return (
    wrappedParagraph(`Exercise ${seed}, ${made.difficulty}: ${grade}`) +
    wrappedParagraph(fill) +
    `\n  ${folder}/chart.csv  the chart\n  ${folder}/sheet.csv  ${slip === true ? 'to put right' : 'to fill in'}\n` +
    `  ${folder}/skirt.csv  base and style, which calls take\n\n` +
    `Have it assessed, with hints before answers:\n` +
    `  skirtgrade assess ${folder}/sheet.csv --hint 1\n` +
    'The key is written by the same call with --key, into a folder of its own.\n'
  );
}

function keyWords(seed: number, { difficulty, unit, key, slip }: Exercise, folder: string): string {
  return (
    wrappedParagraph(
      `The key of exercise ${seed}, ${difficulty}, in ${UNIT_WORDS[unit]}: ${folder}/${key.name}`,
      2,
    ) + (slip === undefined ? '' : wrappedParagraph(`The slip of the sheet is in ${slip}.`, 2))
  );
}

/** Digits alone; their range is the engine's to judge. */
function seedOf(text: string): number {
  const what = 'the seed is not usable';
  return wholeNumber(text, { field: 'seed', what, allowed: 'a whole number, such as 7' });
}
