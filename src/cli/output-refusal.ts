/** Why results are not written where they were to go. */
import type { InputErrorCode, InputProblem } from '../errors';
import { InputError } from '../errors';

/** A refusal of the folder that was `given`; another one is allowed where nothing else is said. */
export function outputRefusal(
  given: string,
  code: InputErrorCode,
  problem: Omit<InputProblem, 'place'>,
): InputError {
  return new InputError(code, {
    allowed: 'another folder for the results',
    ...problem,
    place: { field: 'out', file: given },
  });
}

/** The refusal of a result that would take the place of what it is made from. */
export function refusalOverInput(given: string, got: string): InputError {
  const what = 'a result would replace a file that was read for it';
  return outputRefusal(given, 'output-is-input', { what, got });
}
