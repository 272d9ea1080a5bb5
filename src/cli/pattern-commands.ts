/** The commands that make a pattern, and hold two against each other: grade, print, page and compare. */
import type { Command } from 'commander';
import { Option } from 'commander';
import { ALLOWANCE_PRESET_NAMES } from '../draft/allowance-presets';
import { EXPORTS } from '../files/exports';
import { LINES_SHOWN } from '../render/lines-shown';
import type { OutputOptions } from './grade-command';
import type { CompareCommandOptions } from './compare-command';
import type { GradeRequestOptions, PatternRequestOptions } from './grade-request';
import { refuseMixedOptions, refusePrintingWithoutPaper } from './mixed-options';
import type { AddCommands } from './options';
import {
  EVERY_FINDING,
  FILES_ALONE,
  againstOption,
  list,
  neededChart,
  replaceOption,
  unitOption,
  withStyle,
  withTelling,
} from './options';
import type { PageCommandOptions } from './page-command';
import type { PrintCommandOptions } from './print-command';
import { paperOption, withPrinting } from './printing-options';

/** Adds `grade`, `print`, `page` and `compare`. */
export const addPatternCommands: AddCommands = (program, io, end) => {
  const grade = grading(program.command('grade'), paperOption(), '[chart.csv]');
  grade.optionsGroup('The files:');
  for (const { name, description } of EXPORTS) grade.option(`--${name}`, description);
  grade
    .option('--page', 'page.html: the nest and all files, in a browser')
    .option('--enlarge <times>', 'how many times as long --moves draws moves (what suits them)')
    .option('--unfold', 'draw pieces on the fold whole in nest.dxf')
    .option('--measures <list.csv>', 'points of measure of your own for the spec')
    .option('--measured <sample.csv>', 'hold a measured sample against the spec')
    .optionsGroup('A pattern that you have:')
    .option('--pattern <base.csv>', 'grade this pattern instead of drafting one')
    .option('--rules <rules.csv>', 'its rule sheet')
    .option('--library <named.csv>', 'named rules that the rule sheets of several styles use')
    .option('--chart <chart.csv>', 'a chart for rules that are formulas of its increments')
    .option('--seams <seams.csv>', 'what is sewn to what, besides equal seam names')
    .summary('draft, grade and check every size of a chart, and write it')
    .description('draft, grade, measure and check every size of a chart, and write the results')
    .action(async (chart: string | undefined, options: GradingOptions, command: Command) => {
      refuseMixedOptions(command, chart);
      refusePrintingWithoutPaper(command);
      const { gradeCommand, patternCommand } = await import('./grade-command');
      const { pattern } = options;
      end(
        pattern === undefined
          ? await gradeCommand(neededChart(chart, command), options, io)
          : await patternCommand({ ...options, pattern }, io),
      );
    });
  grading(program.command('print'), paperOption(' (a4)').default(['a4']), '[chart.csv]')
    .summary('print the pattern at true scale, one PDF file a paper')
    .description('print the pattern at true scale, one PDF file a paper, a layer a size')
    .action(async (chart: string | undefined, options: PrintCommandOptions, command: Command) => {
      const { printCommand } = await import('./print-command');
      end(await printCommand(neededChart(chart, command), options, io));
    });
  withTelling(
    drafting(program.command('page'), '[chart.csv]')
      .optionsGroup('The files:')
      .option('--out <page.html>', 'where the page goes', 'page.html')
      .addOption(replaceOption()),
    { quiet: FILES_ALONE },
  )
    .description('write one file that a browser opens: the chart, its nest and the whole engine')
    .action(async (chart: string | undefined, options: PageCommandOptions) => {
      const { pageCommand } = await import('./page-command');
      end(await pageCommand(chart, options, io));
    });
  addCompare(program, io, end);
};

const addCompare: AddCommands = (program, io, end) => {
  withTelling(
    program
      .command('compare')
      .summary('tell what changed from one version of a style to the next')
      .description('hold two versions of a style against each other, number by number')
      .argument('<before>', 'a folder that grade wrote; a chart, a pattern or a rule sheet')
      .argument('<now>', 'what it was written, or changed to, since')
      .option('--size <size>', 'the size that is drawn (the middle one of both)')
      .option('--pattern <base.csv>', 'the pattern that two rule sheets are for')
      .option('--out <folder>', 'write a table, a page to sign and a drawing there')
      .addOption(replaceOption()),
    { quiet: `${FILES_ALONE}, or how much changed` },
  ).action(async (before: string, now: string, options: CompareCommandOptions) => {
    const { compareCommand } = await import('./compare-command');
    end(await compareCommand(before, now, options, io));
  });
};

/** The options by which a chart is graded and printed; `print` is given what paper to print on. */
function grading(command: Command, paper: Option, chart: string): Command {
  const printing = withPrinting(
    drafting(command, chart).optionsGroup('The paper:').addOption(linesOption()),
    paper,
  )
    .optionsGroup('The files:')
    .option('--out <folder>', 'where the results go (output/<chart>)')
    .addOption(replaceOption());
  return withTelling(printing, { verbose: EVERY_FINDING, quiet: FILES_ALONE });
}

function linesOption(): Option {
  return new Option('--lines <lines>', 'which lines are drawn (both)').choices(LINES_SHOWN);
}

/** The options by which the sizes of a chart are drafted. */
function drafting(command: Command, chart: string): Command {
  return withStyle(
    command
      .argument(chart, 'body measurements, as `help charts` has them')
      .optionsGroup('Your pattern:')
      .option('--base <size>', 'the size that all rules start from'),
  )
    .option('--sizes <a,b,c>', 'write these sizes only (all)', list)
    .option('--blend <parts>', 'one body between sizes: "waist 12, hip 16"', list)
    .option('--round <step>', 'round the rules, such as to 1/16in or 0.5mm')
    .option('--stack <point>', 'the point on which all sizes lie (center_waist)')
    .addOption(unitOption())
    .option('--fractions', 'inches as fractions in tables too (as they are typed)')
    .addOption(againstOption())
    .addOption(
      new Option(
        '--allowances <preset>',
        'ready-made seam allowances; style and --set go first (home)',
      ).choices(ALLOWANCE_PRESET_NAMES),
    );
}

/** What `grade` is called with: a chart to draft from, or a pattern that is there already. */
type GradingOptions = GradeRequestOptions & Partial<PatternRequestOptions> & OutputOptions;
