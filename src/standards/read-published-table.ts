/** Reads the text of a published table: comment lines, one header line, one measurement a line. */
import { allStated } from '../table/said-line';
import { readSheet } from '../table/sheet';
import { oneUnit } from '../table/unit-statement';
import { toMillimeters } from '../units';
import type { CatalogEntry, TableText } from './catalog';
import type { PublishedRow, PublishedTable } from './published-table';

/** What the texts say is the same for as long as the program runs, and each chart is held against all of it. */
const known = new Map<CatalogEntry, PublishedTable>();

/**
 * The table of a catalog entry, which is read once. Sizes whose waist or hip is blank are left out. The
 * texts come with the program, so one that cannot be read is a defect of it.
 */
export function readPublishedTable(entry: CatalogEntry, text: TableText): PublishedTable {
  const table = known.get(entry) ?? tableOf(entry, text);
  known.set(entry, table);
  return table;
}

function tableOf(entry: CatalogEntry, { csv, waistRow, hipRow }: TableText): PublishedTable {
  const { records, comments } = readSheet(csv, entry.id, ([label]) => label === 'measurement');
  const notes = comments.map(({ text }) => text);
  const [header = [], ...rows] = records.map(({ cells }) => cells);
  const unit = oneUnit(allStated(comments, 'unit'));
  if (unit === undefined) throw new Error(`The bundled table ${entry.id} states no unit`);
  const cells = (name: string) => rows.find((row) => row[0] === name)?.slice(1);
  const waistCells = cells(waistRow);
  const hipCells = cells(hipRow);
  const depthCells = cells('waist_to_hip');
  if (waistCells === undefined || hipCells === undefined) {
    throw new Error(`The bundled table ${entry.id} lacks its waist or hip row`);
  }
  const isKnown = (_: unknown, size: number) => waistCells[size] !== '' && hipCells[size] !== '';
  const row = (name: string, values: readonly string[]): PublishedRow => ({
    values: values.filter(isKnown).map((cell) => toMillimeters(Number(cell), unit)),
    certainty: certaintyOf(notes, name),
  });
  return {
    id: entry.id,
    name: entry.name,
    title: entry.title,
    kind: entry.kind,
    year: entry.year,
    unit,
    sizes: header.slice(1).filter(isKnown),
    waist: row(waistRow, waistCells),
    hip: row(hipRow, hipCells),
    ...(depthCells === undefined ? {} : { waistToHip: row('waist_to_hip', depthCells) }),
    notes,
  };
}

/**
 * The certainty of one row: a line `certainty ROW: ...` (ROW may end in `*`), else the line
 * `certainty: ...` for the whole table, else what the heading says after its first semicolon.
 */
function certaintyOf(notes: readonly string[], row: string): string {
  const statements = notes.flatMap((note) => {
    const [, subject = '', text] = /^certainty(?: (\S+))?: (.*)$/.exec(note) ?? [];
    return text === undefined ? [] : [{ subject, text }];
  });
  const covers = (subject: string) =>
    subject.endsWith('*') ? row.startsWith(subject.slice(0, -1)) : row === subject;
  const statement =
    statements.find(({ subject }) => subject !== '' && covers(subject)) ??
    statements.find(({ subject }) => subject === '');
  return statement?.text ?? notes[0]?.split(';').slice(1).join(';').trim() ?? '';
}
