/** Arguments whose characters would move what a terminal shows or turn a line of text around. */
import { problemText } from '../errors';
import { UNSEEN, printable } from '../table/characters';

/**
 * The refusal of the first argument with a control or bidirectional character, or undefined. Messages
 * quote arguments, so that none of these may come through.
 */
export function unprintableArgument(argv: readonly string[]): string | undefined {
  const index = argv.findIndex((argument) => UNSEEN.test(argument) || /[\r\n\t]/u.test(argument));
  if (index < 0) return undefined;
  return problemText({
    what: `argument ${index + 1} of the call has a control or bidirectional character`,
    allowed: 'letters, digits and signs that can be seen',
    got: printable(argv[index] ?? ''),
  });
}
