/** What of a sheet carries the pattern, and what joins it to its neighbors. */
import { point } from '../geometry/point';
import type { Point } from '../geometry/point';
import type { SheetPaper } from './paper';
import type { PrintOptions } from './print-options';

/** All in mm. The tile is what a sheet adds to the plane; tiles meet without gap or overlap. */
export interface TileFormat {
  readonly page: { readonly width: number; readonly height: number };
  readonly tile: { readonly width: number; readonly height: number };
  /** The tile's top left corner on the page. */
  readonly corner: Point;
  /** How far the pattern goes on beyond the right and lower side of the tile. */
  readonly beyond: { readonly right: number; readonly below: number };
  /** The level on the page at which the ruler's strip begins. */
  readonly ruler: number;
}

/** mm that keep the lines round a tile clear of the margin. */
const FRAME = 0.5;
/** mm of strip to glue on. */
const GLUE = 10;
/** mm at the lower end of every sheet for the ruler and the sheet's name. */
export const RULER_STRIP = 6;
/** mm between an edge that is cut and the ruler. */
const BELOW_CUT = 1;

/** The format of a sheet in both positions, upright first. */
export function tileFormats(
  { width, height }: SheetPaper,
  { margin, join }: Pick<PrintOptions, 'margin' | 'join'>,
): readonly TileFormat[] {
  const right = join === 'overlap' ? GLUE : FRAME;
  const below = join === 'overlap' ? GLUE : BELOW_CUT + RULER_STRIP;
  return [
    { width, height },
    { width: height, height: width },
  ].map((page) => ({
    page,
    corner: point(margin + FRAME, margin + FRAME),
    tile: {
      width: page.width - 2 * margin - FRAME - right,
      height: page.height - 2 * margin - FRAME - below,
    },
    beyond: join === 'overlap' ? { right, below: GLUE - RULER_STRIP } : { right: 0, below: 0 },
    ruler: page.height - margin - RULER_STRIP,
  }));
}
