/** How sheets are put together. */

/** One glued on a strip of the other, or edge to edge. */
export const JOINS = ['overlap', 'butt'] as const;

/** What can be asked for: see `JOINS`. */
export type Join = (typeof JOINS)[number];
