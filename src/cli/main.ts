/** The command line: a shell over the pipeline. Commands load what they need when they run. */
import { Command, CommanderError } from 'commander';
import { InputError, problemText } from '../errors';
import { VERSION } from '../render/version';
import { terminalText } from '../table/characters';
import { unprintableArgument } from './argument-text';
import { addBodiesCommands } from './bodies-commands';
import { NO_COMMAND, calledCommand, callProblem } from './call-problem';
import { addChartCommands } from './chart-commands';
import { addExamples } from './examples';
import { addHelp } from './help-commands';
import type { ExitCode, Io } from './io';
import type { Refusal } from './json-document';
import { refusalOf, refusalText, wantsDocument } from './json-document';
import { optionDescription } from './option-description';
import { optionMessage } from './option-words';
import { addPatternCommands } from './pattern-commands';
import type { Heading } from './project-options';
import { projects } from './project-options';
import { usualOptions } from './rare-options';
import { STOP_CODES, Stopped } from './stopped';
import { addStudentCommands } from './student-commands';
import { wrappedParagraph } from './text-table';

const MORE = `
Begin with: skirtgrade grade my-chart.csv --base 10
skirtgrade <command> --help tells its options, skirtgrade help lists topics.

Exit codes: 0 nothing failed; 1 written, but a check failed; 2 wrong input, and
nothing written; 3 a fault of the program; 4 its words could not be written.`;

/**
 * Runs one call. Never throws for wrong input: that is one message and the exit code 2. What else is
 * thrown is a fault of the program.
 */
export async function main(argv: readonly string[], world: Io): Promise<ExitCode> {
  const [heading, io] = withHeading(withSafeText(world));
  const refuse = (refusal: Refusal, exitCode: ExitCode = 2): ExitCode => {
    if (wantsDocument(argv)) io.out(refusalText(argv, exitCode, refusal));
    return exitCode;
  };
  const unprintable = unprintableArgument(argv);
  if (unprintable !== undefined) {
    io.error(messageText(unprintable));
    return refuse({ code: 'character-unseen', message: unprintable });
  }
  let exitCode: ExitCode = 0;
  const program = new Command('skirtgrade')
    .description('Drafts a skirt from body measurements and grades it over a whole size range.')
    .version(VERSION)
    .helpCommand(false)
    .addHelpText('after', MORE);
  const end = (code: ExitCode): void => {
    exitCode = code;
  };
  addPatternCommands(program, io, end);
  addChartCommands(program, io, end);
  addBodiesCommands(program, io, end);
  addStudentCommands(program, io, end);
  addHelp(program, io, end);

  const project = projects(program, io, heading);

  setUp(program, io);
  try {
    await program.parseAsync(argv, { from: 'user' });
    return exitCode;
  } catch (error) {
    if (error instanceof CommanderError) {
      // Help and version end so, and the help that is shown where nothing is asked for.
      if (error.exitCode === 0) return 0;
      if (error.code === 'commander.help') return refuse({ code: 'call', message: NO_COMMAND });
      const message = problemText(callProblem(error, program));
      const more = ['skirtgrade', calledCommand(program)?.name(), '--help'].filter(Boolean);
      io.error(`${messageText(message)}(${more.join(' ')} tells more)\n`);
      return refuse({ code: 'call', message });
    }
    if (error instanceof Stopped) {
      io.error(messageText(`${error.message}.`));
      return refuse({ code: 'stopped', message: error.message }, STOP_CODES[error.signal]);
    }
    if (!(error instanceof InputError)) throw error;
    const placed = project.placed(error);
    io.error(messageText(optionMessage(placed)));
    return refuse(refusalOf(placed));
  }
}

/** One message, its lines after the first set in. */
function messageText(message: string): string {
  return wrappedParagraph(`skirtgrade: ${message}`, 2);
}

/** What is told of commands, and where it goes. */
function setUp(program: Command, io: Io): void {
  addExamples(program.commands);
  for (const command of [program, ...program.commands]) {
    command
      .exitOverride()
      .configureHelp({
        optionDescription,
        subcommandTerm: (one) => one.name(),
        visibleOptions: usualOptions,
      })
      .configureOutput({
        writeOut: io.out,
        writeErr: io.error,
        // What is wrong with a call is told once it is known what all is.
        outputError: () => undefined,
        getOutHelpWidth: () => 80,
      });
  }
}

/** What is told ahead of the first words of a command, and nowhere if it has none. */
function withHeading(io: Io): readonly [Heading, Io] {
  const heading = { text: '' };
  const out = (text: string): void => {
    io.out(heading.text + text);
    heading.text = '';
  };
  return [heading, { ...io, out }];
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
