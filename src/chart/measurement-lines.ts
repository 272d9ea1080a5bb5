/** The lines of a chart as rows of measurements. */
import type { Place } from '../errors';
import { InputError, readEach } from '../errors';
import type { LengthUnit } from '../units';
import { cellError, readCell } from './chart-cell';
import { snakeCase, splitLabel } from '../table/label';
import type { ChartTable, ChartLine } from './layout';
import { cellPosition } from './layout';
import { typedForDate } from '../table/date-cell';
import { parseLength } from '../table/number-cell';
import type { MeasurementRow } from './size-chart';
import type { SizeLabel } from './size-labels';
import { remarksOtherUnit, seemsOtherGirths } from '../table/seeming';
import { excerpt, isBlank, tidyText } from '../table/tidy-text';
import { UNIT_WORDS } from '../units';
import { NEEDED, recognizeMeasurement } from './vocabulary';

/** A line of a table, the measurement it is, and the unit its label states, if any. */
export interface MeasurementLine extends ChartLine {
  readonly name: string;
  readonly known: boolean;
  readonly unit?: LengthUnit | undefined;
}

/**
 * Names the lines of a table. Throws `measurement-twice` if two of them are one measurement, even
 * where they call it differently.
 */
export function nameLines(table: ChartTable, file: string): readonly MeasurementLine[] {
  const lines = table.lines
    .filter(({ label, cells }) => [label, ...cells].some(({ text }) => !isBlank(text)))
    .map(nameLine);
  const found = new Map<string, MeasurementLine>();
  for (const line of lines) {
    const { name, label } = line;
    const earlier = found.get(name)?.label;
    if (earlier !== undefined && name !== '') {
      throw new InputError('measurement-twice', {
        what:
          `the chart has ${name} twice, as ${tidyText(earlier.text)} in ${cellPosition(earlier)} ` +
          `and as ${tidyText(label.text)} in ${cellPosition(label)}`,
        allowed: 'each measurement once',
        got: tidyText(label.text),
        place: { file, row: label.row, column: label.column, measurement: name },
      });
    }
    found.set(name, line);
  }
  return lines;
}

/** `7;2`, which is no word for a value that is not there: somebody's number was typed wrong. */
const TWO_NUMBERS = /^\d+ ?[;:_] ?\d+$/u;

/**
 * A line as a row of the chart, for the sizes given. A cell of a known measurement that is no
 * length becomes null, but in a row without which nothing is drafted it throws `cell-missing`,
 * `cell-not-a-number` or `cell-not-positive`. One in another unit than the chart's, or a remark that names one,
 * throws `unit-contradicted`, and two numbers with a stray mark between them (`7;2`), or a number of which a
 * spreadsheet made a date, throw `cell-not-a-number`. A remark by which girths count otherwise throws
 * `sheet-malformed`. Cells that are refused are told at once.
 */
export function measurementRow(
  line: MeasurementLine,
  sizes: readonly SizeLabel[],
  unit: LengthUnit,
  file: string,
): MeasurementRow {
  const cells = sizes.map(({ name, index }) => ({
    size: name,
    text: line.cells[index]?.text ?? '',
    row: line.cells[index]?.row ?? line.label.row,
    column: line.cells[index]?.column ?? line.label.column,
  }));
  const mustBeRead = NEEDED.includes(line.name);
  const values = readEach(cells, ({ text, size, row, column }) => {
    if (!line.known) return unknownCell(text, line, unit, { file, row, column, size });
    const reading = readCell(text, unit);
    if (reading.kind === 'length') return reading.mm;
    const isTyped = TWO_NUMBERS.test(tidyText(text)) || typedForDate(text) !== undefined;
    if (reading.code !== 'unit-contradicted' && !isTyped && !mustBeRead) return null;
    throw cellError(reading, text, { file, row, column, size, measurement: line.name });
  });
  return {
    name: line.name,
    label: tidyText(line.label.text),
    known: line.known,
    values,
    cells: cells.map(({ text }) => text),
    places: cells.map(({ row, column }) => ({ row, column })),
  };
}

/** A row that nothing is drafted from may have lengths, or remarks. */
function unknownCell(
  text: string,
  line: MeasurementLine,
  unit: LengthUnit,
  place: Place,
): number | null {
  refuseRemark(text, unit, place);
  return parseLength(text, line.unit ?? unit) ?? null;
}

/**
 * Throws InputError `unit-contradicted` for a remark that names another unit than that of the numbers, and
 * `sheet-malformed` for one by which girths count otherwise.
 */
export function refuseRemark(text: string, unit: LengthUnit, place: Place): void {
  if (remarksOtherUnit(text, unit)) {
    throw new InputError('unit-contradicted', {
      what: `a remark names another unit than ${UNIT_WORDS[unit]}, in which the numbers are read`,
      allowed: `numbers in ${UNIT_WORDS[unit]} and a remark without a unit; or a file in that unit`,
      got: excerpt(text),
      place,
    });
  }
  if (seemsOtherGirths(tidyText(text))) {
    throw new InputError('sheet-malformed', {
      what: 'a remark seems to state that girths are a part or a multiple of those of a body',
      allowed: 'girths all the way around the body, and other remarks',
      got: excerpt(text),
      place,
    });
  }
}

function nameLine(line: ChartLine): MeasurementLine {
  const { text, unit } = splitLabel(line.label.text);
  const name = recognizeMeasurement(line.label.text)?.name;
  return { ...line, name: name ?? snakeCase(text), known: name !== undefined, unit };
}
