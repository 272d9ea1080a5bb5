/** A chart to begin with: its sizes with cells to fill in, or with the bodies of a published table. */
import { readChart } from '../chart/read-chart';
import type { SizeChart } from '../chart/size-chart';
import { roundedWords, tapeLength } from '../chart/tape-length';
import { NEEDED } from '../chart/vocabulary';
import { InputError } from '../errors';
import type { PublishedRow, PublishedTable } from '../standards/published-table';
import { publishedTable } from '../standards/published-tables';
import { matchSize } from '../table/name-match';
import { wantedSizes } from '../table/near-names';
import { checkSizeLabel } from '../table/size-label';
import { statementsIn } from '../table/statement-words';
import { isBlank, tidyText } from '../table/tidy-text';
import { writtenCsv } from '../table/written-csv';
import type { LengthUnit } from '../units';
import { trimmed } from '../units';

/** The units that a tape has. */
export const TAPE_UNITS = ['in', 'cm'] as const;
/** A unit that a tape has. */
export type TapeUnit = (typeof TAPE_UNITS)[number];

/** What a new chart is to have. */
export interface NewChartRequest {
  /** Of the garment, on one line; none, or a blank one, leaves the name of the file to stand for it. */
  readonly title?: string | undefined;
  /** That of the table where it is left out. */
  readonly unit?: TapeUnit | undefined;
  /** Labels; of a table those that it has, all where they are left out. */
  readonly sizes?: readonly string[] | undefined;
  /** The short name of a published table, such as `jis-l-4005`. */
  readonly like?: string | undefined;
}

/** A chart that was made, as text. */
export interface NewChart {
  readonly text: string;
  readonly unit: TapeUnit;
  readonly sizes: readonly string[];
  /** Rows that have their numbers. */
  readonly filled: readonly string[];
  /** Rows whose cells are blank, which are refused until they are filled in. */
  readonly toFill: readonly string[];
  /** Rows that are left out, for which the style has values of its own. */
  readonly leftToStyle: readonly string[];
  readonly table?: PublishedTable;
}

/** Lengths are rounded to an eighth of an inch or half a centimeter. Common practice, no source. */
const PARTS: Readonly<Record<TapeUnit, number>> = { in: 8, cm: 2 };
const PART_WORDS: Readonly<Record<TapeUnit, string>> = {
  in: 'eighths of an inch',
  cm: 'half centimeters',
};
const TYPED: Readonly<Record<TapeUnit, string>> = { in: '26.5 or 26 1/2', cm: '67.5' };

/** The rows of a chart for a skirt, and how each is measured. Common practice, no source. */
const ROWS: ReadonlyMap<string, string> = new Map([
  ['waist_girth', 'around the natural waist, the tape level and snug, not tight'],
  ['hip_girth', 'around the fullest part of the hips, the tape level'],
  ['waist_to_hip', 'from the waist straight down to where hip_girth was taken'],
  ['skirt_length', 'from the waist straight down to the hem of the finished skirt'],
]);

/**
 * Throws InputError `standard-unknown` and `size-unknown` for what a table does not have, `bad-option`
 * for a title that states something else, and what reading a chart throws for its title and sizes.
 */
export function newChart(request: NewChartRequest): NewChart {
  const table = request.like === undefined ? undefined : tableLike(request.like);
  const unit = request.unit ?? (table && tapeUnit(table.unit));
  const sizes = table === undefined ? request.sizes : sizesOf(table, request.sizes);
  if (unit === undefined || sizes === undefined)
    throw new InputError('bad-option', {
      what: 'a new chart has a unit and sizes',
      allowed: 'a unit of a tape and the labels of the sizes, or a table that has both',
      place: { field: unit === undefined ? 'unit' : 'sizes' },
    });
  const title = tidyText(request.title ?? '');
  const head = [...titleLines(title), `unit: ${unit}`];
  checkReadable(title, sizes);
  const made = table === undefined ? blankRows(unit, sizes) : tableRows(table, unit, sizes);
  return {
    text: chartText(
      [...head, ...made.comments.map((comment) => `not read: ${comment}`)],
      sizes,
      made.rows,
    ),
    ...{ unit, sizes, filled: made.filled, toFill: made.toFill, leftToStyle: made.leftToStyle },
    ...(table === undefined ? {} : { table }),
  };
}

type Row = readonly [name: string, ...cells: string[]];

interface MadeRows extends Pick<NewChart, 'filled' | 'toFill' | 'leftToStyle'> {
  readonly comments: readonly string[];
  readonly rows: readonly Row[];
}

/** The table of that name or of the one that begins so. Throws InputError `standard-unknown`. */
function tableLike(like: string): PublishedTable {
  try {
    return publishedTable(like);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(error.code, { ...error.problem, place: { field: 'like' } });
  }
}

function tapeUnit(unit: LengthUnit): TapeUnit {
  return unit === 'in' ? 'in' : 'cm';
}

/** In the order of the table. Throws InputError `size-unknown`. */
function sizesOf(table: PublishedTable, wanted: readonly string[] | undefined): readonly string[] {
  if (wanted === undefined) return table.sizes;
  const known = wanted.map((label) => {
    const size = matchSize(label, table.sizes);
    if (size !== undefined) return size;
    throw new InputError('size-unknown', {
      what: `${table.name} has no such size`,
      ...wantedSizes(label, table.sizes),
      got: label,
      place: { field: 'sizes' },
    });
  });
  return table.sizes.filter((size) => known.includes(size));
}

/** Throws InputError `bad-option` for a title in which something else is stated. */
function titleLines(title: string): readonly string[] {
  if (title === '') return [];
  const line = `title: ${title}`;
  const [first, ...others] = statementsIn(line);
  if (first?.name === 'title' && first.text === title && others.length === 0) return [line];
  throw saysMore(title);
}

function saysMore(title: string): InputError {
  return new InputError('bad-option', {
    what: 'the title would be read as more than a title',
    allowed: 'the name of the garment, such as Quill skirt',
    got: title,
    place: { field: 'title' },
  });
}

/** Throws what reading throws for a chart with this title and these sizes, whatever its numbers. */
function checkReadable(title: string, sizes: readonly string[]): void {
  if (sizes.some(isBlank)) throw badLabels(sizes);
  for (const size of sizes) checkSizeLabel(size, { field: 'sizes' });
  const row = (name: string, least: number): Row => [
    name,
    ...sizes.map((_, i) => trimmed(least + i, 0)),
  ];
  const lines = (titles: readonly string[]): readonly string[] => [
    ...['unit: mm', ...titles].map((line) => `# ${line}`),
    writtenCsv([['measurement', ...sizes], row('waist_girth', 700), row('hip_girth', 950)]),
  ];
  const read = readAs('sizes', lines([]));
  if (read.sizes.join('\n') !== sizes.join('\n')) throw badLabels(sizes);
  if (title !== '') readAs('title', lines(titleLines(title)), saysMore(title));
}

/** Reads a trial; what is wrong with it is told of the field, whatever its rows and columns. */
function readAs(field: string, lines: readonly string[], unread?: InputError): SizeChart {
  try {
    return readChart(lines.join('\n'), '');
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const { code, problem } = error;
    if (unread !== undefined && code !== 'file-too-large') throw unread;
    const what = code === 'size-twice' ? 'two sizes have one name' : problem.what;
    throw new InputError(code, { ...problem, what, place: { field } });
  }
}

function badLabels(sizes: readonly string[]): InputError {
  return new InputError('size-missing', {
    what: 'a size has no label, or one that would be read as another',
    allowed: 'labels such as 8, 14W or XL, with a comma between two',
    got: sizes.join(','),
    place: { field: 'sizes' },
  });
}

function blankRows(unit: TapeUnit, sizes: readonly string[]): MadeRows {
  const toFill = [...ROWS.keys()];
  const optional = toFill.filter((name) => !NEEDED.includes(name));
  return {
    comments: [
      `Fill in the cells below, such as ${TYPED[unit]}. Measure bodies: the style adds the ease.`,
      ...[...ROWS].map(([name, how]) => `${name}: ${how}`),
      `Take away the row ${optional.join(' or ')} to leave it to the style.`,
    ],
    rows: toFill.map((name) => [name, ...sizes.map(() => '')]),
    filled: [],
    toFill,
    leftToStyle: [],
  };
}

function tableRows(table: PublishedTable, unit: TapeUnit, sizes: readonly string[]): MadeRows {
  const known = new Map<string, PublishedRow | undefined>([
    ['waist_girth', table.waist],
    ['hip_girth', table.hip],
    ['waist_to_hip', table.waistToHip],
  ]);
  const stated = [...ROWS.keys()].flatMap((name) => {
    const row = known.get(name);
    return row === undefined ? [] : [{ name, row }];
  });
  const filled = stated.map(({ name }) => name);
  const leftToStyle = [...ROWS.keys()].filter((name) => !filled.includes(name));
  const at = (size: string): number => table.sizes.indexOf(size);
  return {
    comments: [
      `These are bodies of a table, not garments: the style adds the ease.`,
      `${table.title}, ${table.kind === 'survey' ? 'survey' : 'table'} of ${table.year}`,
      ...stated.map(({ name, row }) => `${name}, certainty: ${row.certainty}`),
      table.unit === unit
        ? `rounded to ${PART_WORDS[unit]}`
        : roundedWords(PART_WORDS[unit], table.unit),
      `The table has no ${leftToStyle.join(' and no ')}. Without a row the style has its own value.`,
    ],
    rows: stated.map(({ name, row }) => [
      name,
      ...sizes.map((size) => tapeLength(row.values[at(size)] ?? NaN, unit, PARTS[unit])),
    ]),
    filled,
    toFill: [],
    leftToStyle,
  };
}

function chartText(
  comments: readonly string[],
  sizes: readonly string[],
  rows: readonly Row[],
): string {
  const lines = comments.map((comment) => `# ${comment}\n`).join('');
  return lines + writtenCsv([['measurement', ...sizes], ...rows]);
}
