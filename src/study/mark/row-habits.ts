/** Habits of a whole sheet that one row has alone: its numbers a column too far, or without their minus. */
import type { Slip } from './slip';
import { ANYTHING } from './slip';

/** One column too far; what stands in the first or last one is not known. */
function shiftedRow(by: 1 | -1, neighbor: string): Slip {
  return {
    id: `shifted row ${by}`,
    kind: 'shifted-row',
    stage: 'rounding',
    words: `a row shifted by one column: each size has the number of the next ${neighbor} one`,
    advice: 'put a finger on the head of the column before writing its first number',
    alone: true,
    distort: (moves) => moves.map((_, i) => moves[i - by] ?? ANYTHING),
  };
}

/** Both ways of shifting a row, and one that grows in all sizes alike. */
export const ROW_HABITS: readonly Slip[] = [
  shiftedRow(1, 'smaller'),
  shiftedRow(-1, 'larger'),
  {
    id: 'unsigned row',
    kind: 'unsigned-row',
    stage: 'sign',
    words: 'growth listed in all sizes alike: below the base the minus is missing',
    advice: 'smaller sizes are smaller than the base: their numbers take the other sign',
    alone: true,
    distort: (moves, { key: { base } }) => moves.map((move, i) => (i < base ? 0 - move : move)),
  },
];
