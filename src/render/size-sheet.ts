/** One size of every piece on a sheet of its own. */
import { InputError } from '../errors';
import type { NestDrawing } from './nest-drawing';
import type { Scene } from './scene';
import { sheet } from './sheet-layout';
import { sizeIds } from './size-id';
import { aloneStyle, sizeStyle } from './size-style';
import { sizeWords } from './captions';
import { wantedSizes } from '../table/near-names';

/** Type size in mm of the size on a piece: on a sheet of one size it is what is looked for. */
const CAPTION = 14;

/** The sheet of the size `label`. Throws InputError `size-unknown` if the drawing has no such size. */
export function sizeSheet(drawing: NestDrawing, label: string): Scene {
  const labels = drawing.sizes.map((size) => size.label);
  const rank = labels.indexOf(label);
  const size = drawing.sizes[rank];
  if (size === undefined) {
    throw new InputError('size-unknown', {
      what: 'the drawing has no such size',
      ...wantedSizes(label, labels),
      got: label,
    });
  }
  const shown = sizeWords(size);
  const style = aloneStyle(sizeStyle(rank, label === drawing.baseSize));
  const id = sizeIds(labels)[rank] ?? '';
  return sheet(drawing, [{ ...size, id, style }], `${shown}.`, {
    words: shown,
    size: CAPTION,
    weight: 'bold',
  });
}
