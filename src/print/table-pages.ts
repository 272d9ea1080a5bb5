/** Pages of tables, and of what to print for one size alone. */
import { point } from '../geometry/point';
import type { Scene, Shape } from '../render/scene';
import type { Sketch } from '../render/sketch';
import { heightOf, placedAt, sketchOf } from '../render/sketch';
import type { SheetPaper } from './paper';
import { paragraphs } from './paragraphs';
import { pagesOf } from './size-pages';
import type { SizeTable } from './size-table';
import { tableBlocks } from './size-table';
import type { TiledPlane } from './tile-page';

/** mm between two tables. */
const BETWEEN = 8;
const HEADING = 4;
const BODY = 3;

/**
 * Upright pages with the tables below each other. Where there are several sizes a list says which
 * pages each of them needs, counted after `before` pages and these.
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
  const flowed = (own: number): readonly Scene[] =>
    flow(
      labels.length > 1 ? [...blocks, pageLists(plane, labels, before + own + 1, width)] : blocks,
      plane.title,
      paper,
      margin,
    );
  // The lists take the same room whatever the numbers are, so the second time is right.
  return flowed(flowed(1).length);
}

function pageLists(
  { tiles }: TiledPlane,
  labels: readonly string[],
  first: number,
  width: number,
): Sketch {
  const lists = labels.map((label) => ({
    words: `Size ${label}: pages ${pagesOf(label, tiles, first)}`,
    size: BODY,
  }));
  const heading = {
    words: 'Pages of this file with anything of one size',
    size: HEADING,
    weight: 'bold' as const,
  };
  return sketchOf([paragraphs([heading, ...lists], 0, 0, width).group]);
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
