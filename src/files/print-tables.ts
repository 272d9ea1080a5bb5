/** The tables that go with a printed pattern: bodies and finished garments in both units. */
import type { GradeResult } from '../jobs/grade-chart';
import { inchFraction, toMillimeters, fromMillimeters } from '../units';
import type { SizeRow, SizeTable } from '../print/size-table';

/** Lengths in these units, so that nobody has to convert. */
const CAPTION = 'in centimeters and, to the nearest eighth, in inches';

/**
 * One table of the bodies, as far as the chart knows them, and one of the garments, a column for
 * each size shown.
 */
export function printTables({ chart, shown }: GradeResult): readonly SizeTable[] {
  const sizes = shown.map(({ label }) => label);
  const columns = sizes.map((label) => chart.sizes.indexOf(label));
  const body = chart.rows
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
  ];
}

function lengths(name: string, values: readonly (number | null)[]): SizeRow {
  const cells = (show: (mm: number) => string): readonly string[] =>
    values.map((mm) => (mm === null || !Number.isFinite(mm) ? '-' : show(mm)));
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
