/** Which pages of a file one size needs, as a print dialog takes them. */
import { runsOf } from '../lists/runs';
import { sizeWords } from '../render/captions';
import type { CalledSize } from '../render/nest-drawing';
import { ALL_SIZES } from './plane';
import type { Tile } from './tile-grid';

/** Whether a tile has anything of a size, or of all. */
function isNeeded(size: CalledSize, { layers }: Tile): boolean {
  return layers.has(sizeWords(size)) || layers.has(ALL_SIZES);
}

/** Numbers of the pages, such as `4-9, 11`, where the first tile is on page `first`. */
function pagesOf(size: CalledSize, tiles: readonly Tile[], first: number): string {
  const pages = tiles.flatMap((tile, i) => (isNeeded(size, tile) ? [first + i] : []));
  const runs = pages.reduce<readonly (readonly [number, number])[]>((all, page) => {
    const last = all.at(-1);
    return last?.[1] === page - 1 ? [...all.slice(0, -1), [last[0], page]] : [...all, [page, page]];
  }, []);
  return runs.map(([from, to]) => (from === to ? `${from}` : `${from}-${to}`)).join(', ');
}

/** Pages that a list must spare a size to be worth its lines. */
const WORTH = 3;

/**
 * A heading and a line for each size, neighbors that need the same pages together, where the first tile is
 * on page `first`; nothing where no size is spared many.
 */
export function pagesTold(
  sizes: readonly CalledSize[],
  tiles: readonly Tile[],
  first: number,
): readonly string[] {
  const spared = sizes.map((size) => tiles.filter((tile) => !isNeeded(size, tile)).length);
  if (Math.max(...spared) < WORTH) return [];
  const needs = sizes.map((size) => ({ label: size.label, pages: pagesOf(size, tiles, first) }));
  const runs = runsOf(needs, (one, last) => one.pages === last.pages);
  const lines = runs.map((run) => {
    const [from = '', ...more] = run.map(({ label }) => label);
    const to = more.at(-1);
    return `${to === undefined ? `Size ${from}` : `Sizes ${from} to ${to}`}: pages ${run[0]?.pages ?? ''}`;
  });
  return ['Pages of this file with anything of one size', ...lines];
}
