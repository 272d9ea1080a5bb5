/** Options of `grade` that belong to drafting, to a given pattern, or to printing. */
import type { Command } from 'commander';
import { InputError } from '../errors';
import { optionOf } from './option-words';

const DRAFTING = ['style', 'allowances', 'set', 'against', 'blend', 'page'];
const GIVEN = ['rules', 'library', 'chart', 'seams'];

/**
 * Refuses what would be passed over in silence. Throws InputError `bad-option` if a pattern is given
 * together with a chart to draft from or an option of drafting, or an option of a given pattern
 * without one.
 */
export function refuseMixedOptions(command: Command, chart: string | undefined): void {
  const isGiven = isSaid(command, 'pattern');
  const own = isGiven ? DRAFTING : GIVEN;
  const mixed = own.find((name) => isSaid(command, name));
  if (mixed !== undefined) {
    throw new InputError('bad-option', {
      what: isGiven
        ? 'the option belongs to drafting, and a pattern that is given is not drafted'
        : 'the option belongs to a pattern that is given with --pattern',
      allowed: isGiven
        ? 'without --pattern'
        : `together with --pattern${mixed === 'chart' ? '; a chart to draft from stands without --chart' : ''}`,
      got: optionOf(mixed),
      place: { field: mixed },
    });
  }
  if (isGiven && chart !== undefined) {
    throw new InputError('bad-option', {
      what: 'a pattern that is given is not drafted from a chart',
      allowed: `--chart ${chart}, for rules that are formulas of it`,
      got: chart,
      place: { field: 'pattern' },
    });
  }
}

/** By the call, or by a project file. */
function isSaid(command: Command, name: string): boolean {
  return ['cli', 'config'].includes(command.getOptionValueSource(name) ?? '');
}

const PRINTING = ['margin', 'join', 'booklet'];

/** Throws InputError `bad-option` for an option of printing where `grade` is given no paper. */
export function refusePrintingWithoutPaper(command: Command): void {
  if (command.getOptionValueSource('paper') !== undefined) return;
  const alone = PRINTING.find((name) => command.getOptionValueSource(name) === 'cli');
  if (alone === undefined) return;
  throw new InputError('bad-option', {
    what: 'the option belongs to printing, and grade prints only on a paper that is named',
    allowed: 'together with --paper',
    got: optionOf(alone),
    place: { field: alone },
  });
}
