/** The tables that go with a printed pattern: bodies and finished garments in both units. */
import type { GradeResult } from '../jobs/grade-result';
import { shopZipIn } from '../pattern/shop-length';
import type { LengthUnit } from '../units';
import { fromMillimeters, inchFraction, tableLength, toMillimeters } from '../units';
import { NO_LIMIT } from './tables';
import { inMarket } from '../print/size-table';
import type { SizeRow, SizeTable } from '../print/size-table';

/** Lengths in both units, so that nobody has to convert. */
type Shown = Readonly<Record<'cm' | 'in', (mm: number) => string>>;

/** Garments are measured from the drawing, finer than any tape. */
const MEASURED: Shown = { cm: nearestMillimeter, in: nearestEighth };
/** A zip is bought, and its opening is as long. */
const BOUGHT: Shown = { cm: (mm) => shopZipIn(mm, 'cm'), in: (mm) => shopZipIn(mm, 'in') };

function measuredIn(unit: LengthUnit): string {
  return unit === 'in'
    ? 'in inches, to the nearest eighth, and in centimeters'
    : 'in centimeters and, to the nearest eighth, in inches';
}

/** What no sewer finds with a tape. */
const STRIDE = 'Stride: the longest step that the hem allows, from heel to heel.';

const EASED = 'Skirt waist edge: the skirt before it is eased onto the waistband.';

/** A body is what the chart says, not what is near it; only the other unit is rounded. */
const STATED: Readonly<Record<'cm' | 'in', Shown & { readonly words: string }>> = {
  cm: {
    cm: (mm) => tableLength(mm, { unit: 'cm', fractions: false }),
    in: nearestEighth,
    words: 'in centimeters and, to the nearest eighth, in inches',
  },
  in: {
    cm: nearestMillimeter,
    in: (mm) => tableLength(mm, { unit: 'in', fractions: true, fractionTables: true }),
    words: 'in inches and, to the nearest millimeter, in centimeters',
  },
};

/** Bodies as a chart states them, garments where they were measured. */
export function printTables({ chart, shown, display }: GradeResult): readonly SizeTable[] {
  const sizes = shown.map(({ label }) => label);
  const columns = sizes.map((label) => chart?.sizes.indexOf(label) ?? -1);
  const stated = STATED[chart?.unit === 'in' ? 'in' : 'cm'];
  const body = (chart?.rows ?? [])
    .filter(({ known }) => known)
    .map(({ name, values }) =>
      lengths(
        name,
        columns.map((i) => values[i] ?? null),
        stated,
      ),
    );
  const hasZip = (shown[0]?.measures ?? []).some(({ name }) => name === 'zip_length');
  const finished = (shown[0]?.measures ?? [])
    // The legs and intakes of darts are sewn as they are marked, and the opening is as long as the zip.
    .filter(({ name }) => !/_(intake|leg)$/.test(name) && !(hasZip && name === 'zip_opening'))
    .map(({ name }) =>
      lengths(
        name,
        shown.map(({ measures }) => measures.find((m) => m.name === name)?.value ?? null),
        name === 'zip_length' ? BOUGHT : MEASURED,
      ),
    );
  return [
    { heading: `Body measurements ${stated.words}`, sizes, rows: body },
    {
      heading: `Finished garment ${measuredIn(display.unit)}`,
      sizes,
      rows: sidesOnce(finished),
      notes: finishedNotes(finished),
    },
  ]
    .filter(({ rows }) => rows.length > 0)
    .map((table) => inMarket(table, display.unit));
}

/** Both sides of the side seam as one row where a tape shows no difference, as it should. */
function sidesOnce(rows: readonly SizeRow[]): readonly SizeRow[] {
  const [front, back] = ['side seam front', 'side seam back'].map((name) =>
    rows.find((row) => row.name === name),
  );
  if (JSON.stringify(front?.lines) !== JSON.stringify(back?.lines)) return rows;
  return rows.flatMap((row) => {
    if (row === back) return [];
    return row === front ? [{ ...row, name: 'side seam' }] : [row];
  });
}

function finishedNotes(rows: readonly SizeRow[]): readonly string[] {
  const has = (name: string): boolean => rows.some((row) => row.name === name);
  const girths = ['waist', 'skirt waist edge', 'hip', 'hem', 'lining hip'].filter(has);
  return [
    ...(girths.length > 0 ? [`All round: ${girths.join(', ')}.`] : []),
    ...(has('skirt waist edge') ? [EASED] : []),
    ...(has('stride') ? [STRIDE] : []),
  ];
}

function lengths(name: string, values: readonly (number | null)[], shown: Shown): SizeRow {
  const cells = (show: (mm: number) => string): readonly string[] =>
    values.map((mm) => {
      if (mm === Infinity) return NO_LIMIT;
      return mm === null || !Number.isFinite(mm) ? '-' : show(mm);
    });
  return {
    name: name.replace(/_/g, ' '),
    lines: [
      { unit: 'cm', cells: cells(shown.cm) },
      { unit: 'in', cells: cells(shown.in) },
    ],
  };
}

function nearestMillimeter(mm: number): string {
  return fromMillimeters(mm, 'cm').toFixed(1);
}

function nearestEighth(mm: number): string {
  return inchFraction(toMillimeters(Math.round(fromMillimeters(mm, 'in') * 8) / 8, 'in'));
}
