/** The words of a large sheet as a part among its pieces: title, squares, sizes, cautions, tables. */
import { point } from '../geometry/point';
import type { Shape } from '../render/scene';
import type { SheetSize } from '../render/sheet-layout';
import { heightOf, placedAt } from '../render/sketch';
import { text } from '../render/type';
import { sizesShown } from '../render/captions';
import type { Paragraph } from './paragraphs';
import { paragraphs } from './paragraphs';
import type { PlanePart } from './plane';
import { part } from './plane';
import { THICKER } from './projector';
import type { LinesTold } from './size-legend';
import { sizeLegend } from './size-legend';
import type { SizeTable } from './size-table';
import { tableBlocks } from './size-table';
import { TEST_SIDES, testSquare } from './test-square';
import type { Medium } from './instructions';
import { cautions, MEASURE_HOW } from './instructions';

/** mm. */
const WIDTH = 320;
const TITLE = 14;
const HEADING = 5;
const BODY = 5;
const HEAD = 34;
const BETWEEN = 10;

/**
 * The words as one part, the same for all sizes: what the lines stand for, and on paper the tables,
 * which may be none.
 */
export function cover(
  title: string,
  sizes: readonly SheetSize[],
  { note, key: entries }: LinesTold,
  tables: readonly SizeTable[],
  medium: Medium,
): PlanePart {
  const [metric, inch] = TEST_SIDES;
  const second = metric.side + BETWEEN;
  const beside = second + inch.side + BETWEEN;
  const measure = (words: string): readonly Paragraph[] => [{ words, size: BODY }];
  const shapes: Shape[] = [
    text(title, point(0, TITLE), TITLE, { weight: 'bold' }),
    text(`${sizesShown(sizes.map(({ label }) => label))}. True size, 1:1.`, point(0, 26), 8),
    {
      kind: 'group',
      offset: point(0, HEAD),
      children: testSquare(metric, measure(MEASURE_HOW[medium])),
    },
    {
      kind: 'group',
      offset: point(second, HEAD),
      children: testSquare(inch, measure(MEASURE_HOW[medium])),
    },
  ];
  const belowSquares = HEAD + inch.side + BETWEEN;
  const key = sizeLegend(
    entries,
    // Thick lines have long dashes, for which there is no room beside the squares.
    medium === 'projector'
      ? { left: 0, top: belowSquares, width: WIDTH, type: BODY, longer: THICKER }
      : { left: beside, top: HEAD, width: WIDTH - beside, type: BODY },
  );
  shapes.push(key.group);
  const told: readonly Paragraph[] = [
    { words: 'Cautions', size: HEADING, weight: 'bold' },
    ...[note, ...cautions(tables, [medium])].map((words) => ({ words, size: BODY })),
  ];
  const said = paragraphs(told, 0, Math.max(belowSquares, key.bottom + BETWEEN), WIDTH);
  shapes.push(said.group);
  let y = said.bottom + BETWEEN;
  const shown = medium === 'paper' ? tables : [];
  for (const block of shown.flatMap((table) => tableBlocks(table, WIDTH))) {
    shapes.push(placedAt(block, point(0, y)));
    y += heightOf(block) + BETWEEN;
  }
  return part('cover', [], shapes);
}
