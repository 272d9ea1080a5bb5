/** Questions and answers at a terminal, a line each. */
import { createInterface } from 'node:readline';
import { InputError } from '../errors';
import { Stopped } from './stopped';

/** Puts a question and gives the line that is typed. Throws InputError and Stopped. */
export type Ask = (question: string) => Promise<string>;

/** Holds a conversation as long as `talk` asks; the terminal is free again when it ends. */
export type Converse = <Result>(talk: (ask: Ask) => Promise<Result>) => Promise<Result>;

/**
 * Conversations on two streams. Asking throws InputError `bad-option` where the input ends before an
 * answer, and Stopped at a terminal's interrupt.
 */
export function conversation(
  input: NodeJS.ReadableStream,
  output: NodeJS.WritableStream,
): Converse {
  return async (talk) => {
    const terminal = createInterface({ input, output });
    let isInterrupted = false;
    terminal.on('SIGINT', () => {
      isInterrupted = true;
      terminal.close();
    });
    // Lines that were pasted together wait for their questions.
    const lines: AsyncIterator<string, undefined> = terminal[Symbol.asyncIterator]();
    try {
      return await talk(async (question) => {
        terminal.setPrompt(question);
        terminal.prompt();
        const { done, value } = await lines.next();
        if (done !== true) return value;
        output.write('\n');
        if (isInterrupted) throw new Stopped('SIGINT');
        throw new InputError('bad-option', {
          what: 'a question has no answer, and nothing was written',
          allowed: 'a line for each question, or all by options',
          got: 'the end of the input',
        });
      });
    } finally {
      terminal.close();
    }
  };
}
