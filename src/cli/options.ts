/** Options that several commands have in common. */
import { cellsOf } from '../table/line-cells';
import type { Command } from 'commander';
import { Argument, Option } from 'commander';
import { DEFAULT_STYLE } from '../draft/default-style';
import { InputError } from '../errors';
import { unitNamed } from '../table/unit-name';
import type { LengthUnit } from '../units';
import { LENGTH_UNITS } from '../units';
import type { ExitCode, Io } from './io';

/** Adds commands to the program; each tells `end` how it ended. */
export type AddCommands = (program: Command, io: Io, end: (code: ExitCode) => void) => void;

/** An option that collects its values; without any it is an empty list. */
function repeatable(flags: string, description: string): Option {
  return new Option(flags, description)
    .argParser((value: string, previous: readonly string[]) => [...previous, value])
    .default([]);
}

/** A comma list as its parts; one that has a comma in it is quoted as in CSV. */
export function list(value: string): readonly string[] {
  return cellsOf(value, ',').map((part) => part.trim());
}

/**
 * The chart that a call cannot do without, which a project file may have said. Throws InputError `bad-option`.
 */
export function neededChart(chart: string | undefined, command: Command): string {
  if (chart !== undefined) return chart;
  const name = command.name();
  const hasBase = command.options.some((option) => option.attributeName() === 'base');
  const base = hasBase ? ' --base <size>' : '';
  const isBaseLacking = hasBase && command.getOptionValue('base') === undefined;
  throw new InputError('bad-option', {
    what: `${name} lacks <chart.csv>${isBaseLacking ? ', and --base <size> where it has several sizes' : ''}`,
    allowed:
      `skirtgrade ${name} <chart.csv>${base}` +
      (name === 'grade' ? ', or --pattern <base.csv> --rules <rules.csv>' : ''),
  });
}

/**
 * An option that a call cannot do without, but which a project file or the chart may have said: it is told
 * with what else a call lacks.
 */
export class NeededOption extends Option {}

/** A file that a call cannot do without, but which a project file may have said; `name` has no brackets. */
export class NeededArgument extends Argument {
  public constructor(name: string, description: string) {
    super(`[${name}]`, description);
  }
}

/** Ends a call without a file that it needs, as commander would. */
export function needFiles(command: Command): void {
  const isLacking = command.registeredArguments.some(
    (argument, i) => argument instanceof NeededArgument && command.processedArgs[i] === undefined,
  );
  if (isLacking)
    command.error('error: an argument is missing', { code: 'commander.missingArgument' });
}

/** `--against`, which gathers the ids of published tables. */
export function againstOption(): Option {
  return repeatable(
    '--against <table>',
    'published table to compare with; may be repeated (the nearest)',
  );
}

/**
 * `--unit`, which refuses all but the units of length; its help says whose unit goes without it.
 */
export function unitOption(description = "unit (the chart's)"): Option {
  return unitsOf(new Option('--unit <unit>', description), LENGTH_UNITS);
}

/** An option whose value is one of these units, in whatever spelling a file may have it too. */
export function unitsOf(option: Option, units: readonly LengthUnit[]): Option {
  const { parseArg: choose } = option.choices(units);
  return option.argParser((value, previous) => choose?.(unitNamed(value) ?? value, previous));
}

/** `--replace`, without which a file that somebody changed is not replaced. */
export function replaceOption(): Option {
  return new Option('--replace', 'also replace files that somebody changed');
}

/** What `--verbose` tells of a command that has findings. */
export const EVERY_FINDING = 'tell every finding and the tables';
/** What `--quiet` tells of a command that writes files. */
export const FILES_ALONE = 'tell only the files written';

/** The group of these options in help. */
const TOLD = 'The words:';

/** What can be asked for, in the words of help; a command has what it is given words for. */
interface TellingWords {
  readonly verbose?: string;
  readonly quiet?: string;
}

/** Adds how much a command tells: `--json`, and `--verbose` and `--quiet` by their words. One excludes the others. */
export function withTelling(command: Command, words: TellingWords = {}): Command {
  const { verbose, quiet } = words;
  command.optionsGroup(TOLD).addHelpOption(new Option('-h, --help', 'tell this').helpGroup(TOLD));
  if (verbose !== undefined) command.addOption(new Option('--verbose', verbose).conflicts('quiet'));
  if (quiet !== undefined) command.option('--quiet', quiet);
  return command.addOption(
    new Option('--json', 'tell it as a document for programs').conflicts(Object.keys(words)),
  );
}

/** Adds `--style` and `--set`; `style` is meant where none is named. */
export function withStyle(command: Command, style = DEFAULT_STYLE): Command {
  return command
    .option('--style <name|style.csv>', 'a style, or a file of your own', style)
    .addOption(
      repeatable('--set <parameter=formula>', 'one parameter of the style; may be repeated'),
    );
}
