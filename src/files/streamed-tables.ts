/** The tables of bodies in great numbers: a part of the list in, the same part of each table out, and drawings. */
import type { BodyDrafter, MeasuredBody } from '../bodies/body-drafter';
import { bodyDrafter } from '../bodies/body-drafter';
import type { BodyRequest, RefusedBody } from '../bodies/draft-bodies';
import { isOfOneBody } from '../bodies/draft-bodies';
import type { BodyEntry } from '../bodies/body-list';
import type { StreamedList } from '../bodies/streamed-list';
import { bodyOfLine } from '../bodies/streamed-list';
import type { SizeChart } from '../chart/size-chart';
import { findRow } from '../chart/size-chart';
import { InputError } from '../errors';
import type { LengthDisplay } from '../units';
import { writtenCsv } from '../table/written-csv';
import { refusedRows } from './body-files';
import type { ResultFile } from './result-file';
import type { DrawingKind } from './streamed-drawings';
import { streamedDrawings } from './streamed-drawings';
import { measureCell, pointsHeader, pointsRows } from './tables';

/** How the tables are written. */
export interface StreamedTables {
  readonly display: LengthDisplay;
  /** Leaves out what was typed in cells that could not be read. */
  readonly anonymous: boolean;
  /** Whether the points are written besides the measurements. */
  readonly points: boolean;
  /** What each body is drawn as. */
  readonly drawings: readonly DrawingKind[];
}

/** The files of a streamed list, in the order in which their parts come. */
export const STREAMED_FILES = ['finished-measurements.csv', 'refused.csv', 'points.csv'] as const;

/** The part of each table that a part of the list gives. */
export interface StreamedPart {
  /** In the order of `STREAMED_FILES`; the points are empty where they are not asked for. */
  readonly texts: readonly string[];
  readonly drafted: number;
  readonly refused: number;
  /** Bodies with less hip than waist. */
  readonly turned: number;
}

/** Turns parts of a list into parts of its tables, one after another, whichever they are. */
export interface StreamedWork {
  /** The headers. */
  readonly headers: readonly string[];
  /** `text` is whole lines, the first of which is in row `row`; `put` takes each drawing once it is made. */
  readonly part: (text: string, row: number, put: (drawing: ResultFile) => void) => StreamedPart;
}

/**
 * Every measure of a streamed list. How many darts a panel has is decided for each body, so that theirs are
 * no columns; `finished-measurements.csv` of a short list has them.
 */
const MEASURES = [
  ...['waist', 'skirt_waist_edge', 'hip', 'hem', 'center_front_length', 'center_back_length'],
  ...['side_seam_front', 'side_seam_back', 'lining_hip', 'zip_opening', 'zip_length', 'stride'],
] as const;

/** Throws InputError for a style or a parameter that cannot be used. */
export function streamedWork(
  list: StreamedList,
  request: BodyRequest,
  tables: StreamedTables,
): StreamedWork {
  const { display } = tables;
  const draft = bodyDrafter(list.columns, request);
  const drawn = (entry: BodyEntry, chart: SizeChart): readonly ResultFile[] =>
    tables.drawings.length === 0
      ? []
      : streamedDrawings(list.columns, entry, chart, request, tables.drawings);
  const columns = MEASURES.map((name) => `${name}_${display.unit}`);
  return {
    headers: [
      writtenCsv([['body', ...columns]]),
      writtenCsv([['row', 'column', 'measurement', 'reason']]),
      pointsHeader('body', display),
    ],
    part: (text, row, put) => partOf(list, { draft, drawn, put }, tables, text.split('\n'), row),
  };
}

/** What is made of each body. */
interface Making {
  readonly draft: BodyDrafter;
  readonly drawn: (entry: BodyEntry, chart: SizeChart) => readonly ResultFile[];
  readonly put: (drawing: ResultFile) => void;
}

function partOf(
  list: StreamedList,
  { draft, drawn, put }: Making,
  { display, anonymous, points }: StreamedTables,
  lines: readonly string[],
  firstRow: number,
): StreamedPart {
  const [measured, placed]: [string[], string[]] = [[], []];
  const refused: RefusedBody[] = [];
  let turned = 0;
  for (const [i, line] of lines.entries()) {
    const found = bodyOfLine(list, line, firstRow + i);
    if (found === undefined) continue;
    try {
      const chart = found.chart();
      const body = draft(chart);
      // A body that cannot be drawn has no row in a table.
      const drawings = drawn(found.entry, chart);
      for (const drawing of drawings) put(drawing);
      measured.push(measuresRow(body, display));
      const [waist, hip] = [girthOf(chart, 'waist_girth'), girthOf(chart, 'hip_girth')];
      if (hip < waist) turned++;
      if (points) placed.push(...pointsRows([body], display));
    } catch (error) {
      if (!(error instanceof InputError) || !isOfOneBody(error)) throw error;
      refused.push({ entry: found.entry, error });
    }
  }
  const refusals = writtenCsv(refusedRows(refused, list.columns, anonymous));
  return {
    texts: [measured.join(''), refusals, placed.join('')],
    drafted: measured.length,
    refused: refused.length,
    turned,
  };
}

function girthOf(chart: SizeChart, name: string): number {
  return findRow(chart, name)?.values[0] ?? NaN;
}

/** No cell of it needs quotes. */
function measuresRow({ label, measures }: MeasuredBody, display: LengthDisplay): string {
  const taken = new Map(measures.map(({ name, value }) => [name, value]));
  const cells = MEASURES.map((name) => {
    const value = taken.get(name);
    return value === undefined ? '' : measureCell(value, display);
  });
  return `${label},${cells.join(',')}\n`;
}
