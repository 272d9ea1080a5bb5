/** A plane on sheets of one paper, with as few sheets as it takes. */
import { pointBounds } from '../geometry/bounds';
import { add, point } from '../geometry/point';
import type { PdfPage } from '../render/pdf';
import { onTable } from '../render/side-by-side';
import type { SheetSize } from '../render/sheet-layout';
import { onFewestTiles } from './fewest-tiles';
import { inkOf } from './ink';
import { mappedPart } from './laid-part';
import type { SheetPaper } from './paper';
import type { PlanePart } from './plane';
import { planeShapes } from './plane';
import type { PrintOptions } from './print-options';
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
 * to lay; the upright one and the first choice where others take as many.
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
  const arranged = formats.flatMap((format) =>
    choices.map((parts) => {
      const maps = parts.flatMap((part) => mapped.get(part) ?? []);
      return { format, arrangement: onFewestTiles(parts, format.tile, maps) };
    }),
  );
  const fewest = Math.min(...arranged.map(({ arrangement }) => arrangement.tiles));
  const planes = arranged
    // They count a tile that is touched, if only by the room round a line.
    .filter(({ arrangement }) => arrangement.tiles <= fewest + GENEROUS)
    .map(({ format, arrangement }) => {
      const shapes = planeShapes(arrangement, sizes);
      return { title, shapes, tiles: tilesOf(shapes, format), format };
    });
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

/** Tiles that an arrangement may seem to take more than another and yet not take. */
const GENEROUS = 1;

/** A page for each sheet, in the order of their names. */
export function tilePages(plane: TiledPlane): readonly PdfPage[] {
  return plane.tiles.map((tile) => tilePage(plane, tile));
}
