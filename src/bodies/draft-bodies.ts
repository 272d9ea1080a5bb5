/** Bodies drafted one after another, each by itself: the same engine as for a chart of one size. */
import type { SizeChart } from '../chart/size-chart';
import type { Check } from '../check/checks';
import { InputError } from '../errors';
import type { InputErrorCode } from '../errors';
import type { ChartGrade, ReadChartRequest } from '../jobs/grade-chart';
import { gradeReadChart } from '../jobs/grade-chart';
import type { BodyColumns, BodyEntry, BodyList } from './body-list';
import { bodyChart } from './body-list';

/** What may be asked for every body alike. */
export type BodyRequest = Omit<ReadChartRequest, 'base' | 'sizes' | 'blend' | 'against'>;

/** A body with its own draft, checked and measured like a size. */
export interface DraftedBody {
  readonly entry: BodyEntry;
  readonly chart: SizeChart;
  readonly result: ChartGrade;
}

/** A body that cannot be drafted, and why. */
export interface RefusedBody {
  readonly entry: BodyEntry;
  readonly error: InputError;
}

/** What a single body may be set aside for; all else is wrong with the list or with what is asked. */
const OF_ONE_BODY: ReadonlySet<InputErrorCode> = new Set<InputErrorCode>([
  'cell-missing',
  'cell-not-a-number',
  'cell-not-positive',
  'cell-is-date',
  'measurement-doubtful',
  'formula-not-finite',
  'size-missing',
  'character-unseen',
  'file-too-large',
]);

/**
 * True for what is wrong with one body alone: one of its cells, or a number of the draft that its
 * measurements give.
 */
export function isOfOneBody({ code, place }: InputError): boolean {
  if (OF_ONE_BODY.has(code)) return true;
  // A parameter that is out of its range as it was set has no size; one that a body makes so has.
  if (code === 'parameter-out-of-range') return place.size !== undefined;
  return code === 'unit-contradicted' && place.column !== undefined;
}

/** A body drafted, cut, measured and checked by itself, and called by its place. Throws InputError as `gradeChart` does. */
export function gradeBody(
  columns: BodyColumns,
  chart: SizeChart,
  request: BodyRequest,
  checks?: readonly Check[],
): ChartGrade {
  const place = chart.sizes[0] ?? '';
  const result = gradeReadChart(chart, request, checks);
  return columns.ofSizes ? result : calledResult(result, `Body in ${place}`);
}

/** The result with another word for its one body than `Size` and its label. */
export function calledResult(result: ChartGrade, called: string): ChartGrade {
  const { range, shown } = result;
  return {
    ...result,
    range: { ...range, sizes: range.sizes.map((size) => ({ ...size, called })) },
    shown: shown.map((size) => ({ ...size, called })),
  };
}

/**
 * Drafts the bodies one after another, when each is asked for. Throws InputError for what is wrong
 * with the list or the request; what is wrong with one body is told in its place.
 */
export function* draftBodies(
  list: BodyList,
  entries: readonly BodyEntry[],
  request: BodyRequest,
): Generator<DraftedBody | RefusedBody> {
  for (const entry of entries) {
    let chart: SizeChart | undefined;
    try {
      chart = bodyChart(list, entry);
      yield { entry, chart, result: gradeBody(list, chart, request) };
    } catch (error) {
      if (!(error instanceof InputError) || !isOfOneBody(error)) throw error;
      yield { entry, error };
    }
  }
}
