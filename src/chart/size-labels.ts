/** The names of a chart's sizes, checked. */
import { InputError } from '../errors';
import type { ChartTable, ChartCell, ChartLine } from './layout';
import { cellPosition } from './layout';
import { typedForDate } from '../table/date-cell';
import { labelKey, splitLabel } from '../table/label';
import { excerpt, isBlank, tidyText } from '../table/tidy-text';

/** Columns that people put beside the sizes, by the letters and digits of their headings. */
const NO_SIZE =
  /^(?:tol(?:erances?)?|plusminus|ease|(?:grade)?(?:steps?|rules?|increments?)|grad(?:e|ing)|growth|differences?|averages?|mean|median|min(?:imum)?|max(?:imum)?|total|sum|notes?|comments?|remarks?|descriptions?|sources?|units?|howto(?:measure)?)$/u;

/** Sizes of a chart: ten times the longest published range. The engine's own figure. */
const MOST_SIZES = 1_000;

/** The label of a size, and where its cells stand. */
export interface SizeLabel {
  /** As written, without blanks around it. */
  readonly name: string;
  /** Where the size is among the table's sizes, and in each of its lines. */
  readonly index: number;
}

/**
 * The sizes of a table that have a label. Throws `size-missing` if a cell of a needed line belongs
 * to no labeled size or a heading is a word that names none (`tolerance`), `size-twice` for two sizes of one name, and `sizes-too-few` if there are not
 * at least two.
 */
export function readSizeLabels(
  table: ChartTable,
  needed: readonly (ChartLine & { readonly name: string })[],
  file: string,
): readonly SizeLabel[] {
  const found = new Map<string, { label: ChartCell; index: number }>();
  for (const [index, label] of table.sizes.entries()) {
    const name = tidyText(label.text);
    if (name === '') {
      refuseStrayCells(needed, index, file);
      continue;
    }
    refuseNoSize(name, label, file);
    refuseLong(name, label, file);
    refuseDate(name, label, file);
    const earlier = found.get(name)?.label;
    if (earlier !== undefined) {
      throw new InputError('size-twice', {
        what: `two sizes have one name, in ${cellPosition(earlier)} and in ${cellPosition(label)}`,
        allowed: 'a name of its own for each size',
        got: name,
        place: { file, row: label.row, column: label.column, size: name },
      });
    }
    found.set(name, { label, index });
  }
  if (found.size > MOST_SIZES) {
    throw new InputError('file-too-large', {
      what: 'the chart has too many sizes',
      allowed: `${MOST_SIZES} sizes`,
      got: `${found.size}`,
      place: { file, row: table.corner.row },
    });
  }
  if (found.size < 2) {
    throw new InputError('sizes-too-few', {
      what: 'the chart has too few sizes to grade',
      allowed: 'two sizes or more',
      got: [...found.keys()].join(', '),
      place: { file, row: table.corner.row },
    });
  }
  return [...found].map(([name, { index }]) => ({ name, index }));
}

/** A column of tolerances or notes would be drafted as a body. */
function refuseNoSize(name: string, label: ChartCell, file: string): void {
  const { text } = splitLabel(name);
  if (!/^(?:±|\+ ?\/? ?-)/u.test(name) && !NO_SIZE.test(labelKey(text))) return;
  throw new InputError('size-missing', {
    what: `"${excerpt(name)}" stands where a size does, but it names none`,
    allowed: 'sizes with their body measurements, and nothing else beside them',
    got: excerpt(name),
    place: { file, row: label.row, column: label.column, size: name },
  });
}

/** Two sizes in one, such as 10-12, become a date in a spreadsheet. */
function refuseDate(name: string, label: ChartCell, file: string): void {
  const typed = typedForDate(name);
  if (typed === undefined) return;
  throw new InputError('cell-is-date', {
    what: `the label of a size is a date, which spreadsheet programs make of ${typed.replaceAll('/', '-')}`,
    allowed: 'the name of the size, in a column of text',
    got: name,
    place: { file, row: label.row, column: label.column },
  });
}

/** Characters of a size label: it names files and stands on every piece. The engine's own figure. */
const LONGEST = 100;

function refuseLong(name: string, label: ChartCell, file: string): void {
  if (name.length <= LONGEST) return;
  throw new InputError('file-too-large', {
    what: 'the label of a size has too many characters',
    allowed: `${LONGEST} characters`,
    got: `${name.length}, which begin with ${excerpt(name)}`,
    place: { file, row: label.row, column: label.column },
  });
}

function refuseStrayCells(
  needed: readonly (ChartLine & { readonly name: string })[],
  index: number,
  file: string,
): void {
  for (const { name, cells } of needed) {
    const cell = cells[index];
    if (cell === undefined || isBlank(cell.text)) continue;
    throw new InputError('size-missing', {
      what: 'a measurement belongs to no size',
      allowed: 'the name of a size for every cell',
      got: excerpt(cell.text),
      place: { file, row: cell.row, column: cell.column, measurement: name },
    });
  }
}
