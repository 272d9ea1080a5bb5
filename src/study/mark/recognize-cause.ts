/** Finds the cause of a whole sheet, and the convention that it is written in. */
import { EXPLAINS_MOST, SAME_PLACE } from '../../tolerance';
import type { AnswerKey } from './answer-key';
import type { Convention } from './convention';
import { inConvention } from './convention';
import type { ExplainedSheet } from './fewest-slips';
import { recognizeConvention } from './recognize-convention';
import type { Series } from './series';
import { wrongSizes } from './series';
import type { Reading, SheetCause } from './sheet-cause';
import { asItStands } from './sheet-cause';
import { EXCHANGED_FORM, copiedColumns, exchangedColumns, sheetCauses } from './sheet-causes';
import type { StatedConvention } from './stated-convention';
import { otherConvention } from './other-convention';

/** The cause of a whole sheet, and the sheet as it is read by it. */
export interface FoundCause {
  readonly cause: SheetCause;
  /** Causes that would have given the same numbers: the sheet cannot tell. */
  readonly alike: readonly SheetCause[];
  /** In the convention of the sheet. */
  readonly reading: Reading;
  /** Wrong cells that are right by it, the base's among them; none where slips met all of them. */
  readonly explained: number;
}

/** How a sheet is to be read; without a cause as it stands. */
export interface Recognized {
  readonly convention: Convention;
  readonly cause: FoundCause | undefined;
}

/** The slips of a reading; `isPlain` where it is the sheet as it stands. */
export type Diagnose = (reading: Reading, isPlain: boolean) => ExplainedSheet;

/** How a sheet looks in one reading. */
interface Tried {
  readonly cause: SheetCause;
  readonly convention: Convention;
  readonly reading: Reading;
  readonly wrong: number;
}

/** A habit shows at more than one point: one series alone has slips enough of its own. */
const LEAST_POINTS = 2;

/** More slips than that could be found behind anything. */
const MOST_SLIPS = 2;

/** Fewer points that move are too little evidence for a habit and slips at once. */
const POINTS_FOR_BOTH = 3;

/**
 * The cause that leaves the fewest cells wrong, if it makes right at least EXPLAINS_MOST of the cells
 * that it turns, at two points or more. Where slips leave most of a sheet unexplained, the cause with
 * which the fewest explain all of it. `tolerance` in mm; `diagnose` finds the slips of a reading.
 */
export function recognizeCause(
  exact: AnswerKey,
  series: readonly Series[],
  stated: StatedConvention,
  tolerance: number,
  diagnose: Diagnose,
): Recognized {
  const read = (cause: SheetCause, convention?: Convention): Tried => {
    const { key, series: own, left } = cause.read(exact, series);
    const found = convention ?? recognizeConvention(key, own, stated, tolerance);
    const reading = { key: inConvention(key, found), series: own, left };
    return { cause, convention: found, reading, wrong: wrongIn(reading, tolerance) };
  };
  const plain = read(AS_IT_STANDS);
  const none: Recognized = { convention: plain.convention, cause: undefined };
  if (plain.wrong === 0) return none;
  // Two columns of many do not hide which way the axes run, and there are many pairs of columns.
  const exchanged = (cause: SheetCause): Tried => {
    const { series: own, left } = cause.read(exact, series);
    const reading = { key: plain.reading.key, series: own, left };
    return { ...plain, cause, reading, wrong: wrongIn(reading, tolerance) };
  };
  const tried = [
    ...otherConvention(exact, series, stated, tolerance).map(({ cause, convention }) =>
      read(cause, convention),
    ),
    ...[EXCHANGED_FORM, ...sheetCauses(exact)].map((cause) => read(cause)),
    ...[...exchangedColumns(exact), ...copiedColumns(exact, series)].map(exchanged),
  ].filter((one) => one.wrong < plain.wrong && explainsMost(plain.reading, one.reading, tolerance));
  const [first, ...others] = tried.toSorted((a, b) => a.wrong - b.wrong);
  if (first?.cause === EXCHANGED_FORM) return none;
  if (first === undefined) {
    const hidden = isUnexplained(plain, series, diagnose(plain.reading, true))
      ? withSlips(
          sheetCauses(exact).map((cause) => read(cause)),
          diagnose,
        )
      : undefined;
    return hidden ?? none;
  }
  return {
    // What is stated stays right; the other convention is what the sheet was done by.
    convention: CONVENTION_CAUSES.has(first.cause.id) ? plain.convention : first.convention,
    cause: {
      cause: first.cause,
      alike: others
        .filter((one) => one.wrong === first.wrong && one.cause.words !== first.cause.words)
        .map(({ cause }) => cause),
      reading: first.reading,
      explained: plain.wrong - first.wrong,
    },
  };
}

/**
 * What the cause of a whole sheet is to the series that are judged: none where all of these are right without
 * it. `plain` is the sheet without a cause.
 */
export function causeAmong(
  found: FoundCause | undefined,
  plain: Reading,
  isJudged: (series: Series) => boolean,
  tolerance: number,
): FoundCause | undefined {
  if (found === undefined || plain.series.every(isJudged)) return found;
  const among = (reading: Reading): Reading => ({
    ...reading,
    series: reading.series.filter(isJudged),
    left: 0,
  });
  const wrong = wrongIn(among(plain), tolerance);
  if (wrong === 0) return undefined;
  const reading = among(found.reading);
  const explained = found.explained === 0 ? 0 : wrong - wrongIn(reading, tolerance);
  return { ...found, reading, explained };
}

/** Whether slips alone leave most of the wrong cells open, and there is enough to tell more from. */
function isUnexplained(
  { wrong }: Tried,
  series: readonly Series[],
  { unexplained }: ExplainedSheet,
): boolean {
  const open = unexplained.reduce((sum, { sizes }) => sum + sizes.length, 0);
  return movedPoints(series).length >= POINTS_FOR_BOTH && open > EXPLAINS_MOST * wrong;
}

function movedPoints(series: readonly Series[]): readonly string[] {
  const moved = series.filter(({ given }) => given.some((mm) => Math.abs(mm ?? 0) > SAME_PLACE));
  return [...new Set(moved.map(({ piece, point }) => `${piece}.${point}`))];
}

/** The cause with which the fewest slips explain every cell; undefined if none does. */
function withSlips(tried: readonly Tried[], diagnose: Diagnose): Recognized | undefined {
  // A few points tell of most readings already that they are wrong.
  const isPossible = ({ key, series, left }: Reading): boolean => {
    const points = movedPoints(series).slice(0, POINTS_FOR_BOTH);
    const few = series.filter(({ piece, point }) => points.includes(`${piece}.${point}`));
    return left === 0 && diagnose({ key, series: few, left }, false).unexplained.length === 0;
  };
  const [first, ...others] = tried
    .filter(({ reading }) => isPossible(reading))
    .map((one) => ({ ...one, slips: diagnose(one.reading, false) }))
    .filter(
      ({ slips: { found, unexplained } }) => unexplained.length === 0 && found.length <= MOST_SLIPS,
    )
    .toSorted((a, b) => a.slips.found.length - b.slips.found.length || a.wrong - b.wrong);
  if (first === undefined) return undefined;
  const { cause, convention, reading, wrong, slips } = first;
  const alike = others.filter(
    (one) => one.slips.found.length === slips.found.length && one.wrong === wrong,
  );
  return {
    convention,
    cause: { cause, alike: alike.map((one) => one.cause), reading, explained: 0 },
  };
}

/** Ids of the causes of which one stated line is wrong and no number. */
export const CONVENTION_CAUSES: ReadonlySet<string> = new Set(['zero', 'direction']);

const AS_IT_STANDS: SheetCause = { id: 'none', words: '', advice: '', read: asItStands };

/** Cells that differ from the key of the reading, and those that have no place in it. */
function wrongIn({ key, series, left }: Reading, tolerance: number): number {
  return series.reduce((sum, one) => sum + wrongSizes(key, one, tolerance).length, left);
}

/** Whether most of the cells that a right sheet would have otherwise are right in the reading. */
function explainsMost(plain: Reading, other: Reading, tolerance: number): boolean {
  let [touched, explained] = [other.left, 0];
  const points = new Set<string>();
  plain.series.forEach((one, k) => {
    const own = other.series[k];
    if (own === undefined) return;
    const before = wrongSizes(plain.key, one, tolerance).length;
    const after = wrongSizes(other.key, own, tolerance).length;
    // Right cells that would be wrong in the reading speak against it as much as wrong ones do.
    const mended = before - after;
    touched += Math.max(before, after);
    explained += Math.max(0, mended);
    if (mended > 0) points.add(`${one.piece}.${one.point}`);
  });
  return points.size >= LEAST_POINTS && explained > EXPLAINS_MOST * touched;
}
