/** The decisions behind a sheet: what had to be thought of, and not how many cells that fills. */
import type { Axis } from '../../rule-sheet/rule-sheet';
import { EXPLAINS_MOST, SAME_PLACE } from '../../tolerance';
import type { AnswerKey } from './answer-key';
import { reach } from './explains-most';
import type { ExplainedSheet, FoundSlip } from './fewest-slips';
import type { Series } from './series';
import { rightValues } from './series';
import type { Stage } from './slip';

/** What is decided at one point along one axis that moves. */
export type Decision = 'share' | 'sign' | 'break';

/** How many decisions a sheet asks for, takes and gets right. */
export interface Decisions {
  /** Of the points that are asked for, and one for each axis that is wrong though nothing is asked of it. */
  readonly asked: number;
  /** Of the cells that are not blank; the place of a break only where all sizes are given. */
  readonly given: number;
  /** A slip that is carried through the sheet costs one, the cause of a whole sheet one an axis. */
  readonly right: number;
}

/** Of a hundred, in whole numbers; undefined where nothing is asked that could be decided. */
export function scoreOf({ asked, right }: Decisions): number | undefined {
  return asked === 0 ? undefined : Math.floor((100 * right) / asked);
}

/** A sheet as it is read: without the cause of the whole sheet, if it has one. */
export interface Judged {
  readonly key: AnswerKey;
  readonly series: readonly Series[];
  readonly diagnosis: ExplainedSheet;
  /** Points that are asked for, each once. */
  readonly asked: readonly { readonly piece: string; readonly point: string }[];
  /** mm. */
  readonly tolerance: number;
  /**
   * Decisions that the cause of the whole sheet costs, which may have cost it a column as well; 0 where
   * there is none.
   */
  readonly causes: number;
}

/** The decision that a slip of each stage is about; one that leaves a point still decides nothing. */
const ABOUT: Readonly<Record<Stage, Decision | 'all'>> = {
  girth: 'share',
  share: 'share',
  break: 'break',
  sign: 'sign',
  still: 'all',
  rounding: 'share',
  unit: 'share',
  place: 'share',
  form: 'share',
};

/** Counts the decisions of a sheet. */
export function countDecisions(judged: Judged): Decisions {
  const { key, series, diagnosis, tolerance, causes } = judged;
  const carried = new Set(
    diagnosis.found.filter((found) => {
      const { explained, touched } = reach(key, series, found, tolerance);
      return found.slip.stage !== 'still' && explained > EXPLAINS_MOST * touched;
    }),
  );
  let [asked, given, right] = [0, 0, 0];
  for (const place of placesOf(judged)) {
    const own = series.filter(
      ({ piece, point, axis }) =>
        piece === place.piece && point === place.point && axis === place.axis,
    );
    const decisions = decisionsAt(key, place, tolerance);
    const filled = own.some((one) => one.given.some((mm, i) => mm !== undefined && i !== key.base));
    const lost = new Set(own.flatMap((one) => lostIn(judged, one, decisions, carried)));
    if (decisions.length === 0 || !place.isAsked) {
      // Nothing is asked of an axis that stays, nor of a point that is not asked for, until it is wrong.
      const wrong = filled && lost.size > 0 ? 1 : 0;
      asked += wrong;
      given += wrong;
      continue;
    }
    // The place of a break is told by all sizes together.
    const isOpen =
      causes === 0 &&
      decisions.includes('break') &&
      !lost.has('break') &&
      own.some((one) => isPartly(one, key));
    const told = decisions.length - Number(isOpen);
    asked += decisions.length;
    given += filled ? told : 0;
    right += filled ? told - lost.size : 0;
  }
  return { asked, given, right: Math.max(0, right - carried.size - causes) };
}

interface PlaceOf {
  readonly piece: string;
  readonly point: string;
  readonly axis: Axis;
  readonly isAsked: boolean;
}

function placesOf({ asked, series }: Judged): readonly PlaceOf[] {
  const given = series.filter((one) => one.given.some((mm) => mm !== undefined));
  const names = [...asked, ...given].map(({ piece, point }) => `${piece}.${point}`);
  return [...new Set(names)].flatMap((name, i) => {
    const [piece = '', point = ''] = name.split('.');
    // Those that are asked for stand first.
    return (['x', 'y'] as const).map((axis) => ({ piece, point, axis, isAsked: i < asked.length }));
  });
}

/** None for an axis that stays; the break only where the steps change by more than the tolerance. */
function decisionsAt(
  key: AnswerKey,
  { piece, point, axis }: PlaceOf,
  tolerance: number,
): readonly Decision[] {
  const moves = rightValues(key, { piece, point, axis, form: 'move' });
  if (moves.every((mm) => Math.abs(mm) <= tolerance)) return [];
  const steps = moves.slice(1).map((mm, i) => mm - (moves[i] ?? NaN));
  const breaks = Math.max(...steps) - Math.min(...steps) > tolerance;
  return breaks ? ['share', 'sign', 'break'] : ['share', 'sign'];
}

/** The decisions that are wrong in one series, but those that a carried slip has cost already. */
function lostIn(
  { key, diagnosis, tolerance }: Judged,
  series: Series,
  decisions: readonly Decision[],
  carried: ReadonlySet<FoundSlip>,
): readonly Decision[] {
  const right = rightValues(key, series);
  const cells = series.given.flatMap((mm, i) =>
    mm === undefined ? [] : [{ given: mm, right: right[i] ?? NaN, atBase: i === key.base }],
  );
  const off = tolerance + SAME_PLACE;
  const asked = cells.filter(({ atBase }) => !atBase);
  if (cells.every((cell) => Math.abs(cell.given - cell.right) <= off)) return [];
  if (decisions.length === 0) return ofSlips(diagnosis, series, carried) ?? ['share'];
  if (asked.every(({ given }) => Math.abs(given) <= SAME_PLACE)) return decisions;
  const bySlips = ofSlips(diagnosis, series, carried);
  if (bySlips === undefined) return byNumbers(cells, decisions, tolerance);
  return bySlips.map((one) => (decisions.includes(one) ? one : (decisions[0] ?? 'share')));
}

/** Whether a series is given in some sizes only. */
function isPartly({ given }: Series, key: AnswerKey): boolean {
  const sizes = given.filter((mm, i) => mm !== undefined && i !== key.base).length;
  return sizes < key.sizes.length - 1;
}

/** What the slips behind a series are about; undefined where one of its runs has no slip. */
function ofSlips(
  { found, unexplained }: ExplainedSheet,
  series: Series,
  carried: ReadonlySet<FoundSlip>,
): readonly Decision[] | undefined {
  const own = found.filter(({ runs }) => runs.some((run) => run.series === series));
  if (own.length === 0 || unexplained.some((run) => run.series === series)) return undefined;
  return own
    .filter((one) => !carried.has(one))
    .flatMap(({ slip }): readonly Decision[] => {
      const about = ABOUT[slip.stage];
      return about === 'all' ? ['share', 'sign', 'break'] : [about];
    });
}

interface Cell {
  readonly given: number;
  readonly right: number;
}

/** What the numbers alone say: do they go the right way, as far, and in the right proportions. */
function byNumbers(
  cells: readonly Cell[],
  decisions: readonly Decision[],
  tolerance: number,
): readonly Decision[] {
  const off = tolerance + SAME_PLACE;
  const telling = cells.filter(({ right }) => Math.abs(right) > tolerance);
  const lost: Decision[] = [];
  if (telling.some(({ given, right }) => given * right < 0)) lost.push('sign');
  const share = medianShare(telling);
  const most = Math.max(0, ...telling.map(({ right }) => Math.abs(right)));
  if (Math.abs(share - 1) * most > off) lost.push('share');
  const even = cells.every(
    ({ given, right }) =>
      Math.abs(Math.abs(given) - share * Math.abs(right)) <= off * Math.max(1, share),
  );
  if (!even) lost.push(decisions.includes('break') ? 'break' : 'share');
  return lost.length > 0 ? lost : ['share'];
}

/** The middle one of the shares that the cells have of the right ones, signs apart. */
function medianShare(cells: readonly Cell[]): number {
  const shares = cells.map(({ given, right }) => Math.abs(given / right)).toSorted((a, b) => a - b);
  return shares[Math.floor((shares.length - 1) / 2)] ?? 1;
}
