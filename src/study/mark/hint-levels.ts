/** The levels of hints, for whoever offers them. */

/** How many are wrong; which rows; which question to ask; the answer, which is the whole marking. */
export const HINT_LEVELS = [1, 2, 3, 4] as const;

/** One of `HINT_LEVELS`. */
export type HintLevel = (typeof HINT_LEVELS)[number];
