/** The one place where a field of a request becomes the option that fills it. */
import type { InputError } from '../errors';
import { problemText } from '../errors';

/** The option of a field: `--base` of `base`, `--seam-pairs` of `seamPairs`. */
export function optionOf(field: string): string {
  return `--${field.replace(/[A-Z]/gu, (letter) => `-${letter.toLowerCase()}`)}`;
}

/** The message of an error as somebody at a terminal reads it: options in the place of fields. */
export function optionMessage({ problem }: InputError): string {
  return problemText(problem, optionOf);
}
