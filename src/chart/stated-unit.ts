/** The unit of a table of measurements, wherever it is stated. */
import { InputError } from '../errors';
import { splitLabel } from '../table/label';
import { parseNumberCell } from '../table/number-cell';
import { unitNamed } from '../table/unit-name';
import type { UnitStatement } from '../table/unit-statement';
import { oneUnit } from '../table/unit-statement';
import type { LengthUnit } from '../units';
import { LENGTH_UNITS } from '../units';
import type { ChartTable } from './layout';
import type { MeasurementLine } from './measurement-lines';

/**
 * The one unit that these statements and the labels of a table state, or else each number of its known
 * measurements. Throws what `oneUnit` throws, and
 * `unit-missing` if nothing states one.
 */
export function statedUnit(
  statements: readonly UnitStatement[],
  table: ChartTable,
  lines: readonly MeasurementLine[],
  file: string,
): LengthUnit {
  const unit =
    oneUnit([...statements, ...statedByLabels(table, lines, file)]) ?? unitOfCells(lines);
  if (unit !== undefined) return unit;
  throw new InputError('unit-missing', {
    what: 'the chart does not say in which unit it is',
    allowed: `a line such as \`# unit: cm\`, with one of ${LENGTH_UNITS.join(', ')}`,
    place: { file },
  });
}

/** Units behind the labels of known measurements, and in the corner, as in `measurement (cm)`. */
function statedByLabels(
  { corner }: ChartTable,
  lines: readonly MeasurementLine[],
  file: string,
): UnitStatement[] {
  const cornerUnit = splitLabel(corner.text).unit ?? unitNamed(corner.text);
  return [
    { unit: cornerUnit, label: corner },
    ...lines.filter(({ known }) => known).map(({ unit, label }) => ({ unit, label })),
  ].flatMap(({ unit, label: { row, column } }) =>
    unit === undefined ? [] : [{ text: unit, place: { file, row, column } }],
  );
}

/** The unit behind every number of the known measurements, as in `26 1/2"`; undefined where one has none. */
function unitOfCells(lines: readonly MeasurementLine[]): LengthUnit | undefined {
  const units = lines
    .filter(({ known }) => known)
    .flatMap(({ cells }) => cells.map(({ text }) => parseNumberCell(text)))
    .flatMap((cell) => (cell.kind === 'number' ? [cell.unit] : []));
  const [first, ...others] = new Set(units);
  return others.length === 0 ? first : undefined;
}
