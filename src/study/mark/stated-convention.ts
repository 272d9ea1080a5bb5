/** What a sheet or its reader states about zero and axes, so that it need not be recognized. */
import { meantName } from '../../table/name-match';
import { statedBy, statedDown } from '../../table/statements';
import type { RuleSheet } from '../../rule-sheet/rule-sheet';
import type { AnswerKey } from './answer-key';

/** What is stated; undefined where it must be recognized. */
export interface StatedConvention {
  /** One zero for all pieces that have the points, two points for the place halfway between them. */
  readonly zero: readonly string[] | undefined;
  /** True where y runs up. */
  readonly up: boolean | undefined;
}

/**
 * Lines such as `# zero: side_hip`, `# zero: center_hip + side_hip` and `# y: up`; `zero` of the
 * caller goes first. Throws InputError `point-unknown` or `bad-option` with the place.
 */
export function statedConvention(
  { points }: AnswerKey,
  sheet: RuleSheet,
  zero: string | undefined,
): StatedConvention {
  const stated =
    zero === undefined ? statedBy(sheet, 'zero') : { text: zero, place: { field: 'zero' } };
  const names = [...new Set([...points.values()].map(({ point }) => point))];
  const zeros = stated?.text.split('+').map((name) =>
    meantName({ text: name.trim(), place: stated.place }, names, {
      code: 'point-unknown',
      what: 'no piece has the point that is stated as zero',
    }),
  );
  const up = statedBy(sheet, 'y') === undefined ? undefined : statedDown(sheet) < 0;
  return { zero: zeros, up };
}
