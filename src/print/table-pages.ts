/** Pages of tables, and after them of what to print for one size alone. */
import { point } from '../geometry/point';
import type { Scene, Shape } from '../render/scene';
import type { Sketch } from '../render/sketch';
import { heightOf, placedAt, sketchOf } from '../render/sketch';
import type { SheetPaper } from './paper';
import { paragraphs } from './paragraphs';
import type { SizeTable } from './size-table';
import { tableBlocks } from './size-table';

/** mm between two tables. */
const BETWEEN = 8;
const HEADING = 4;
const BODY = 3;

/**
 * Upright pages with the tables below each other, and after them what `listed` says to print for each size
 * where the first tile is on a page.
 */
export function tablePages(
  tables: readonly SizeTable[],
  listed: (first: number) => readonly string[],
  title: string,
  paper: SheetPaper,
  margin: number,
  before: number,
): readonly Scene[] {
  const width = paper.width - 2 * margin;
  const blocks = tables.flatMap((table) => tableBlocks(table, width));
  const flowed = (own: number): readonly Scene[] => {
    const [heading, ...lines] = listed(before + own + 1);
    const list =
      heading === undefined
        ? []
        : [
            { words: heading, size: HEADING, weight: 'bold' as const },
            ...lines.map((words) => ({ words, size: BODY })),
          ];
    const lists = list.length === 0 ? [] : [sketchOf([paragraphs(list, 0, 0, width).group])];
    return flow([...blocks, ...lists], title, paper, margin);
  };
  // The lists take the same room whatever the numbers are, so the second time is right.
  return flowed(flowed(1).length);
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
