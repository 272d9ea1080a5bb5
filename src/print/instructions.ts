/** What a printed pattern tells its reader: cautions, and how it is printed and put together. */
import type { Join } from './print-options';

/**
 * What whoever sews must know before the first cut; on the front page, on covers and on the
 * terminal.
 */
export const CAUTIONS: readonly string[] = [
  'Sew a toile before you cut cloth.',
  'A narrow hem shortens the stride; stairs need more than level walking. See "stride" in the table.',
  'Size standards are voluntary and bodies vary: measure the wearer, not the label.',
  'Print at 100 % and measure again whenever you print on another machine.',
];

/** Beside the first test square: how to print at true scale. */
export const PRINT_HOW =
  'Print this page first, at 100 % ("actual size"), never fitted to the page. Measure both squares. ' +
  'If either is off, change the scaling of your printer and begin again.';

/** Beside the second test square: how to make one plane of the sheets. */
export const JOIN_HOW: Readonly<Record<Join, string>> = {
  overlap:
    'Cut each sheet along the left and the upper line of its frame. Lay it on the strip of its ' +
    'neighbor so that the frames and the two halves of each diamond meet, and glue. Blank sheets ' +
    'are left out, as the map shows.',
  butt:
    'Cut each sheet along all four lines of its frame. Lay the sheets edge to edge so that the two ' +
    'halves of each diamond meet, and tape. Blank sheets are left out, as the map shows.',
};

/** After `PRINT_HOW` in a file of several sizes. */
export const LAYERS_HOW =
  'Each size is a layer of this file: show only the sizes you want before you print.';
