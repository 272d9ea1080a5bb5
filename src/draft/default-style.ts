/** Which styles are meant where none is named. */

/** The style that is drafted: every seam trued in every size. */
export const DEFAULT_STYLE = 'shared-pencil';

/**
 * The quarter method by its name: the style of exercises, and of sheets that say nothing of theirs,
 * since its rules are shares of the girths, the same for every body.
 */
export const QUARTER_METHOD = 'pencil';
