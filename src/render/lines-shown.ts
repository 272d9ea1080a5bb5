/** Which lines of a pattern a drawing shows. */

/** `net`: the lines to sew along; `cut`: the lines to cut along. */
export type LinesShown = 'net' | 'cut' | 'both';

/** Every choice, for options and for messages. */
export const LINES_SHOWN: readonly LinesShown[] = ['net', 'cut', 'both'];
