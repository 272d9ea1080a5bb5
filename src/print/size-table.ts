/** Tables with a column for each size, in pieces that fit on a page. */
import { point } from '../geometry/point';
import type { Shape, Stroke } from '../render/scene';
import { polyline } from '../render/scene';
import { SOFT_INK } from '../render/size-style';
import type { Sketch } from '../render/sketch';
import { sketchOf } from '../render/sketch';
import { fitted, text, textWidth, wrapped } from '../render/type';
import type { LengthUnit } from '../units';
import type { Block } from './flow';
import { paragraphs } from './paragraphs';

/** One row of a table: a name, and its cells in one unit or more. */
export interface SizeRow {
  readonly name: string;
  /** What is said below the name, on the second of its lines. */
  readonly detail?: string;
  readonly lines: readonly { readonly unit: string; readonly cells: readonly string[] }[];
}

/** A table with a column for each size, before it is cut to the width of a page. */
export interface SizeTable {
  readonly heading: string;
  readonly sizes: readonly string[];
  readonly rows: readonly SizeRow[];
  /** Sentences below the rows. */
  readonly notes?: readonly string[];
  /** What is shown below the rows, wherever there is room. */
  readonly pictures?: readonly Sketch[];
}

/** The table with the unit first in which its market measures: inches and yards before centimeters, or after. */
export function inMarket(table: SizeTable, unit: LengthUnit): SizeTable {
  const isMetric = (one: { readonly unit: string }): boolean => one.unit === 'cm';
  const rows = table.rows.map((row) => ({
    ...row,
    lines: row.lines.toSorted((a, b) =>
      unit === 'in'
        ? Number(isMetric(a)) - Number(isMetric(b))
        : Number(isMetric(b)) - Number(isMetric(a)),
    ),
  }));
  return { ...table, rows };
}

/** mm. */
const HEADING = 3.6;
const TYPE = 2.8;
const PITCH = 4.2;
const NAMES = 36;
const NAME_ROOM = NAMES - 2;
/** Share of the type size that is read as easily. No tolerance: a look. */
const LEAST_NAME = 0.85;
const UNITS = 8;
/** Fourteen sizes stand side by side on A4. */
const LEAST_COLUMN = 10.4;
const MOST_COLUMN = 20;
/** mm that bold words and the gap to their left neighbor take on top of a label. */
const LABEL_ROOM = 4;
/** Lines of a block at most: with its heading it fits on the smallest paper. */
const MOST_LINES = 50;
const RULE: Stroke = { color: SOFT_INK, width: 0.25 };

/** Rows and notes as blocks `width` mm wide at most; a wide or long table becomes several. */
export function tableBlocks(table: SizeTable, width: number): readonly Sketch[] {
  const { notes = [] } = table;
  const told = notes.map((words) => ({ words, size: TYPE }));
  return [
    ...rowBlocks(table, width),
    ...(told.length === 0 ? [] : [sketchOf([paragraphs(told, 0, 0, width).group])]),
  ];
}

/** The same with the pictures of the table. */
export function picturedBlocks(table: SizeTable, width: number): readonly Block[] {
  const { pictures = [] } = table;
  return [...tableBlocks(table, width), ...(pictures.length === 0 ? [] : [pictures])];
}

function rowBlocks(table: SizeTable, width: number): readonly Sketch[] {
  const most = Math.max(1, Math.floor((width - NAMES - UNITS) / LEAST_COLUMN));
  // As many sizes in each block, not one left over.
  const count = Math.ceil(table.sizes.length / Math.ceil(table.sizes.length / most));
  // A body between sizes has a long name, and room for it.
  const widest = Math.max(...table.sizes.map((label) => textWidth(label, TYPE))) + LABEL_ROOM;
  const column = Math.min(Math.max(MOST_COLUMN, widest), (width - NAMES - UNITS) / count);
  const lines = Math.max(1, ...table.rows.map(linesOf));
  return chunks(table.rows, Math.max(1, Math.floor(MOST_LINES / lines))).flatMap((rows) =>
    chunks([...table.sizes.keys()], count).map((sizes) => block(table, rows, sizes, column, width)),
  );
}

function block(
  { heading, sizes: labels }: SizeTable,
  rows: readonly SizeRow[],
  sizes: readonly number[],
  column: number,
  room: number,
): Sketch {
  const right = (i: number): number => NAMES + UNITS + (i + 1) * column;
  const width = right(sizes.length - 1);
  // All numbers of a table in one size, that of the longest.
  const numbers = rows.flatMap(({ lines }) => lines.flatMap(({ cells }) => cells));
  const [longest = ''] = numbers.toSorted(
    (one, other) => textWidth(other, TYPE) - textWidth(one, TYPE),
  );
  const type = fitted(longest, TYPE, column - 2);
  const cell = (words: string, i: number, y: number, weight: 'normal' | 'bold' = 'normal'): Shape =>
    text(words, point(right(i), y), fitted(words, type, column - 2), { anchor: 'end', weight });
  const ends = [labels[sizes[0] ?? 0] ?? '', labels[sizes.at(-1) ?? 0] ?? ''];
  const part = ends[0] === ends[1] ? `size ${ends[0] ?? ''}` : `sizes ${ends.join(' to ')}`;
  const words = sizes.length < labels.length ? `${heading}, ${part}` : heading;
  const shapes: Shape[] = [
    text(words, point(0, HEADING), fitted(words, HEADING, room), { weight: 'bold' }),
  ];
  let y = HEADING + 1.5 * PITCH;
  shapes.push(...sizes.map((size, i) => cell(labels[size] ?? '', i, y, 'bold')));
  for (const row of rows) {
    shapes.push(polyline('rule', [point(0, y + 1.2), point(width, y + 1.2)], RULE));
    row.lines.forEach(({ unit, cells }, k) => {
      const level = y + (k + 1) * PITCH;
      shapes.push(text(unit, point(NAMES, level), TYPE, { color: SOFT_INK }));
      shapes.push(...sizes.map((size, i) => cell(cells[size] ?? '', i, level)));
    });
    const said = namesTold(row);
    said.forEach((words, k) => {
      shapes.push(text(words, point(0, y + (k + 1) * PITCH), fitted(words, TYPE, NAME_ROOM)));
    });
    y += linesOf(row) * PITCH;
  }
  return sketchOf(shapes);
}

/** The lines of a name and its detail, which are set a little smaller, or else broken, where they are long. */
function namesTold({ name, detail }: SizeRow): readonly string[] {
  return [name, ...(detail === undefined ? [] : [detail])].flatMap((words) =>
    fitted(words, 1, NAME_ROOM / TYPE) >= LEAST_NAME ? [words] : wrapped(words, TYPE, NAME_ROOM),
  );
}

/** How many lines a row takes. */
function linesOf(row: SizeRow): number {
  return Math.max(row.lines.length, namesTold(row).length);
}

function chunks<Item>(items: readonly Item[], size: number): readonly (readonly Item[])[] {
  const count = Math.ceil(items.length / size);
  return Array.from({ length: count }, (_, i) => items.slice(i * size, (i + 1) * size));
}
