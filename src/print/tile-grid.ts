/** The tiles of a plane: cut by a grid, named like the cells of a table, blank ones left out. */
import type { Box } from '../geometry/bounds';
import type { Group } from '../render/scene';
import { hasInk, inkOf } from './ink';
import { ALL_SIZES } from './plane';
import type { TileFormat } from './tile-format';

/** One tile by its place: column A and row 1 are the first with anything to print. */
export interface Tile {
  readonly name: string;
  readonly column: number;
  readonly row: number;
  /** Its part of the plane. */
  readonly box: Box;
  /** The layers that print on it. */
  readonly layers: ReadonlySet<string>;
}

/** Row by row. `shapes` are the layers of a plane; a group without a layer counts for all sizes. */
export function tilesOf(
  shapes: readonly Group[],
  { tile: { width, height } }: Pick<TileFormat, 'tile'>,
): readonly Tile[] {
  const inks = shapes.map((group) => ({ layer: group.layer ?? ALL_SIZES, ink: inkOf([group]) }));
  const left = Math.min(...inks.map(({ ink }) => Math.floor(ink.box.left / width)));
  const top = Math.min(...inks.map(({ ink }) => Math.floor(ink.box.top / height)));
  const right = Math.max(...inks.map(({ ink }) => Math.ceil(ink.box.right / width)));
  const bottom = Math.max(...inks.map(({ ink }) => Math.ceil(ink.box.bottom / height)));
  const tiles: Tile[] = [];
  for (let row = top; row < bottom; row++) {
    for (let column = left; column < right; column++) {
      const box = {
        left: column * width,
        top: row * height,
        right: (column + 1) * width,
        bottom: (row + 1) * height,
      };
      const layers = inks.filter(({ ink }) => hasInk(ink, box)).map(({ layer }) => layer);
      if (layers.length > 0) {
        tiles.push({ name: '', column, row, box, layers: new Set(layers) });
      }
    }
  }
  const first = Math.min(...tiles.map(({ column }) => column));
  const upper = Math.min(...tiles.map(({ row }) => row));
  return tiles.map((tile) => {
    const [column, row] = [tile.column - first, tile.row - upper];
    return { ...tile, column, row, name: `${columnName(column)}${row + 1}` };
  });
}

/** A to Z, then AA, AB and so on. */
function columnName(column: number): string {
  const letter = String.fromCharCode(65 + (column % 26));
  return column < 26 ? letter : columnName(Math.floor(column / 26) - 1) + letter;
}

/** The sheets of a grid without any of this: every tile of the rectangle around the parts. */
export function plainSheets(
  { width, height }: { readonly width: number; readonly height: number },
  { tile }: Pick<TileFormat, 'tile'>,
): number {
  return Math.ceil(width / tile.width) * Math.ceil(height / tile.height);
}
