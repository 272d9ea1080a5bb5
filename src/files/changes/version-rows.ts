/** What two versions of a style have otherwise, number by number: the rows of a table that a room signs. */
import { readWrittenCsv } from '../../table/written-csv';
import { LENGTH_UNITS } from '../../units';
import { cutChanges } from './cut-changes';
import type { Fact, VersionRow } from './facts';
import { changedFacts } from './facts';
import type { NamedTexts, Row } from './rows';
import { NEST, subjectOf } from './rows';

/** How a written table is read: what names a row, and which cells are compared. */
interface Compared {
  readonly file: string;
  readonly of: string;
  readonly name: (row: Row) => string;
  readonly size: (row: Row) => string;
  /** The cells by what they are called whatever their unit, with the unit of their length. */
  readonly cells: (row: Row) => readonly Cell[];
}

type Cell = Pick<Fact, 'value' | 'text' | 'unit'>;

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

/** The page of a grade, whose heading is its title. */
const REPORT = 'report.md';

/** The files that a version is compared by. */
export const VERSION_FILES: readonly string[] = [...COMPARED.map(({ file }) => file), REPORT, NEST];

/**
 * All that changed from one version to the other, so that one in inches can be held against one in
 * centimeters. Throws InputError `csv-malformed` for a text that is no table.
 */
export function versionRows(earlier: NamedTexts, now: NamedTexts): readonly VersionRow[] {
  const cuts = cutChanges(earlier.get(NEST) ?? '', now.get(NEST) ?? '');
  return [
    ...changedFacts(factsOf(earlier), factsOf(now)),
    ...cuts.map(({ piece: name, ...cut }) => ({ of: 'piece', name, ...cut, growth: undefined })),
  ];
}

function factsOf(texts: NamedTexts): readonly Fact[] {
  return [
    ...titleOf(texts.get(REPORT)),
    ...COMPARED.flatMap((table) => {
      const text = texts.get(table.file);
      return text === undefined ? [] : tableFacts(table, text);
    }),
  ];
}

/** The title that stands above a report, its signs of marking up taken away. */
function titleOf(report = ''): readonly Fact[] {
  const [, heading] = /^# (.*)$/mu.exec(report) ?? [];
  if (heading === undefined) return [];
  const text = heading.replace(/\\(.)/gu, '$1');
  return [{ of: 'title', name: '', size: '', value: 'title', text, unit: '' }];
}

function tableFacts(table: Compared, text: string): readonly Fact[] {
  return readWrittenCsv(text, table.file).flatMap((row) =>
    table.cells(row).map((cell): Fact => {
      const own = { of: table.of, name: table.name(row), ...cell };
      // A measure has a column a size.
      return table.of === 'measure'
        ? { ...own, size: cell.value, value: 'length' }
        : { ...own, size: table.size(row) };
    }),
  );
}
