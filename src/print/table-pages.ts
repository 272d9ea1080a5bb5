/** Pages of tables, and after them of what to print for one size alone. */
import type { Scene } from '../render/scene';
import { sketchOf } from '../render/sketch';
import { flowed } from './flow';
import type { SheetPaper } from './paper';
import { paragraphs } from './paragraphs';
import type { SizeTable } from './size-table';
import { picturedBlocks } from './size-table';

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
  const room = {
    left: margin,
    top: margin,
    right: paper.width - margin,
    bottom: paper.height - margin,
  };
  const blocks = tables.flatMap((table) => picturedBlocks(table, width));
  const pages = (own: number): readonly Scene[] => {
    const [heading, ...lines] = listed(before + own + 1);
    const list =
      heading === undefined
        ? []
        : [
            { words: heading, size: HEADING, weight: 'bold' as const },
            ...lines.map((words) => ({ words, size: BODY })),
          ];
    const lists = list.length === 0 ? [] : [sketchOf([paragraphs(list, 0, 0, width).group])];
    const flowing = [...blocks, ...lists].map((block) => ({ block, above: BETWEEN }));
    return flowed(flowing, room).map((shapes) => ({
      title,
      width: paper.width,
      height: paper.height,
      shapes,
    }));
  };
  // The lists take the same room whatever the numbers are, so the second time is right.
  return pages(pages(1).length);
}
