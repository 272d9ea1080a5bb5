/** The commands about bodies, each by itself. */
import type { Command } from 'commander';
import { Option } from 'commander';
import { ALLOWANCE_PRESET_NAMES } from '../draft/allowance-presets';
import { LINES_SHOWN } from '../render/lines-shown';
import type { CoverageCommandOptions } from './coverage-command';
import type { DraftCommandOptions } from './draft-command';
import type { AddCommands } from './options';
import {
  EVERY_FINDING,
  FILES_ALONE,
  NeededArgument,
  list,
  needFiles,
  replaceOption,
  unitOption,
  withStyle,
  withTelling,
} from './options';
import { withPrinting } from './printing-options';

/** Adds `draft` and `coverage`. */
export const addBodiesCommands: AddCommands = (program, io, end) => {
  const drafting = withStyle(
    program
      .command('draft')
      .description('draft, measure and check a skirt for each body of a list, made to measure')
      .argument('<bodies.csv>', 'body measurements, one body a row or a column')
      .optionsGroup('The bodies:')
      .option('--rows <a,b,c>', 'draft these bodies only, by their row or column (all)', list)
      .option('--anonymous', 'write rows in the place of names')
      .option('--nearest <chart.csv>', 'tell the size of this chart that fits each body best')
      .optionsGroup('Great numbers:')
      .option('--stream', 'draft and measure any number of bodies, as tables')
      .option('--points', 'write their points as well')
      .option('--drawings <a,b>', 'and a drawing of each: svg, dxf', list)
      .option('--workers <count>', 'threads to draft with (as many as the machine has)')
      .optionsGroup('Your pattern:'),
  )
    .addOption(
      new Option(
        '--allowances <preset>',
        'ready-made seam allowances; style and --set go first (home)',
      ).choices(ALLOWANCE_PRESET_NAMES),
    )
    .addOption(unitOption("unit of everything written (the list's)"))
    .option('--fractions', 'inches as fractions in tables too (as they are typed)')
    .optionsGroup('The paper:')
    .addOption(new Option('--lines <lines>', 'which lines are drawn (both)').choices(LINES_SHOWN));
  withTelling(
    withPrinting(drafting)
      .optionsGroup('The files:')
      .option('--out <folder>', 'where the results go (output/<name of the list>)')
      .addOption(replaceOption()),
    { verbose: EVERY_FINDING, quiet: FILES_ALONE },
  ).action(async (bodies: string, options: DraftCommandOptions, command: Command) => {
    const { refusePrintingWithoutPaper } = await import('./mixed-options');
    refusePrintingWithoutPaper(command);
    const { draftCommand } = await import('./draft-command');
    end(await draftCommand(bodies, options, io));
  });
  addCoverage(program, io, end);
};

const addCoverage: AddCommands = (program, io, end) => {
  const covering = withStyle(
    program
      .command('coverage')
      .description('tell whom the sizes of a chart fit, and whom they leave out')
      .addArgument(
        new NeededArgument('chart.csv', 'body measurements, one measurement or one size a row'),
      )
      .optionsGroup('The bodies:')
      .option('--population <name>', 'a survey that comes with the program (us-army-women-1988)')
      .option('--bodies <survey.csv>', 'a list of measured bodies instead, one a row')
      .option('--weights <column>', 'its column of how many people each stands for')
      .optionsGroup('What fits:')
      .option('--waist-tolerance <length>', 'how far a waist may be off (2cm, or 3/4in)')
      .option('--hip-tolerance <length>', 'how far a hip may be off (4cm, or 1 1/2in)')
      .option('--give <percent>', 'how much the cloth gives, such as 5%'),
  )
    .optionsGroup('A range proposed:')
    .option('--suggest <count>', 'propose so many sizes for the same bodies')
    .optionsGroup('The files:')
    .option('--out <folder>', 'write the shares (CSV) and their picture (SVG)')
    .addOption(replaceOption())
    .optionsGroup('The words:')
    .addOption(unitOption("unit of what is told (the chart's)"))
    .option('--fractions', 'inches as fractions in tables too (as they are typed)');
  withTelling(covering, { quiet: `${FILES_ALONE}, or the share served` }).action(
    async (chart: string, options: CoverageCommandOptions, command: Command) => {
      needFiles(command);
      const { coverageCommand } = await import('./coverage-command');
      end(await coverageCommand(chart, options, io));
    },
  );
};
