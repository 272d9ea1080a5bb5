/** What is written of bodies that were drafted one by one: a drawing each, and tables of all. */
import { present } from '../lists/present';
import type { DraftedBody, RefusedBody } from '../bodies/draft-bodies';
import { calledResult } from '../bodies/draft-bodies';
import type { NearestSize, TriedRange } from '../bodies/nearest-size';
import type { BodyColumns, BodyEntry } from '../bodies/body-list';
import type { Finding } from '../check/finding';
import { NOT_READ, notReadFindings, unreadInChart } from '../check/not-read';
import { refusedProblem } from '../bodies/refused-problem';
import { problemText } from '../errors';
import type { Measure } from '../grade/graded-pattern';
import type { ChartGrade } from '../jobs/grade-chart';
import { sizeSheet } from '../render/size-sheet';
import { svg } from '../render/svg';
import { writtenCsv } from '../table/written-csv';
import type { LengthDisplay } from '../units';
import { tableLength } from '../units';
import type { Verdict } from '../verdict/verdict';
import { verdictOf } from '../verdict/verdict';
import { drawingOf } from './drawing-files';
import type { ResultFile } from './result-file';
import { findingsTable, measureCell, pointsHeader, pointsRows } from './tables';

/** What stays of a drafted body once its drawing is made. */
export interface BodyRecord {
  readonly entry: BodyEntry;
  /** What it is called in tables: its place in the list. */
  readonly body: string;
  readonly verdict: Verdict;
  readonly measures: readonly Measure[];
  /** All but those that held. */
  readonly findings: readonly Finding[];
  /** Its rows of the table of points. */
  readonly points: string;
  /** The size of a chart that fits it best, where there is a chart to try on. */
  readonly nearest: NearestSize | undefined;
}

/** What the tables keep of a body. */
export function bodyRecord(body: DraftedBody, tried: TriedRange | undefined): BodyRecord {
  const { entry, result } = body;
  const { shown, display } = result;
  // What stands beside the list is told of the list.
  const findings = result.findings.filter(
    ({ check, subject }) => check !== NOT_READ || subject !== result.chart.file,
  );
  const labels = shown.map(({ label }) => label);
  return {
    entry,
    body: labels[0] ?? '',
    verdict: verdictOf(findings, labels, display),
    measures: shown[0]?.measures ?? [],
    findings: findings.filter(({ severity }) => severity !== 'ok'),
    points: [...pointsRows(shown, display)].join(''),
    nearest: tried?.nearest(body),
  };
}

/**
 * The result under the name of its body: on its drawing and its printed sheets, and nowhere else. The
 * name is the user's own word and may tell who it is.
 */
export function namedResult(result: ChartGrade, name: string): ChartGrade {
  if (name === '') return result;
  const isSize = result.shown.every(({ called }) => called === undefined);
  const { chart, range, shown } = isSize ? result : calledResult(result, name);
  return {
    ...result,
    chart: { ...chart, sizes: [name] },
    range: { ...range, base: name, sizes: range.sizes.map((size) => ({ ...size, label: name })) },
    shown: shown.map((size) => ({ ...size, label: name })),
  };
}

/** `body-7.svg`: the outlines of one body at true scale. */
export function bodyDrawing(entry: BodyEntry, result: ChartGrade): ResultFile {
  const drawing = drawingOf(result);
  const [{ label } = { label: '' }] = drawing.sizes;
  return { name: `${bodyStem(entry)}.svg`, text: svg(sizeSheet(drawing, label)) };
}

/** The beginning of the names of the files of one body: its place in the list, never its name. */
export function bodyStem({ number }: BodyEntry): string {
  return `body-${number}`;
}

/** How the tables of a list are written. */
export interface BodyTables {
  readonly columns: BodyColumns;
  readonly display: LengthDisplay;
  /** Leaves out names, and what was typed in cells that could not be read. */
  readonly anonymous: boolean;
}

/** The tables of all bodies, in a fixed order; the same list gives the same bytes. */
export function bodyTables(
  records: readonly BodyRecord[],
  refused: readonly RefusedBody[],
  tables: BodyTables,
): readonly ResultFile[] {
  const { display } = tables;
  const findings = [...notReadInList(tables.columns), ...listFindings(records)];
  const points = records.map((record) => record.points).join('');
  return present([
    { name: 'drafts.csv', text: draftsTable(records, tables) },
    { name: 'finished-measurements.csv', text: measuresTable(records, tables) },
    { name: 'points.csv', text: pointsHeader('body', display) + points },
    { name: 'findings.csv', text: findingsTable(findings, display, 'body') },
    records.some(({ nearest }) => nearest !== undefined) && {
      name: 'nearest.csv',
      text: nearestTable(records, tables),
    },
    { name: 'refused.csv', text: refusedTable(refused, tables) },
  ]);
}

/** What stands beside the table of a list; its words may name a person, and are not repeated. */
export function notReadInList(columns: BodyColumns): readonly Finding[] {
  return notReadFindings(unreadInChart(columns), false);
}

/** What is told of every body alike is of the list, and told once; all else is of its body. */
function listFindings(records: readonly BodyRecord[]): readonly Finding[] {
  const counts = new Map<string, number>();
  for (const { findings } of records)
    for (const key of new Set(findings.map(keyOf))) counts.set(key, (counts.get(key) ?? 0) + 1);
  const isOfList = (finding: Finding): boolean =>
    finding.size === '' && records.length > 1 && counts.get(keyOf(finding)) === records.length;
  const [first] = records;
  return [
    ...(first?.findings.filter(isOfList) ?? []),
    ...records.flatMap(({ body, findings }) =>
      findings
        .filter((finding) => !isOfList(finding))
        .map((finding) => (finding.size === '' ? { ...finding, size: body } : finding)),
    ),
  ];
}

function keyOf({ check, subject, message }: Finding): string {
  return JSON.stringify([check, subject, message]);
}

/** `body,name,verdict,fail,warning,note,ok,to_decide,drawing`; the name is there unless it is to be left out. */
function draftsTable(records: readonly BodyRecord[], { anonymous }: BodyTables): string {
  const rows = records.map(({ entry, body, verdict }) => {
    const { fail, warning, note, ok } = verdict.counts;
    return [
      body,
      ...(anonymous ? [] : [entry.name]),
      VERDICTS[verdict.kind],
      ...[fail, warning, note, ok].map(String),
      verdict.decisions.map(({ text }) => text).join(' '),
      `${bodyStem(entry)}.svg`,
    ];
  });
  const counts = ['fail', 'warning', 'note', 'ok'];
  const name = anonymous ? [] : ['name'];
  return writtenCsv([['body', ...name, 'verdict', ...counts, 'to_decide', 'drawing'], ...rows]);
}

const VERDICTS: Readonly<Record<Verdict['kind'], string>> = {
  mend: 'mend first',
  decide: 'decide first',
  cut: 'can be cut',
};

/** `body,waist_cm,hip_cm,...`: a row a body, a column for each measure that any of them has. */
function measuresTable(records: readonly BodyRecord[], { display }: BodyTables): string {
  const names = [...new Set(records.flatMap(({ measures }) => measures.map(({ name }) => name)))];
  const rows = records.map(({ body, measures }) => {
    const taken = new Map(measures.map(({ name, value }) => [name, value]));
    return [
      body,
      ...names.map((name) => {
        const value = taken.get(name);
        return value === undefined ? '' : measureCell(value, display);
      }),
    ];
  });
  return writtenCsv([['body', ...names.map((name) => `${name}_${display.unit}`)], ...rows]);
}

/**
 * `body,size,fits`, then of waist and hip how far the body is off the size, the ease that is left, how much
 * is too tight (or, negative, too loose), and what made to measure would change.
 */
function nearestTable(records: readonly BodyRecord[], { display }: BodyTables): string {
  const girths = ['waist', 'hip'] as const;
  const columns = ['off', 'ease_left', 'beyond', 'made_to_measure'].flatMap((name) =>
    girths.map((girth) => `${girth}_${name}_${display.unit}`),
  );
  const rows = records.flatMap(({ body, nearest }) => {
    if (nearest === undefined) return [];
    const { label, fits, lengthDiffers, isSame } = nearest;
    const lengths = (['off', 'easeLeft', 'beyond', 'differs'] as const).flatMap((name) =>
      girths.map((girth) => nearest[girth][name]),
    );
    return [
      [
        ...[body, label, fits ? 'yes' : 'no'],
        ...[...lengths, lengthDiffers].map((mm) => tableLength(mm, display)),
        isSame ? 'same' : 'differs',
      ],
    ];
  });
  const last = [`length_made_to_measure_${display.unit}`, 'made_to_measure'];
  return writtenCsv([['body', 'size', 'fits', ...columns, ...last], ...rows]);
}

/** `row,column,measurement,reason`: the bodies that were set aside; without a name. */
function refusedTable(refused: readonly RefusedBody[], { columns, anonymous }: BodyTables): string {
  const header = ['row', 'column', 'measurement', 'reason'];
  return writtenCsv([header, ...refusedRows(refused, columns, anonymous)]);
}

/** The rows below that header. */
export function refusedRows(
  refused: readonly RefusedBody[],
  columns: BodyColumns,
  anonymous: boolean,
): readonly (readonly string[])[] {
  return refused.map(({ entry, error: { problem, place } }) => {
    const { row, column, measurement, parameter } = place;
    const ofRow = columns.layout === 'size-rows';
    return [
      row ?? (ofRow ? entry.number : undefined),
      column ?? (ofRow ? undefined : entry.number),
      measurement ?? parameter,
      refusedReason(problem, anonymous),
    ].map((cell) => (cell === undefined ? '' : String(cell)));
  });
}

/** The problem in words without its place, which stands in cells of its own. */
function refusedReason(problem: RefusedBody['error']['problem'], anonymous: boolean): string {
  return problemText({ ...refusedProblem(problem, !anonymous), place: {} });
}
