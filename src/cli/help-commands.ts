/** Adds `help`, which tells topics besides the options of the commands. */
import type { Telling } from './json-document';
import type { AddCommands } from './options';
import { withTelling } from './options';

/** Takes the place of the help of commander, which knows commands alone. */
export const addHelp: AddCommands = (program, io, end) => {
  withTelling(
    program
      .command('help')
      .description('tell more of a command or a topic, or list all')
      .argument('[topic]', 'a command or a topic, such as printing')
      .argument('[part]', 'a style for help points, a screen for help grading'),
  ).action(async (topic: string | undefined, part: string | undefined, options: Telling) => {
    const { helpCommand } = await import('./help-command');
    end(helpCommand(program, topic, part, options, io));
  });
};
