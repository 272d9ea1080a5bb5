/** What every test of a refusal expects. */
import { expect } from 'vitest';
import type { InputErrorCode, Place } from '../src/errors';
import { InputError } from '../src/errors';

/**
 * Expects an InputError with this code, at exactly this place and no other, whose message has all
 * of `words`. Fails for any other error, and where nothing is thrown.
 */
export function expectRefusal(
  call: () => unknown,
  code: InputErrorCode,
  place: Place,
  ...words: readonly string[]
): void {
  let error: unknown;
  try {
    call();
  } catch (thrown) {
    error = thrown;
  }
  if (!(error instanceof InputError))
    throw error instanceof Error
      ? error
      : new Error(`${code} was expected, but nothing was refused`);
  expect({ code: error.code, place: error.place }, error.message).toEqual({ code, place });
  for (const word of words) expect(error.message).toContain(word);
}
