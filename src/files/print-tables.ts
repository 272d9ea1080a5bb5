/** The tables that go with a printed pattern: bodies and finished garments in both units. */
import type { GradeResult } from '../jobs/grade-result';
import { inchFraction, toMillimeters, fromMillimeters } from '../units';
import { NO_LIMIT } from './tables';
import type { SizeRow, SizeTable } from '../print/size-table';

/** Lengths in these units, so that nobody has to convert. */
const CAPTION = 'in centimeters and, to the nearest eighth, in inches';

/** Bodies where a chart tells them, garments where they were measured. */
export function printTables({ chart, shown }: GradeResult): readonly SizeTable[] {
  const sizes = shown.map(({ label }) => label);
  const columns = sizes.map((label) => chart?.sizes.indexOf(label) ?? -1);
  const body = (chart?.rows ?? [])
    .filter(({ known }) => known)
    .map(({ name, values }) =>
      lengths(
        name,
        columns.map((i) => values[i] ?? null),
      ),
    );
  const finished = (shown[0]?.measures ?? [])
    // The legs and intakes of darts are sewn as they are marked.
    .filter(({ name }) => !/_(intake|leg)$/.test(name))
    .map(({ name }) =>
      lengths(
        name,
        shown.map(({ measures }) => measures.find((m) => m.name === name)?.value ?? null),
      ),
    );
  return [
    { heading: `Body measurements ${CAPTION}`, sizes, rows: body },
    { heading: `Finished garment ${CAPTION}`, sizes, rows: finished },
  ].filter(({ rows }) => rows.length > 0);
}

function lengths(name: string, values: readonly (number | null)[]): SizeRow {
  const cells = (show: (mm: number) => string): readonly string[] =>
    values.map((mm) => {
      if (mm === Infinity) return NO_LIMIT;
      return mm === null || !Number.isFinite(mm) ? '-' : show(mm);
    });
  return {
    name: name.replace(/_/g, ' '),
    lines: [
      { unit: 'cm', cells: cells((mm) => fromMillimeters(mm, 'cm').toFixed(1)) },
      { unit: 'in', cells: cells(nearestEighth) },
    ],
  };
}

function nearestEighth(mm: number): string {
  return inchFraction(toMillimeters(Math.round(fromMillimeters(mm, 'in') * 8) / 8, 'in'));
}
