/** The words of a large sheet as a part among its pieces: title, squares, sizes, cautions, tables. */
import { present } from '../lists/present';
import type { Box } from '../geometry/bounds';
import { point } from '../geometry/point';
import type { Shape } from '../render/scene';
import { heightOf, placedAt } from '../render/sketch';
import { fitted, text } from '../render/type';
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

/** mm: with the key beside the two test squares, or below them. */
export const COVER_WIDTHS = { wide: 320, narrow: 212 } as const;
const TITLE = 14;
const HEADING = 5;
const BODY = 5;
const HEAD = 34;
const IMPRINT = 8;
const BETWEEN = 10;

/** What a sheet of words begins with: the title, the sizes, and the imprint in words, which may be empty. */
export interface SheetHead {
  readonly title: string;
  readonly shown: string;
  readonly imprint: string;
}

/** What is known of sizes, and the tables of it that stand on the cover. */
export interface CoverTables {
  readonly known: readonly SizeTable[];
  readonly shown: readonly SizeTable[];
}

/**
 * The words as one part, the same for all sizes: what the lines stand for, and on paper the tables,
 * which may be none.
 */
export function cover(
  { title, shown, imprint }: SheetHead,
  { note, key: entries }: LinesTold,
  { known, shown: listed }: CoverTables,
  medium: Medium,
  width: number = COVER_WIDTHS.wide,
): PlanePart {
  const [metric, inch] = TEST_SIDES;
  const second = metric.side + BETWEEN;
  const beside = second + inch.side + BETWEEN;
  const measure = (words: string): readonly Paragraph[] => [{ words, size: BODY }];
  const subtitle = `${shown}. True size, 1:1.`;
  const head = imprint === '' ? HEAD : HEAD + IMPRINT;
  const shapes = present<Shape>([
    text(title, point(0, TITLE), fitted(title, TITLE, width), { weight: 'bold' }),
    text(subtitle, point(0, 26), fitted(subtitle, 8, width)),
    imprint !== '' && text(imprint, point(0, 26 + IMPRINT), fitted(imprint, BODY, width)),
    {
      kind: 'group',
      offset: point(0, head),
      children: testSquare(metric, measure(MEASURE_HOW[medium])),
    },
    {
      kind: 'group',
      offset: point(second, head),
      children: testSquare(inch, measure(MEASURE_HOW[medium])),
    },
  ]);
  const belowSquares = head + inch.side + BETWEEN;
  const key = sizeLegend(
    entries,
    // Thick lines have long dashes, for which there is no room beside the squares.
    medium === 'projector' || width < COVER_WIDTHS.wide
      ? {
          left: 0,
          top: belowSquares,
          width,
          type: BODY,
          longer: medium === 'projector' ? THICKER : 1,
        }
      : { left: beside, top: head, width: width - beside, type: BODY },
  );
  shapes.push(key.group);
  const where = listed.length > 0 ? undefined : 'in the booklet';
  const told: readonly Paragraph[] = [
    { words: 'Cautions', size: HEADING, weight: 'bold' },
    ...[note, ...cautions(known, [medium], where)].map((words) => ({ words, size: BODY })),
  ];
  const said = paragraphs(told, 0, Math.max(belowSquares, key.bottom + BETWEEN), width);
  shapes.push(said.group);
  let y = said.bottom + BETWEEN;
  const tables = medium === 'paper' ? listed : [];
  for (const block of tables.flatMap((table) => tableBlocks(table, width))) {
    shapes.push(placedAt(block, point(0, y)));
    y += heightOf(block) + BETWEEN;
  }
  return { ...part('cover', [], shapes), whole: squaresFrom(head) };
}

/** The two test squares side by side from the level `top` down. */
function squaresFrom(top: number): readonly Box[] {
  return TEST_SIDES.map(({ side }, i) => {
    const left = i === 0 ? 0 : TEST_SIDES[0].side + BETWEEN;
    return { left, top, right: left + side, bottom: top + side };
  });
}
