/** Pages of tables, and of what to print for one size alone. */
import { point } from '../geometry/point';
import type { Scene, Shape } from '../render/scene';
import type { Sketch } from '../render/sketch';
import { heightOf, placedAt, sketchOf } from '../render/sketch';
import type { SheetPaper } from './paper';
import { paragraphs } from './paragraphs';
import { isNeeded, pagesOf } from './size-pages';
import type { SizeTable } from './size-table';
import { tableBlocks } from './size-table';
import type { TiledPlane } from './tile-page';

/** mm between two tables. */
const BETWEEN = 8;
const HEADING = 4;
const BODY = 3;

/**
 * Upright pages with the tables below each other. Where sizes need different pages a list says which,
 * counted after `before` pages and these.
 */
export function tablePages(
  plane: TiledPlane,
  tables: readonly SizeTable[],
  labels: readonly string[],
  paper: SheetPaper,
  margin: number,
  before: number,
): readonly Scene[] {
  const width = paper.width - 2 * margin;
  const blocks = tables.flatMap((table) => tableBlocks(table, width));
  const flowed = (own: number): readonly Scene[] => {
    const lists = pageLists(plane, labels, before + own + 1, width);
    return flow([...blocks, ...lists], plane.title, paper, margin);
  };
  // The lists take the same room whatever the numbers are, so the second time is right.
  return flowed(flowed(1).length);
}

/** Pages that the list must save a size to be worth a page of its own. */
const WORTH = 3;

/** Neighbors that need the same pages are told together; nothing is told where no size is spared many. */
function pageLists(
  { tiles }: TiledPlane,
  labels: readonly string[],
  first: number,
  width: number,
): readonly Sketch[] {
  const runs: { readonly pages: string; readonly sizes: string[] }[] = [];
  for (const label of labels) {
    const pages = pagesOf(label, tiles, first);
    const last = runs.at(-1);
    if (last?.pages === pages) last.sizes.push(label);
    else runs.push({ pages, sizes: [label] });
  }
  const spared = labels.map((label) => tiles.filter((tile) => !isNeeded(label, tile)).length);
  if (Math.max(...spared) < WORTH) return [];
  const lists = runs.map(({ pages, sizes }) => {
    const [from = '', ...more] = sizes;
    const to = more.at(-1);
    const told = to === undefined ? `Size ${from}` : `Sizes ${from} to ${to}`;
    return { words: `${told}: pages ${pages}`, size: BODY };
  });
  const heading = {
    words: 'Pages of this file with anything of one size',
    size: HEADING,
    weight: 'bold' as const,
  };
  return [sketchOf([paragraphs([heading, ...lists], 0, 0, width).group])];
}

function flow(
  blocks: readonly Sketch[],
  title: string,
  { width, height }: SheetPaper,
  margin: number,
): readonly Scene[] {
  const pages: Shape[][] = [];
  let y = Infinity;
  for (const block of blocks) {
    if (y + heightOf(block) > height - margin) {
      pages.push([]);
      y = margin;
    }
    pages.at(-1)?.push(placedAt(block, point(margin, y)));
    y += heightOf(block) + BETWEEN;
  }
  return pages.map((shapes) => ({ title, width, height, shapes }));
}
