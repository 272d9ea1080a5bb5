/** The command line: a shell over the pipeline. Commands load what they need when they run. */
import { Command, CommanderError, Option } from 'commander';
import { InputError } from '../errors';
import { LENGTH_UNITS } from '../units';
import { VERSION } from '../version';
import { DIFFICULTIES } from '../exercise/exercise-chart';
import type { ExerciseCommandOptions } from './exercise-command';
import type { ExplainCommandOptions } from './explain-command';
import type { GradeCommandOptions } from './grade-command';
import type { InferCommandOptions } from './infer-command';
import type { Io } from './io';
import type { MarkCommandOptions } from './mark-command';

/** 0 nothing failed; 1 results were written but a check failed; 2 wrong input, nothing written. */
export type ExitCode = 0 | 1 | 2;

const EXIT_CODES = `
Exit codes: 0 nothing failed; 1 results were written, but at least one check
failed; 2 the input or the call was wrong, and nothing was written.`;

/** Runs one call. Never throws for wrong input: that is one message and the exit code 2. */
export async function main(argv: readonly string[], io: Io): Promise<ExitCode> {
  let exitCode: ExitCode = 0;
  const program = new Command('skirtgrade')
    .description('Drafts a skirt from body measurements and grades it over a whole size range.')
    .version(VERSION)
    .addHelpText('after', EXIT_CODES);
  const unitOption = (): Option =>
    new Option('--unit <unit>', "unit of everything written (the chart's)").choices(LENGTH_UNITS);

  program
    .command('grade')
    .description('draft, grade, measure and check every size of a chart, and write the results')
    .argument('<chart.csv>', 'body measurements, one measurement or one size a row')
    .requiredOption('--base <size>', 'the size that is drafted first and that all rules start from')
    .option('--style <name|style.csv>', 'a style of the engine, or a style file', 'pencil')
    .option('--set <parameter=formula>', 'one parameter of the style; may be repeated', collect, [])
    .option('--sizes <a,b,c>', 'write these sizes only (all)', list)
    .option('--round <step>', 'round the rules to this step, such as 1/16in or 0.5mm')
    .option('--stack <point>', 'the point on which all sizes lie (center_waist)')
    .addOption(unitOption())
    .option('--fractions', 'write inches as fractions')
    .option('--against <table>', 'published table to compare with; may be repeated', collect, [])
    .option('--out <folder>', 'where the results go (output/<name of the chart>)')
    .action(async (chart: string, options: GradeCommandOptions) => {
      const { gradeCommand } = await import('./grade-command');
      exitCode = gradeCommand(chart, options, io);
    });
  program
    .command('check')
    .description("compare a chart's increments with published body-measurement tables")
    .argument('<chart.csv>', 'body measurements')
    .option('--against <table>', 'published table to compare with; may be repeated', collect, [])
    .addOption(unitOption())
    .option('--fractions', 'show inches as fractions')
    .action(async (chart: string, options: { against: string[] }) => {
      const { checkCommand } = await import('./check-command');
      exitCode = checkCommand(chart, options, io);
    });
  program
    .command('chart')
    .description('print a chart in canonical form: one measurement a row')
    .argument('<chart.csv>', 'body measurements, in either layout')
    .addOption(unitOption())
    .action(async (chart: string, options: object) => {
      const { chartCommand } = await import('./chart-command');
      exitCode = chartCommand(chart, options, io);
    });
  program
    .command('styles')
    .description('list the styles, or every parameter of one style')
    .argument('[name]', 'a style')
    .action(async (name: string | undefined) => {
      const { stylesCommand } = await import('./styles-command');
      exitCode = stylesCommand(name, io);
    });

  program
    .command('mark')
    .description('mark a rule sheet: which cells are right, what went wrong, what it would make')
    .argument('<chart.csv>', 'body measurements')
    .argument('<sheet.csv>', 'the rule sheet, with the columns of grade-rules.csv')
    .requiredOption('--base <size>', 'the size from which the sheet counts')
    .option('--style <name|style.csv>', 'a style of the engine, or a style file', 'pencil')
    .option('--set <parameter=formula>', 'one parameter of the style; may be repeated', collect, [])
    .option('--tolerance <length>', 'how far a right cell may be off (1/32in)')
    .option('--zero <point>', 'the point that the sheet counts from (recognized)')
    .option('--pieces <a,b>', 'the pieces that were asked for (all panels)', list)
    .addOption(
      new Option('--unit <unit>', "unit of the report (the sheet's)").choices(LENGTH_UNITS),
    )
    .option('--fractions', 'show inches as fractions')
    .action(async (chart: string, sheet: string, options: MarkCommandOptions) => {
      const { markCommand } = await import('./mark-command');
      exitCode = markCommand(chart, sheet, options, io);
    });
  program
    .command('explain')
    .description('derive the rule of one point step by step, in exact fractions')
    .argument('<chart.csv>', 'body measurements')
    .argument('<piece.point>', 'such as front.side_waist')
    .requiredOption('--base <size>', 'the size from which the rule counts')
    .option('--size <size>', 'derive it for this size only (all)')
    .option('--style <name|style.csv>', 'a style of the engine, or a style file', 'pencil')
    .option('--set <parameter=formula>', 'one parameter of the style; may be repeated', collect, [])
    .option('--round <step>', 'the ruler of the last step (1/16in, or 1mm in a metric chart)')
    .option('--stack <point>', 'the zero of the rule (center_waist)')
    .addOption(unitOption())
    .option('--markdown', 'write Markdown')
    .option('--out <ladder.svg>', 'draw the point in all sizes into this file')
    .action(async (chart: string, point: string, options: ExplainCommandOptions) => {
      const { explainCommand } = await import('./explain-command');
      exitCode = explainCommand(chart, point, options, io);
    });
  program
    .command('infer')
    .description('tell which body increments a rule sheet implies, and the nearest tables')
    .argument('<sheet.csv>', 'a rule sheet, with the columns of grade-rules.csv')
    .option('--base <size>', 'the size from which the sheet counts (the one without moves)')
    .option('--style <name|style.csv>', 'a style of the engine, or a style file', 'pencil')
    .option('--set <parameter=formula>', 'one parameter of the style; may be repeated', collect, [])
    .option('--zero <point>', 'the point that the sheet counts from (recognized)')
    .addOption(
      new Option('--unit <unit>', "unit of the report (the sheet's)").choices(LENGTH_UNITS),
    )
    .option('--fractions', 'show inches as fractions')
    .action(async (sheet: string, options: InferCommandOptions) => {
      const { inferCommand } = await import('./infer-command');
      exitCode = inferCommand(sheet, options, io);
    });
  program
    .command('exercise')
    .description('make a chart, a rule sheet to fill in, and its key')
    .requiredOption('--seed <number>', 'the same number gives the same exercise')
    .addOption(
      new Option('--difficulty <kind>', 'even steps, one break, breaks apart, unequal drop')
        .choices(DIFFICULTIES)
        .default('even'),
    )
    .addOption(
      new Option('--unit <unit>', 'unit of the exercise').choices(['in', 'cm']).default('in'),
    )
    .option('--out <folder>', 'where the files go (output/exercise-<seed>-<difficulty>)')
    .action(async (options: ExerciseCommandOptions) => {
      const { exerciseCommand } = await import('./exercise-command');
      exitCode = exerciseCommand(options, io);
    });

  for (const command of [program, ...program.commands]) {
    command
      .exitOverride()
      // Wraps the words beside the longest call too, where 35 columns are left.
      .configureHelp({ minWidthToWrap: 24 })
      .showHelpAfterError('(skirtgrade --help tells more)')
      .configureOutput({ writeOut: io.out, writeErr: io.error, getOutHelpWidth: () => 80 });
  }
  try {
    await program.parseAsync(argv, { from: 'user' });
    return exitCode;
  } catch (error) {
    // Commander has told the user already; its own code 0 is for help and version.
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
    if (!(error instanceof InputError)) throw error;
    io.error(`skirtgrade: ${error.message}\n`);
    return 2;
  }
}

function collect(value: string, previous: readonly string[]): readonly string[] {
  return [...previous, value];
}

function list(value: string): readonly string[] {
  return value.split(',').map((part) => part.trim());
}
