/** The nest: all sizes of every piece on one sheet, stacked on one point. */
import { counted } from '../table/counted';
import type { NestDrawing } from './nest-drawing';
import type { Scene } from './scene';
import { sheet } from './sheet-layout';
import { sizeIds } from './size-id';
import { aloneStyle, sizeStyle } from './size-style';
import { sizesDrawn } from './captions';

/** Type size in mm of the sizes' line on a piece. */
const CAPTION = 9;

/** The sheet of a nest: each size in a line of its own, told apart in a legend. */
export function nestSheet(drawing: NestDrawing): Scene {
  const labels = drawing.sizes.map(({ label }) => label);
  const ids = sizeIds(labels);
  const sizes = drawing.sizes.map((size, rank) => {
    const style = sizeStyle(rank, size.label === drawing.baseSize);
    return { ...size, id: ids[rank] ?? '', style: labels.length > 1 ? style : aloneStyle(style) };
  });
  const shown = sizesDrawn(drawing);
  const count = counted(labels.length, 'size');
  return sheet(drawing, sizes, `Nest of ${count}. ${shown}.`, { words: shown, size: CAPTION });
}
