/** Which pages of a file one size needs, as a print dialog takes them. */
import { ALL_SIZES, sizeLayer } from './plane';
import type { Tile } from './tile-grid';

/** Whether a tile has anything of a size, or of all. */
export function isNeeded(label: string, { layers }: Tile): boolean {
  return layers.has(sizeLayer(label)) || layers.has(ALL_SIZES);
}

/** Numbers of the pages, such as `4-9, 11`, where the first tile is on page `first`. */
export function pagesOf(label: string, tiles: readonly Tile[], first: number): string {
  const pages = tiles.flatMap((tile, i) => (isNeeded(label, tile) ? [first + i] : []));
  const runs = pages.reduce<readonly (readonly [number, number])[]>((all, page) => {
    const last = all.at(-1);
    return last?.[1] === page - 1 ? [...all.slice(0, -1), [last[0], page]] : [...all, [page, page]];
  }, []);
  return runs.map(([from, to]) => (from === to ? `${from}` : `${from}-${to}`)).join(', ');
}
