/** Counts as a call has them. */
import { InputError } from '../errors';

/** What a number that cannot be used is told with. */
interface Wanted {
  readonly field: string;
  readonly what: string;
  readonly allowed: string;
}

/** A count in digits alone, `8`. Throws InputError `bad-option` for anything else. */
export function wholeNumber(text: string, { field, what, allowed }: Wanted): number {
  if (/^\d+$/u.test(text)) return Number(text);
  throw new InputError('bad-option', { what, allowed, got: text, place: { field } });
}
