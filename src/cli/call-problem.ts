/** What is wrong with a call that commander refuses, said as any wrong input is. */
import type { Argument, Command, CommanderError, Option } from 'commander';
import type { InputProblem } from '../errors';
import { nearNames } from '../table/near-names';
import { NeededArgument, NeededOption } from './options';

/** What a call says that has options alone. */
export const NO_COMMAND = 'no command is named';

/** The command of a refused call; none where the call names none that there is. */
export function calledCommand(program: Command): Command | undefined {
  return program.commands.find((command) => command.name() === program.args[0]);
}

/** The problem with its near misses; everything that a call lacks is told at once. */
export function callProblem(error: CommanderError, program: Command): InputProblem {
  const command = calledCommand(program) ?? program;
  const quoted = [...error.message.matchAll(/'([^']*)'/gu)].map(([, text = '']) => text);
  const [first = '', second = ''] = quoted.map((text) => text.replace(/ .*/u, ''));
  switch (error.code) {
    case 'commander.unknownCommand':
      return unknownCommand(program, first);
    case 'commander.unknownOption':
      return unknownOption(program, command, first);
    case 'commander.missingArgument':
    case 'commander.missingMandatoryOptionValue': {
      // What is lacking may be there, misspelled.
      const unknown = command.args.find((text) => text.startsWith('--'));
      if (unknown !== undefined) return unknownOption(program, command, unknown);
      return {
        what: `${command.name()} lacks ${missing(command).join(' and ')}`,
        allowed: usage(command),
      };
    }
    case 'commander.excessArguments':
      return tooMany(command);
    case 'commander.optionMissingArgument':
      return { what: `${first} has no value`, allowed: quoted[0] ?? first };
    case 'commander.invalidArgument':
      return {
        what: `${first} has no such choice`,
        allowed: /Allowed choices are (.*)\.$/u.exec(error.message)?.[1] ?? 'what help lists',
        got: quoted[1] ?? second,
      };
    case 'commander.conflictingOption':
      return { what: `${first} and ${second} exclude each other`, allowed: 'one of them' };
    default:
      return { what: error.message.replace(/^error: /u, '').replace(/\.$/u, '') };
  }
}

function unknownCommand(program: Command, typed: string): InputProblem {
  const names = program.commands.map((command) => command.name());
  const near = /\.csv$/iu.test(typed) ? [`grade ${typed}`] : nearNames(typed, names);
  return {
    what: 'there is no command of this name',
    ...(near.length > 0 ? { near } : { allowed: names.join(', ') }),
    got: typed,
  };
}

function unknownOption(program: Command, command: Command, typed: string): InputProblem {
  const optionsOf = (one: Command): readonly string[] =>
    one.options.map(({ long }) => long).filter((name) => typeof name === 'string');
  if (command === program && program.commands.some((one) => optionsOf(one).includes(typed)))
    return {
      what: `${NO_COMMAND}, and ${typed} is an option of commands`,
      allowed: program.commands.map((one) => one.name()).join(', '),
    };
  const near = nearNames(typed, [...optionsOf(command), '--help']);
  const others = program.commands.filter((one) => optionsOf(one).includes(typed));
  const owners = others.map((one) => one.name()).join(', ');
  const where = others.length === 0 ? '' : ` (it belongs to ${owners})`;
  return {
    what: `${command.name()} has no such option${where}`,
    ...(near.length > 0 ? { near } : {}),
    got: typed,
  };
}

/** Arguments and options that a command cannot do without and was not given. */
function missing(command: Command): readonly string[] {
  return [
    ...command.registeredArguments
      .filter((argument, i) => isNeededFile(argument) && command.args[i] === undefined)
      .map((argument) => `<${argument.name()}>`),
    ...command.options
      .filter(
        (option) =>
          isNeeded(option) && command.getOptionValue(option.attributeName()) === undefined,
      )
      .map(({ flags }) => flags),
  ];
}

function isNeededFile(argument: Argument): boolean {
  return argument.required || argument instanceof NeededArgument;
}

function isNeeded(option: Option): boolean {
  return option.mandatory || option instanceof NeededOption;
}

/** What a size without its option may be. */
function baseHint(command: Command): string {
  const hasBase = command.options.some(({ long }) => long === '--base');
  return hasBase && !usage(command).includes('--base') ? ' --base <size>' : '';
}

/** More words than a command takes: an option without its dashes, or what should stand between quotes. */
function tooMany(command: Command): InputProblem {
  const names = command.options.flatMap(({ long }) => long ?? []);
  const near = command.args.flatMap((word) => names.filter((name) => name === `--${word}`));
  const quoted = names.includes('--set') ? '--set "hem_taper=1 1/2 in"' : '"my chart.csv"';
  return {
    what: `${command.name()} takes fewer files or names than it was given`,
    ...(near.length > 0
      ? { near }
      : {
          allowed:
            `${usage(command)}${baseHint(command)}, ` +
            `and between quotes what has blanks or commas, such as ${quoted}`,
        }),
    got: command.args.join(' '),
  };
}

/** The shortest call, such as `skirtgrade assess <chart.csv> <sheet.csv> --base <size>`. */
function usage(command: Command): string {
  const files = command.registeredArguments.map((argument) =>
    isNeededFile(argument) ? `<${argument.name()}>` : `[${argument.name()}]`,
  );
  const options = command.options.filter(isNeeded).map(({ flags }) => flags);
  return ['skirtgrade', command.name(), ...files, ...options].join(' ');
}
