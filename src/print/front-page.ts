/** The first page: test squares, how to print and join, the map of the sheets, sizes, cautions. */
import { counted } from '../table/counted';
import { point } from '../geometry/point';
import type { Group, Scene, Shape } from '../render/scene';
import { polyline } from '../render/scene';
import type { SheetSize } from '../render/sheet-layout';
import { INK } from '../render/size-style';
import { fitted, text } from '../render/type';
import type { SheetPaper } from './paper';
import { paperTitle } from './paper';
import { paragraphs } from './paragraphs';
import type { Paragraph } from './paragraphs';
import type { PrintOptions } from './print-options';
import { TEST_SIDES, testSquare } from './test-square';
import type { SheetHead } from './cover';
import type { LinesTold } from './size-legend';
import { sizeLegend } from './size-legend';
import type { SizeTable } from './size-table';
import { tileMap } from './tile-map';
import type { TiledPlane } from './tile-page';
import { cautions, JOIN_HOW, LAYERS_HOW, PRINT_HOW } from './instructions';

/** Type sizes, mm. */
const TITLE = 8;
const BODY = 3;
const HEADING = 4;
/** mm from the top of the page's room to the squares, between them, and to the right of them. */
const HEAD = 20;
const BETWEEN = 6;
const BESIDE = 7;
const MAP_HEIGHT = 88;

/** What the first page tells, besides the plane itself. */
export interface FrontPage {
  readonly head: SheetHead;
  readonly paper: SheetPaper;
  readonly options: PrintOptions;
  readonly sizes: readonly SheetSize[];
  readonly lines: LinesTold;
  readonly tables: readonly SizeTable[];
  /** Sheets that the plain grid would take. */
  readonly plain: number;
  /** Which pages a size needs, in a few lines; may be none. */
  readonly pages: readonly string[];
}

/** The page to print first, within the margins of the paper, in mm. */
export function frontPage(
  plane: TiledPlane,
  { head, paper, options: { margin, join }, sizes, lines, tables, plain, pages }: FrontPage,
): Scene {
  const labels = sizes.map(({ label }) => label);
  const width = paper.width - 2 * margin;
  const [metric, inch] = TEST_SIDES;
  const column = inch.side + BESIDE;
  const beside = width - column;
  const map = tileMap(plane, sizes.at(-1) ?? { label: '' }, beside, MAP_HEIGHT);
  const legendTop = HEAD + map.box.bottom + BETWEEN;
  const { group: legend, bottom } = sizeLegend(lines.key, {
    left: column,
    top: legendTop,
    width: beside,
    type: BODY,
  });
  const sheets = plane.tiles.length;
  const summary =
    `${head.shown}. ${counted(sheets, 'sheet')} of ` +
    `${paperTitle(paper)}${sheets < plain ? `; a plain grid would take ${plain}` : ''}.`;
  const place = (shapes: readonly Shape[], x: number, y: number): Group => ({
    kind: 'group',
    offset: point(x, y),
    children: shapes,
  });
  const children: readonly Shape[] = [
    text(plane.title, point(0, TITLE), fitted(plane.title, TITLE, width), { weight: 'bold' }),
    ...belowTitle(summary, head.imprint, width),
    polyline('rule', [point(0, HEAD - 3), point(width, HEAD - 3)], { color: INK, width: 0.4 }),
    place(
      testSquare(metric, told('1. Print', PRINT_HOW, ...layersTold(labels), ...pages)),
      0,
      HEAD,
    ),
    place(
      testSquare(inch, told('2. Join', JOIN_HOW[join], lines.note)),
      0,
      HEAD + metric.side + BETWEEN,
    ),
    place(map.shapes, column, HEAD),
    legend,
    paragraphs(told('Cautions', ...cautions(tables, ['paper'])), column, bottom + BETWEEN, beside)
      .group,
  ];
  return {
    title: plane.title,
    width: paper.width,
    height: paper.height,
    shapes: [place(children, margin, margin)],
  };
}

/** The sheets, and below them in smaller type the imprint, in the room above the rule. */
function belowTitle(summary: string, imprint: string, width: number): readonly Shape[] {
  if (imprint === '') return [text(summary, point(0, TITLE + 6), fitted(summary, HEADING, width))];
  return [
    text(summary, point(0, TITLE + 4.6), fitted(summary, BODY, width)),
    text(imprint, point(0, TITLE + 8), fitted(imprint, BODY, width)),
  ];
}

function layersTold(labels: readonly string[]): readonly string[] {
  return labels.length > 1 ? [LAYERS_HOW] : [];
}

function told(heading: string, ...texts: readonly string[]): readonly Paragraph[] {
  return [
    { words: heading, size: HEADING, weight: 'bold' },
    ...texts.map((words) => ({ words, size: BODY })),
  ];
}
