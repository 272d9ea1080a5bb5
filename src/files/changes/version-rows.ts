/** What two versions of a style have otherwise, number by number: the rows of a table that a room signs. */
import { readWrittenCsv } from '../../table/written-csv';
import { WRITTEN_ALIKE } from '../../tolerance';
import { LENGTH_UNITS } from '../../units';
import { cutChanges } from './cut-changes';
import type { NamedTexts, Row } from './rows';
import { NEST, millimeters, subjectOf } from './rows';

/** One number or word that changed; empty `before` where it came, empty `after` where it went. */
export interface VersionRow {
  /** What the number is of, such as `point`. */
  readonly of: string;
  /** What it belongs to, such as `front.side_hip`, and the size. */
  readonly name: string;
  readonly size: string;
  /** Which of its numbers, such as `x_cm`. */
  readonly value: string;
  readonly before: string;
  readonly after: string;
  /** mm by which a length grew; undefined for what is no length on both sides. */
  readonly growth: number | undefined;
}

/** How a written table is read: what names a row, and which cells are compared. */
interface Compared {
  readonly file: string;
  readonly of: string;
  readonly name: (row: Row) => string;
  readonly size: (row: Row) => string;
  /** The cells by what they are called whatever their unit, with the unit of their length. */
  readonly cells: (row: Row) => readonly Cell[];
}

interface Cell {
  readonly value: string;
  readonly text: string;
  /** `in`, `cm` or `mm`; empty for what is no length. */
  readonly unit: string;
}

/** Columns such as `x_in`, told as `x`; formulas and words are told as they are. */
function columns(row: Row, names: readonly string[]): readonly Cell[] {
  return names.flatMap((name): Cell[] => {
    const unit = LENGTH_UNITS.find((own) => row[`${name}_${own}`] !== undefined);
    const text = unit === undefined ? row[name] : row[`${name}_${unit}`];
    return text === undefined ? [] : [{ value: name, text, unit: unit ?? '' }];
  });
}

const joined = (...parts: readonly (string | undefined)[]): string =>
  parts.filter((part) => part !== undefined && part !== '').join('.');
const sizeOf = ({ size = '' }: Row): string => size;

/** The tables of a grade, in the order in which a room reads them. */
const COMPARED: readonly Compared[] = [
  {
    file: 'finished-measurements.csv',
    of: 'measure',
    name: ({ measure = '' }) => measure,
    size: () => '',
    cells: ({ measure: _, unit = '', ...sizes }) =>
      Object.entries(sizes).map(([value, text]) => ({ value, text, unit })),
  },
  {
    file: 'graded-points.csv',
    of: 'point',
    name: ({ piece, point }) => joined(piece, point),
    size: sizeOf,
    cells: (row) => columns(row, ['x', 'y']),
  },
  {
    file: 'grade-rules.csv',
    of: 'rule',
    name: ({ piece, point }) => joined(piece, point),
    size: sizeOf,
    cells: (row) => columns(row, ['step_dx', 'step_dy', 'rule_x', 'rule_y']),
  },
  {
    file: 'seams.csv',
    of: 'seam',
    name: ({ seam = '', from = '', to = '' }) => `${seam}, ${from} to ${to}`,
    size: sizeOf,
    cells: (row) => columns(row, ['first', 'second', 'ease', 'off']),
  },
  {
    file: 'findings.csv',
    of: 'finding',
    name: (row) => joined(row.check, row.piece, subjectOf(row)),
    size: sizeOf,
    // What held is no news, nor is what was only noted.
    cells: ({ severity = '' }) =>
      severity === 'fail' || severity === 'warning'
        ? [{ value: 'severity', text: severity, unit: '' }]
        : [],
  },
];

/** The files that a version is compared by. */
export const VERSION_FILES: readonly string[] = [...COMPARED.map(({ file }) => file), NEST];

/**
 * All that changed from one version to the other. A length counts as changed where its millimeters
 * differ, in whatever unit each version has it; so a version in inches can be held against one in
 * centimeters. Throws InputError `csv-malformed` for a text that is no table.
 */
export function versionRows(earlier: NamedTexts, now: NamedTexts): readonly VersionRow[] {
  const numbers = COMPARED.flatMap((table) => {
    const [before, after] = [earlier, now].map((texts) => cellsOf(table, texts.get(table.file)));
    if (before === undefined || after === undefined) return [];
    const keys = [...new Set([...before.keys(), ...after.keys()])];
    return keys.flatMap((key) => changed(table, before.get(key), after.get(key)));
  });
  const cuts = cutChanges(earlier.get(NEST) ?? '', now.get(NEST) ?? '');
  return [
    ...numbers,
    ...cuts.map(({ piece: name, ...cut }) => ({ of: 'piece', name, ...cut, growth: undefined })),
  ];
}

interface PlacedCell extends Cell {
  readonly name: string;
  readonly size: string;
}

function cellsOf(table: Compared, text: string | undefined): ReadonlyMap<string, PlacedCell> {
  const found = new Map<string, PlacedCell>();
  for (const row of text === undefined ? [] : readWrittenCsv(text, table.file)) {
    const [name, size] = [table.name(row), table.size(row)];
    for (const cell of table.cells(row)) {
      // A measure has a column a size.
      const place = table.of === 'measure' ? { size: cell.value, value: 'length' } : { size };
      const placed = { ...cell, name, ...place };
      found.set(JSON.stringify([name, placed.size, placed.value]), placed);
    }
  }
  return found;
}

function changed(
  { of }: Compared,
  before: PlacedCell | undefined,
  after: PlacedCell | undefined,
): readonly VersionRow[] {
  const shown = after ?? before;
  if (shown === undefined) return [];
  const [was, is] = [lengthOf(before), lengthOf(after)];
  const isSame =
    was === undefined || is === undefined
      ? (before?.text ?? '') === (after?.text ?? '')
      : Math.abs(is - was) <= WRITTEN_ALIKE;
  if (isSame) return [];
  const told = (cell: PlacedCell | undefined): string =>
    cell === undefined ? '' : cell.unit === '' ? cell.text : `${cell.text} ${cell.unit}`;
  const { name, size, value } = shown;
  const growth = was === undefined || is === undefined ? undefined : is - was;
  return [{ of, name, size, value, before: told(before), after: told(after), growth }];
}

/** mm of a length; undefined for a formula, a word or an empty cell. */
function lengthOf(cell: PlacedCell | undefined): number | undefined {
  if (cell === undefined || cell.text === '') return undefined;
  const mm = millimeters(cell.text, cell.unit);
  return Number.isFinite(mm) ? mm : undefined;
}
