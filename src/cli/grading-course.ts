/** The screens of `help grading`, one after another. */
import { InputError } from '../errors';
import screens from './help/grading-screens.txt';

/** Each with its number and title in the first line. */
export const SCREENS: readonly string[] = screens.split(/^(?=\d+\. )/mu);

/** The screen of a number as it is typed, and how to go on. Throws InputError `bad-option`. */
export function screenText(number: string): string {
  const at = SCREENS.findIndex((screen) => screen.startsWith(`${number}. `));
  const screen = SCREENS[at];
  if (screen === undefined)
    throw new InputError('bad-option', {
      what: 'help grading has no such screen',
      allowed: `1 to ${SCREENS.length}`,
      got: number,
    });
  const isLast = at === SCREENS.length - 1;
  return isLast ? screen : `${screen.trimEnd()}\n\nNext: skirtgrade help grading ${at + 2}\n`;
}
