/** A slip: one way of going wrong, as what it would have made of the right numbers. */
import type { AnswerKey, PointKey } from './answer-key';
import type { Axis } from '../../rule-sheet/rule-sheet';

/** A point along one axis, as the key has it in the convention of the sheet. */
export interface Course {
  readonly key: AnswerKey;
  readonly point: PointKey;
  readonly axis: Axis;
}

/** Where in the work a slip happens; two slips at one point are made in this order. */
export const STAGES = ['girth', 'share', 'break', 'sign', 'still', 'rounding', 'unit'] as const;

/**
 * A stage of the work, or what is mixed up without a change of moves: the `place` or the `form`
 * they are written in.
 */
export type Stage = (typeof STAGES)[number] | 'place' | 'form';

/** A slip that can be tried on right numbers, and told to whoever made it. */
export interface Slip {
  /** The same for the same slip anywhere in the sheet, such as `break 12-14 early`. */
  readonly id: string;
  /** Its kind without particulars, such as `break`. */
  readonly kind: string;
  readonly stage: Stage;
  /** What was done, in words. */
  readonly words: string;
  /** How it is mended, in words. */
  readonly advice: string;
  /**
   * What the slip makes of cumulative moves (mm, one a size); undefined where it cannot happen.
   * A slip of the place or the form changes no moves: where they are taken from, or how they are
   * written, differs.
   */
  readonly distort: (moves: readonly number[], course: Course) => readonly number[] | undefined;
  /** True for a slip that is only looked for by itself, since in company it would fit by chance. */
  readonly alone?: true;
}

/** Stands in distorted moves where the slip may have written any number. */
export const ANYTHING = Infinity;

/** What a slip does to moves. */
export type Distort = Slip['distort'];

/** A slip by its kind and particulars, which make its id. */
export const slip = (
  kind: string,
  stage: Slip['stage'],
  words: string,
  advice: string,
  distort: Distort,
  particulars = '',
): Slip => ({
  id: particulars === '' ? kind : `${kind} ${particulars}`,
  kind,
  stage,
  words,
  advice,
  distort,
});
