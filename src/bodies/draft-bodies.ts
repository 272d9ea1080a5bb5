/** Bodies drafted one after another, each by itself: the same engine as for a chart of one size. */
import type { SizeChart } from '../chart/size-chart';
import { InputError } from '../errors';
import type { InputErrorCode } from '../errors';
import type { ChartGrade, ReadChartRequest } from '../jobs/grade-chart';
import { gradeReadChart } from '../jobs/grade-chart';
import type { BodyEntry, BodyList } from './body-list';
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
]);

/**
 * True for what is wrong with one body alone: one of its cells, or a number of the draft that its
 * measurements give.
 */
export function isOfOneBody({ code, place }: InputError): boolean {
  if (OF_ONE_BODY.has(code)) return true;
  // A parameter that is out of its range as it was set has no size; one that a body makes so has.
  if (code === 'parameter-out-of-range') return place.size !== undefined;
  // Of a file as a whole no column is told.
  const isOfCell = place.column !== undefined;
  return isOfCell && (code === 'unit-contradicted' || code === 'file-too-large');
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
      yield { entry, chart, result: gradeReadChart(chart, request) };
    } catch (error) {
      if (!(error instanceof InputError) || !isOfOneBody(error)) throw error;
      yield { entry, error };
    }
  }
}
