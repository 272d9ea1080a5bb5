/** A table of measurements as far as a chart and a list of bodies are read alike. */
import { InputError } from '../errors';
import type { SaidLine } from '../table/said-line';
import { saidLine } from '../table/said-line';
import type { CheckCells, SheetRecord } from '../table/sheet';
import { readSheet } from '../table/sheet';
import { seemsOtherGirths } from '../table/seeming';
import { refuseCounting, refuseUnread } from '../table/statements';
import { tidyText } from '../table/tidy-text';
import type { LengthUnit } from '../units';
import type { ChartTable } from './layout';
import type { MeasurementLine } from './measurement-lines';
import { nameLines, refuseRemark } from './measurement-lines';
import type { SetAside } from './set-aside';
import { statedUnit } from './stated-unit';
import { takeUnitColumn } from './unit-column';
import { takeUnitLines, takeUnits } from './unit-lines';
import { recognizeMeasurement } from './vocabulary';

/** A table, its cells not read yet. */
export interface MeasurementTable {
  readonly table: ChartTable;
  readonly lines: readonly MeasurementLine[];
  readonly unit: LengthUnit;
  /** Comments and lines beside the table in the order of the file, without what states the unit. */
  readonly comments: readonly SaidLine[];
}

/** What a chart and a list of bodies have each in its own way. */
export interface TableForm {
  readonly layoutOf: (records: readonly SheetRecord[], file: string) => ChartTable;
  readonly mostCells: number;
  /** In words, for a file without cells. */
  readonly name: string;
  readonly header: string;
  /** In the place of `checkCells`, for what is checked later. */
  readonly check?: CheckCells;
  /** Takes out what is no part of the table; where columns have names of people nothing is. */
  readonly setAside?: (table: ChartTable, file: string) => SetAside;
}

/**
 * Reads a table of measurements, whatever its delimiter, line ends, title lines and blank rows. Throws
 * InputError where it is empty, and for a layout, a name or a unit that is in doubt.
 */
export function readMeasurementTable(
  text: string,
  file: string,
  { layoutOf, mostCells, name, header, check, setAside = nothingAside }: TableForm,
): MeasurementTable {
  const sheet = readSheet(text, file, namesMeasurement, mostCells, check);
  const { statements, rest } = takeUnitLines(sheet, file);
  if (rest.records.length === 0) {
    throw new InputError('chart-empty', {
      what: `the ${name} is empty`,
      allowed: header,
      got: '',
      place: { file },
    });
  }
  const { table: whole, statements: inColumn } = takeUnitColumn(layoutOf(rest.records, file), file);
  const { table, told, remarks } = setAside(whole, file);
  const words = takeUnits(linesBeside(table, file));
  const lines = nameLines(table, file);
  const unit = statedUnit([...statements, ...words.statements, ...inColumn], table, lines, file);
  const comments = [...rest.comments, ...words.rest, ...told].toSorted(
    (a, b) => a.place.row - b.place.row,
  );
  for (const { text: remark, place } of remarks) refuseRemark(remark, unit, place);
  refuseCounting({ file, comments: [...comments, ...remarks] }, unit);
  refuseUnread(
    { comments: [...comments, ...remarksIn(table, lines, file)] },
    {
      what: 'that girths are a part or a multiple of those of a body',
      seems: seemsOtherGirths,
      allowed: 'girths all the way around the body',
      also: ['title'],
    },
  );
  return { table, lines, unit, comments };
}

function nothingAside(table: ChartTable): SetAside {
  return { table, told: [], remarks: [] };
}

/** Rows of a chart that are no measurements and have no numbers: prose that its commas part into cells. */
function remarksIn(
  { layout }: ChartTable,
  lines: readonly MeasurementLine[],
  file: string,
): readonly SaidLine[] {
  if (layout === 'size-rows') return [];
  return lines
    .filter(({ known, cells }) => !known && cells.every(({ text }) => !/^[\d.,]+$/u.test(text)))
    .map(({ label, cells }) => {
      const texts = [label, ...cells].map(({ text }) => tidyText(text));
      return saidLine(texts.filter((text) => text !== '').join(', '), { file, row: label.row });
    });
}

/** A line of a chart has a label and a size or more. */
export function namesMeasurement(cells: readonly string[]): boolean {
  return cells.length >= 2 && cells.some((cell) => recognizeMeasurement(cell) !== undefined);
}

/** The records beside the table as lines of words. */
function linesBeside({ beside }: ChartTable, file: string): readonly SaidLine[] {
  return beside.map(({ row, cells }) =>
    saidLine(
      cells
        .map(tidyText)
        .filter((cell) => cell !== '')
        .join(', '),
      { file, row },
    ),
  );
}
