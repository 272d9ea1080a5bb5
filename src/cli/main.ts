/** The command line: a shell over the pipeline. Commands load what they need when they run. */
import { Command, CommanderError, Option } from 'commander';
import { ALLOWANCE_PRESET_NAMES } from '../draft/allowance-parameters';
import { InputError, cut } from '../errors';
import { EXPORTS } from '../files/exports';
import { JOINS } from '../print/print-options';
import { LINES_SHOWN } from '../render/lines-shown';
import { VERSION } from '../render/version';
import { terminalText } from '../table/characters';
import type { OutputOptions } from './grade-command';
import type { GradeRequestOptions, PatternRequestOptions } from './grade-request';
import type { ExitCode, Io } from './io';
import { refuseMixedOptions, refusePrintingWithoutPaper } from './mixed-options';
import { unprintableArgument } from './argument-text';
import { optionMessage } from './option-words';
import { againstOption, list, replaceOption, unitOption, withStyle } from './options';
import type { PrintCommandOptions } from './print-command';
import { STOP_CODES, Stopped } from './stopped';
import { addStudentCommands } from './student-commands';

/** Characters of a message of commander, which repeats what was typed. */
const LONGEST_ERROR = 600;

const EXIT_CODES = `
Exit codes: 0 nothing failed; 1 results were written, but at least one check
failed; 2 the input or the call was wrong, and nothing was written; 3 the
program itself failed; 4 the terminal, pipe or file it writes its words to
cannot take them.`;

/**
 * Runs one call. Never throws for wrong input: that is one message and the exit code 2. What else is
 * thrown is a fault of the program.
 */
export async function main(argv: readonly string[], world: Io): Promise<ExitCode> {
  const io = withSafeText(world);
  const unprintable = unprintableArgument(argv);
  if (unprintable !== undefined) {
    io.error(`skirtgrade: ${unprintable}\n`);
    return 2;
  }
  let exitCode: ExitCode = 0;
  const program = new Command('skirtgrade')
    .description('Drafts a skirt from body measurements and grades it over a whole size range.')
    .version(VERSION)
    .addHelpText('after', EXIT_CODES);
  const paperOption = (): Option =>
    new Option(
      '--paper <a,b,c>',
      'a4, a3, a2, a1, a0, letter, tabloid, roll=<width> or projector',
    ).argParser(list);
  /** The options by which a chart is graded and printed; `print` is given what paper to print on. */
  const grading = (command: Command, paper: Option, chart: string): Command =>
    withStyle(
      command
        .argument(chart, 'body measurements, one measurement or one size a row')
        .option('--base <size>', 'the size that is drafted first and that all rules start from'),
    )
      .option('--sizes <a,b,c>', 'write these sizes only (all)', list)
      .option('--round <step>', 'round the rules to this step, such as 1/16in or 0.5mm')
      .option('--stack <point>', 'the point on which all sizes lie (center_waist)')
      .addOption(unitOption())
      .option('--fractions', 'write inches as fractions')
      .addOption(againstOption())
      .addOption(
        new Option(
          '--allowances <preset>',
          'ready-made seam allowances; style and --set go first (home)',
        ).choices(ALLOWANCE_PRESET_NAMES),
      )
      .addOption(
        new Option('--lines <lines>', 'sewing lines, cut lines or both (both)').choices(
          LINES_SHOWN,
        ),
      )
      .addOption(paper)
      .option('--margin <length>', 'what the printer leaves blank along each side (10mm)')
      .addOption(
        new Option('--join <way>', 'glue sheets on a strip, or edge to edge (overlap)').choices(
          JOINS,
        ),
      )
      .option('--out <folder>', 'where the results go (output/<name of the chart>)')
      .addOption(replaceOption());

  const grade = grading(program.command('grade'), paperOption(), '[chart.csv]');
  for (const { name, description } of EXPORTS) grade.option(`--${name}`, description);
  grade
    .option('--measures <list.csv>', 'points of measure of your own for the spec')
    .option('--measured <sample.csv>', 'hold a measured sample against the spec')
    .option('--pattern <base.csv>', 'grade this pattern instead of drafting one')
    .option('--rules <rules.csv>', 'its rule sheet')
    .option('--chart <chart.csv>', 'a chart for rules that are formulas of its increments')
    .option('--seams <seams.csv>', 'what is sewn to what, besides equal seam names')
    .description('draft, grade, measure and check every size of a chart, and write the results')
    .action(async (chart: string | undefined, options: GradingOptions, command: Command) => {
      refuseMixedOptions(command, chart);
      refusePrintingWithoutPaper(command);
      const { gradeCommand, patternCommand } = await import('./grade-command');
      const { pattern } = options;
      exitCode =
        pattern === undefined
          ? await gradeCommand(...drafted(chart, options, command), io)
          : await patternCommand({ ...options, pattern }, io);
    });
  grading(program.command('print'), paperOption().default(['a4'], 'a4'), '<chart.csv>')
    .description('print the pattern at true scale, one PDF file a paper, a layer a size')
    .action(async (file: string, given: PrintCommandOptions, command: Command) => {
      const [chart, options] = drafted(file, given, command);
      const { printCommand } = await import('./print-command');
      exitCode = await printCommand(chart, options, io);
    });
  program
    .command('check')
    .description("compare a chart's increments with published body-measurement tables")
    .argument('<chart.csv>', 'body measurements')
    .addOption(againstOption())
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

  addStudentCommands(program, io, (code) => {
    exitCode = code;
  });

  for (const command of [program, ...program.commands]) {
    command
      .exitOverride()
      // Wraps the words beside the longest call too, where 35 columns are left.
      .configureHelp({ minWidthToWrap: 24 })
      .showHelpAfterError('(skirtgrade --help tells more)')
      .configureOutput({
        writeOut: io.out,
        writeErr: io.error,
        outputError: (text, write) => {
          write(`${cut(text.trimEnd(), LONGEST_ERROR)}\n`);
        },
        getOutHelpWidth: () => 80,
      });
  }
  try {
    await program.parseAsync(argv, { from: 'user' });
    return exitCode;
  } catch (error) {
    // Commander has told the user already; its own code 0 is for help and version.
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
    if (error instanceof Stopped) {
      io.error(`skirtgrade: ${error.message}.\n`);
      return STOP_CODES[error.signal];
    }
    if (!(error instanceof InputError)) throw error;
    io.error(`skirtgrade: ${optionMessage(error)}\n`);
    return 2;
  }
}

/** No text that came from a file, from the call or from the system moves what the terminal shows. */
function withSafeText(io: Io): Io {
  return {
    ...io,
    out: (text) => {
      io.out(terminalText(text, io.color));
    },
    error: (text) => {
      io.error(terminalText(text, false));
    },
  };
}

/** What `grade` is called with: a chart to draft from, or a pattern that is there already. */
type GradingOptions = Omit<GradeRequestOptions, 'base'> &
  Partial<PatternRequestOptions> &
  OutputOptions;

/** The chart and the base that drafting cannot do without; their lack is told as for any option. */
function drafted<Options extends { readonly base?: string }>(
  chart: string | undefined,
  options: Options,
  command: Command,
): [string, Options & { readonly base: string }] {
  const { base } = options;
  if (chart === undefined) return command.error("error: missing required argument 'chart.csv'");
  if (base === undefined)
    return command.error("error: required option '--base <size>' not specified");
  return [chart, { ...options, base }];
}
