/** What is wrong with a body that was set aside, as its list tells it. */
import type { InputProblem } from '../errors';

/**
 * The problem and those behind it without the file and the body, which its list names itself, and without what
 * was typed unless `typed`: it may be anything, a name in a wrong column too.
 */
export function refusedProblem(
  { got, place = {}, also = [], ...said }: InputProblem,
  typed: boolean,
): InputProblem {
  const { file: _, size: __, ...within } = place;
  return {
    ...said,
    ...(typed && got !== undefined ? { got } : {}),
    place: within,
    also: also.map((one) => refusedProblem(one, typed)),
  };
}
