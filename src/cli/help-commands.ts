/** Adds `help`, which tells topics besides the options of the commands. */
import type { AsDocument } from './json-document';
import type { AddCommands } from './options';
import { jsonOption } from './options';

/** Takes the place of the help of commander, which knows commands alone. */
export const addHelp: AddCommands = (program, io, end) => {
  program
    .command('help')
    .description('tell more of a command or a topic, or list all')
    .argument('[topic]', 'a command or a topic, such as printing')
    .argument('[style]', 'of which help points tells')
    .addOption(jsonOption())
    .action(async (topic: string | undefined, style: string | undefined, options: AsDocument) => {
      const { helpCommand } = await import('./help-command');
      end(helpCommand(program, topic, style, options, io));
    });
};
