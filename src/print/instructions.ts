/** What a printed pattern tells its reader: cautions, and how it is printed and put together. */
import type { SheetJoin } from './print-options';
import type { SizeTable } from './size-table';

/** What a pattern comes on, which decides how its scale is kept. */
export type Medium = 'paper' | 'projector';

const SCALE_KEPT: Readonly<Record<Medium, string>> = {
  paper: 'Print at 100 % and measure again whenever you print on another machine.',
  projector:
    'Set up the picture by its edge scale and squares, and measure again whenever the projector has moved.',
};

/**
 * What whoever sews must know before the first cut; on the front page, on covers and on the
 * terminal. The tables tell what is known of the pattern: only a skirt has a stride, and `where` says how
 * its reader finds that of each size. A projector's picture has no table to point to.
 */
export function cautions(
  tables: readonly SizeTable[],
  media: readonly Medium[],
  where = 'in the table of the finished garment',
): readonly string[] {
  const stride = tables.some(({ rows }) => rows.some(({ name }) => name === STRIDE_ROW));
  const see = media.includes('paper') ? ` See "${STRIDE_ROW}" ${where}.` : '';
  return [
    'Sew a toile before you cut cloth.',
    ...(stride
      ? [`A narrow hem shortens the stride; stairs need more than level walking.${see}`]
      : []),
    'Size standards are voluntary and bodies vary: measure the wearer, not the label.',
    ...media.map((medium) => SCALE_KEPT[medium]),
  ];
}

/** The name of the row that tells the stride in the table of finished measurements. */
const STRIDE_ROW = 'stride';

/** In the test squares of a sheet without room for more. */
export const MEASURE_HOW: Readonly<Record<Medium, string>> = {
  paper: 'Measure this square before you cut.',
  projector: 'Measure this square on the cloth before you cut.',
};

/** Beside the first test square: how to print at true scale. */
export const PRINT_HOW =
  'Print this page first, at 100 % ("actual size"), never fitted to the page. Measure both squares. ' +
  'If either is off, change the scaling of your printer and begin again.';

/** Beside the second test square: how to make one plane of the sheets. */
export const JOIN_HOW: Readonly<Record<SheetJoin, string>> = {
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
