/** The commands of somebody who learns grading: assess, explain, infer, exercise. */
import type { Command } from 'commander';
import { Option } from 'commander';
import { QUARTER_METHOD } from '../draft/default-style';
import { EXERCISE_UNITS } from '../study/exercise/exercise-chart';
import { DIFFICULTIES } from '../study/exercise/lessons';
import { InputError } from '../errors';
import { HINT_LEVELS } from '../study/mark/hint-levels';
import type { ExerciseCommandOptions } from './exercise-command';
import type { ExplainCommandOptions } from './explain-command';
import type { InferCommandOptions } from './infer-command';
import type { AssessCommandOptions } from './assess-case';
import { refuseMixedOptions } from './mixed-options';
import type { AddCommands } from './options';
import {
  FILES_ALONE,
  list,
  NeededArgument,
  NeededOption,
  needFiles,
  replaceOption,
  unitOption,
  unitsOf,
  withStyle,
  withTelling,
} from './options';

/** Adds `assess`, `explain`, `infer` and `exercise`. */
export const addStudentCommands: AddCommands = (program, io, end) => {
  addAssess(program, io, end);
  addExplain(program, io, end);
  addInfer(program, io, end);
  addExercise(program, io, end);
};

const sheetUnit = (): Option => unitOption("unit of the report (the sheet's)");

const addAssess: AddCommands = (program, io, end) => {
  const assessing = withStyle(
    program
      .command('assess')
      .summary('assess a rule sheet: what is right, wrong or missing')
      .description(
        'assess a rule sheet: which cells are right, what went wrong, what it would make',
      )
      .addArgument(new NeededArgument('chart.csv', 'body measurements'))
      .addArgument(
        new NeededArgument(
          'sheet.csv',
          'the rule sheet, as grade-rules.csv, or a folder of sheets',
        ),
      )
      .addOption(new NeededOption('--base <size>', 'the size from which the sheet counts')),
  )
    .option('--tolerance <length>', 'how far a right cell may be off (1/32in)')
    .option('--zero <point>', 'the point that the sheet counts from (recognized)')
    .option('--pieces <a,b>', 'the pieces that were asked for (all panels)', list)
    .option('--points <a,b>', 'the points that were asked for (all corners)', list)
    .option('--answered', 'leave blank cells out of the score')
    .addOption(
      new Option('--hint <level>', 'how many are wrong, which rows, what to ask, or the answer')
        .choices(HINT_LEVELS.map(String))
        .conflicts(['verbose', 'quiet']),
    )
    .addOption(sheetUnit())
    .option('--fractions', 'inches as fractions (as they are typed)')
    .option('--out <folder>', 'where the marks of a folder go (output/marks-<folder>)')
    .addOption(replaceOption())
    .optionsGroup('A pattern that you have, in the place of the chart:')
    .option('--pattern <base.csv>', 'the pattern that was to be graded')
    .option('--rules <rules.csv>', 'the rule sheet that is right for it')
    .option('--chart <chart.csv>', 'a chart for rules that are formulas of its increments')
    .option('--seams <seams.csv>', 'what is sewn to what, besides equal seam names');
  withTelling(assessing, {
    verbose: 'tell the numbers of every series, and every slip',
    quiet: 'tell only the score',
  }).action(
    async (
      first: string | undefined,
      second: string | undefined,
      options: AssessCommandOptions,
      command: Command,
    ) => {
      const isGiven = options.pattern !== undefined;
      refuseMixedOptions(command, isGiven && second !== undefined ? first : undefined);
      if (!isGiven) needFiles(command);
      const sheet = isGiven ? neededSheet(first) : (second ?? '');
      const { assessCommand } = await import('./assess-command');
      end(await assessCommand({ sheet, chart: isGiven ? undefined : first }, options, io));
    },
  );
};

/** Throws InputError `bad-option` where a pattern is given and no sheet. */
function neededSheet(sheet: string | undefined): string {
  if (sheet !== undefined) return sheet;
  throw new InputError('bad-option', {
    what: 'assess lacks <sheet.csv>',
    allowed: 'skirtgrade assess <sheet.csv> --pattern <base.csv> --rules <rules.csv>',
  });
}

const addExplain: AddCommands = (program, io, end) => {
  const explaining = withStyle(
    program
      .command('explain')
      .description('derive the rule of one point step by step, in exact fractions')
      .addArgument(new NeededArgument('chart.csv', 'body measurements'))
      .argument('[piece.point]', 'such as front.side_waist; the rules of all corners if absent')
      .addOption(new NeededOption('--base <size>', 'the size from which the rule counts'))
      .option('--size <size>', 'derive it for this size only (all)'),
  )
    .option('--round <step>', 'the ruler of the last step (1/16in, or 1mm in a metric chart)')
    .option('--stack <point>', 'the zero of the rule (center_waist)')
    .addOption(unitOption())
    .addOption(new Option('--markdown', 'write Markdown').conflicts(['quiet', 'json']))
    .option('--out <ladder.svg>', 'draw the point in all sizes into this file')
    .addOption(replaceOption());
  withTelling(explaining, { quiet: FILES_ALONE }).action(
    async (
      chart: string,
      point: string | undefined,
      options: ExplainCommandOptions,
      command: Command,
    ) => {
      needFiles(command);
      const { explainCommand } = await import('./explain-command');
      end(await explainCommand(chart, point, options, io));
    },
  );
};

const addInfer: AddCommands = (program, io, end) => {
  const inferring = withStyle(
    program
      .command('infer')
      .summary('tell which body increments a rule sheet implies')
      .description('tell which body increments a rule sheet implies, and the nearest tables')
      .argument('<sheet.csv>', 'a rule sheet, with the columns of grade-rules.csv')
      .option('--base <size>', 'the size from which the sheet counts (the one without moves)'),
    QUARTER_METHOD,
  )
    .option('--zero <point>', 'the point that the sheet counts from (recognized)')
    .addOption(sheetUnit())
    .option('--fractions', 'inches as fractions (as they are typed)');
  withTelling(inferring).action(async (sheet: string, options: InferCommandOptions) => {
    const { inferCommand } = await import('./infer-command');
    end(inferCommand(sheet, options, io));
  });
};

const addExercise: AddCommands = (program, io, end) => {
  withTelling(
    program
      .command('exercise')
      .description('make a chart and a rule sheet to fill in, or its key')
      .requiredOption('--seed <number>', 'the same number gives the same exercise')
      .addOption(
        new Option('--difficulty <kind>', 'what is practiced, easier ones first')
          .choices(DIFFICULTIES)
          .default('even'),
      )
      .addOption(
        unitsOf(new Option('--unit <unit>', 'unit of the exercise'), EXERCISE_UNITS).default('in'),
      )
      .option('--key', 'write the key instead, into a folder of its own')
      .option('--out <folder>', 'where the files go (output/exercise-<seed>-<difficulty>)')
      .addOption(replaceOption()),
    { quiet: FILES_ALONE },
  ).action(async (options: ExerciseCommandOptions) => {
    const { exerciseCommand } = await import('./exercise-command');
    end(await exerciseCommand(options, io));
  });
};
