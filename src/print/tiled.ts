/** A plane on sheets of one paper, with as few sheets as it takes. */
import { pointBounds } from '../geometry/bounds';
import { add, point } from '../geometry/point';
import type { PdfPage } from '../render/pdf';
import { onTable } from '../render/side-by-side';
import { heightOf, widthOf } from '../render/sketch';
import type { SheetSize } from '../render/sheet-layout';
import { onFewestTiles } from './fewest-tiles';
import { inkOf } from './ink';
import { mappedPart } from './laid-part';
import type { SheetPaper } from './paper';
import type { PlanePart } from './plane';
import { planeShapes } from './plane';
import type { PrintOptions } from './print-options';
import type { TileFormat } from './tile-format';
import { tileFormats } from './tile-format';
import { plainSheets, tilesOf } from './tile-grid';
import type { TiledPlane } from './tile-page';
import { tilePage } from './tile-page';

/** What is laid together. */
type Parts = readonly PlanePart[];

/** A plane cut into sheets, beside what a plain way would take. */
export interface Tiling {
  readonly plane: TiledPlane;
  /**
   * Sheets that it takes to lay the parts side by side and cut all of that into a grid of upright
   * sheets from its corner.
   */
  readonly plain: number;
}

/**
 * The tiling that takes the fewest sheets, of the sheet's two positions and of the `choices` of parts
 * to lay, on small sheets of the likeliest in each position; the upright one and the first choice where others take as many.
 */
export function tiled(
  title: string,
  choices: readonly [Parts, ...Parts[]],
  sizes: readonly SheetSize[],
  paper: SheetPaper,
  options: PrintOptions,
): Tiling {
  const formats = tileFormats(paper, options);
  const mapped = new Map([...new Set(choices.flat())].map((part) => [part, mappedPart(part)]));
  const planes = formats.flatMap((format) =>
    likely(choices, format.tile).map((parts) => {
      const maps = parts.flatMap((part) => mapped.get(part) ?? []);
      const shapes = planeShapes(onFewestTiles(parts, format.tile, maps), sizes);
      return { title, shapes, tiles: tilesOf(shapes, format), format };
    }),
  );
  const [parts] = choices;
  const plane = planes.reduce((a, b) => (b.tiles.length < a.tiles.length ? b : a));
  const { zeros } = onTable(parts);
  // As far from the edges as every part is kept: a line at an edge would be cut away.
  const { left, top, right, bottom } = pointBounds(
    parts.flatMap(({ box }, i) => {
      const zero = zeros[i] ?? point(0, 0);
      return [add(zero, point(box.left, box.top)), add(zero, point(box.right, box.bottom))];
    }),
  );
  const whole = { width: right - left, height: bottom - top };
  return {
    plane: { ...plane, ink: inkOf(plane.shapes) },
    plain: Math.min(...formats.slice(0, 1).map((format) => plainSheets(whole, format))),
  };
}

/** mm. Of larger tiles so few are printed that every choice is worth trying. */
const LARGE_TILE = 400;

/** Of small tiles the choice whose parts would touch the fewest if each began on a tile of its own. */
function likely(
  choices: readonly [Parts, ...Parts[]],
  tile: TileFormat['tile'],
): readonly [Parts, ...Parts[]] {
  if (Math.min(tile.width, tile.height) > LARGE_TILE) return choices;
  const tilesFor = (parts: Parts): number =>
    parts.reduce(
      (sum, part) =>
        sum + Math.ceil(widthOf(part) / tile.width) * Math.ceil(heightOf(part) / tile.height),
      0,
    );
  return [choices.reduce((a, b) => (tilesFor(b) < tilesFor(a) ? b : a))];
}

/** A page for each sheet, in the order of their names. */
export function tilePages(plane: TiledPlane): readonly PdfPage[] {
  return plane.tiles.map((tile) => tilePage(plane, tile));
}
