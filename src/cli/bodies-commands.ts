/** The commands about bodies, each by itself. */
import type { Command } from 'commander';
import { Option } from 'commander';
import { ALLOWANCE_PRESET_NAMES } from '../draft/allowance-parameters';
import { LINES_SHOWN } from '../render/lines-shown';
import type { DraftCommandOptions } from './draft-command';
import type { AddCommands } from './options';
import { list, replaceOption, unitOption, withStyle, withTelling } from './options';
import { withPrinting } from './printing-options';

/** Adds `draft`. */
export const addBodiesCommands: AddCommands = (program, io, end) => {
  const drafting = withStyle(
    program
      .command('draft')
      .description('draft, measure and check a skirt for each body of a list, made to measure')
      .argument('<bodies.csv>', 'body measurements, one body a row or a column')
      .optionsGroup('The bodies:')
      .option('--rows <a,b,c>', 'draft these bodies only, by their row or column (all)', list)
      .option('--anonymous', 'write rows in the place of names')
      .optionsGroup('Your pattern:'),
  )
    .addOption(
      new Option(
        '--allowances <preset>',
        'ready-made seam allowances; style and --set go first (home)',
      ).choices(ALLOWANCE_PRESET_NAMES),
    )
    .addOption(unitOption("unit of everything written (the list's)"))
    .option('--fractions', 'write inches as fractions')
    .optionsGroup('The paper:')
    .addOption(new Option('--lines <lines>', 'which lines are drawn (both)').choices(LINES_SHOWN));
  withTelling(
    withPrinting(drafting)
      .optionsGroup('The files:')
      .option('--out <folder>', 'where the results go (output/<name of the list>)')
      .addOption(replaceOption())
      .optionsGroup('The words:'),
  ).action(async (bodies: string, options: DraftCommandOptions, command: Command) => {
    const { refusePrintingWithoutPaper } = await import('./mixed-options');
    refusePrintingWithoutPaper(command);
    const { draftCommand } = await import('./draft-command');
    end(await draftCommand(bodies, options, io));
  });
};
