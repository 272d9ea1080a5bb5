/** The files of an exercise by the names that places in them go by. */

/** The chart that is graded. */
export const CHART_FILE = 'chart.csv';
/** The sheet that is filled in. */
export const SHEET_FILE = 'sheet.csv';
