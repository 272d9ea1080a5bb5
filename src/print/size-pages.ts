/** Which pages of a file one size needs, as a print dialog takes them. */
import { runsOf } from '../lists/runs';
import { ALL_SIZES, sizeLayer } from './plane';
import type { Tile } from './tile-grid';

/** Whether a tile has anything of a size, or of all. */
function isNeeded(label: string, { layers }: Tile): boolean {
  return layers.has(sizeLayer(label)) || layers.has(ALL_SIZES);
}

/** Numbers of the pages, such as `4-9, 11`, where the first tile is on page `first`. */
function pagesOf(label: string, tiles: readonly Tile[], first: number): string {
  const pages = tiles.flatMap((tile, i) => (isNeeded(label, tile) ? [first + i] : []));
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
  labels: readonly string[],
  tiles: readonly Tile[],
  first: number,
): readonly string[] {
  const spared = labels.map((label) => tiles.filter((tile) => !isNeeded(label, tile)).length);
  if (Math.max(...spared) < WORTH) return [];
  const needs = labels.map((label) => ({ label, pages: pagesOf(label, tiles, first) }));
  const runs = runsOf(needs, (one, last) => one.pages === last.pages);
  const lines = runs.map((run) => {
    const [from = '', ...more] = run.map(({ label }) => label);
    const to = more.at(-1);
    return `${to === undefined ? `Size ${from}` : `Sizes ${from} to ${to}`}: pages ${run[0]?.pages ?? ''}`;
  });
  return ['Pages of this file with anything of one size', ...lines];
}
