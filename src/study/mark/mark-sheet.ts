/** Marks a handed-in rule sheet against the key of its chart. */
import { lengthWithUnit } from '../../table/length-with-unit';
import { InputError } from '../../errors';
import type { UnreadText } from '../../table/unread';
import { unreadIn } from '../../table/unread';
import { baseNamed } from '../../rule-sheet/points-named';
import { readRuleSheet } from '../../rule-sheet/read-rule-sheet';
import type { Axis, Form, RuleSheet } from '../../rule-sheet/rule-sheet';
import { MOSTLY_BLANK, RULE_RIGHT, SAME_PLACE } from '../../tolerance';
import type { LengthUnit } from '../../units';
import { toMillimeters } from '../../units';
import { addedUp } from '../../rule-sheet/moves-and-steps';
import type { AnswerKey } from './answer-key';
import type { Asked, Question } from './asked';
import { askedOf } from './asked';
import type { Convention } from './convention';
import { directionOf, inConvention } from './convention';
import { explainSheet } from './explain-sheet';
import type { ExplainedSheet } from './fewest-slips';
import type { MarkedCell } from './marked-cells';
import { markedCells } from './marked-cells';
import type { Decisions } from './decisions';
import { countDecisions } from './decisions';
import type { FoundCause } from './recognize-cause';
import { CONVENTION_CAUSES, causeAmong, recognizeCause } from './recognize-cause';
import type { Reading } from './sheet-cause';
import type { DraftedCase, GivenCase, Reference } from './reference';
import { referenceOf } from './reference';
import type { Series, SeriesName } from './series';
import { rightValues, seriesOf } from './series';
import { statedConvention } from './stated-convention';
import type { ErrorAt, WornSize } from './worn-sheet';
import { wornSheet } from './worn-sheet';

/** A sheet to be marked, and what it was to be made from. */
export type MarkRequest = (DraftedCase | GivenCase) & HandIn;

/** A sheet that is handed in, and how it is judged. */
export interface HandIn extends Question {
  /** Text of the sheet, CSV. */
  readonly sheet: string;
  /** Its name for messages. */
  readonly sheetFile?: string;
  /** How far a right cell may be off, such as `1/32in`; a bare number is in the sheet's unit. */
  readonly tolerance?: string;
  /** Zero of the pieces; otherwise stated by the sheet (`# zero: side_hip`) or recognized. */
  readonly zero?: string;
  /** True where blanks are no mistakes: only what is answered counts. */
  readonly answered?: boolean;
}

/** A marked sheet: what is right, what went wrong, and what would come of it. */
export interface Marking {
  readonly sheet: RuleSheet;
  /** What stands beside the tables of style, chart and sheet and was not understood. */
  readonly unread: readonly UnreadText[];
  readonly reference: Reference;
  /** The key in the sheet's own convention. */
  readonly key: AnswerKey;
  readonly convention: Convention;
  /** mm. */
  readonly tolerance: number;
  readonly asked: Asked;
  /** The rows of the sheet that are judged. */
  readonly series: readonly Series[];
  /** What the sheet gives of points beside those that were named; not judged. */
  readonly notAsked: readonly SeriesName[];
  /** Every cell that counts: asked for or given, the base's only where they are wrong. */
  readonly cells: readonly MarkedCell[];
  /** Cells that are asked for and blank. */
  readonly blanks: number;
  /** True where blanks are no mistakes, and no cells. */
  readonly answered: boolean;
  /** What the whole sheet was done by, if it has a cause of its own. */
  readonly cause: FoundCause | undefined;
  /** The slips of the sheet, once the cause of the whole sheet is put right. */
  readonly diagnosis: ExplainedSheet;
  readonly decisions: Decisions;
  /** What the sheet would make of the garment. */
  readonly worn: readonly WornSize[];
}

/** What a sheet without a name is called in messages. */
const SHEET = 'sheet';

/**
 * Marks a sheet. Throws InputError for a chart, a pattern, a sheet or an option that cannot be used; wrong
 * and missing cells are the result.
 */
export function markSheet(request: MarkRequest): Marking {
  const base = request.base ?? baseNamed(request.sheet, request.sheetFile ?? SHEET);
  return markAgainst(referenceOf(base === undefined ? request : { ...request, base }), request);
}

/** Marks a sheet against what is right for it, in its base. Throws InputError for a sheet or an option. */
export function markAgainst(reference: Reference, handIn: HandIn): Marking {
  const { zero, answered = false, tolerance: allowed } = handIn;
  const { key: exact, plans, grade } = reference;
  const sheet = readRuleSheet(handIn.sheet, handIn.sheetFile ?? SHEET, {
    ...{ plans, sizes: exact.sizes, base: grade.range.base },
  });
  const tolerance = allowed === undefined ? RULE_RIGHT : toleranceOf(allowed, sheet.unit);
  const asked = askedOf(reference, sheet, handIn);
  const given = seriesOf(sheet, exact, reference.chart);
  const stated = statedConvention(exact, sheet, zero);
  const slips = (reading: Reading, isPlain: boolean): ExplainedSheet =>
    explainSheet(reading, sheet.unit, tolerance, isPlain);
  // How the sheet is written is told by all of it, also by what is not asked for.
  const { convention, cause: ofAll } = recognizeCause(exact, given, stated, tolerance, slips);
  const key = inConvention(exact, convention);
  const names = new Set(asked.points.map(({ piece, point }) => `${piece}.${point}`));
  const isJudged = ({ piece, point }: SeriesName): boolean =>
    !asked.isPart || names.has(`${piece}.${point}`);
  const series = given.filter(isJudged);
  const cause = causeAmong(ofAll, { key, series: given, left: 0 }, isJudged, tolerance);
  const reading = cause?.reading ?? { key, series, left: 0 };
  const diagnosis = slips(reading, cause === undefined);
  const all = markedCells(key, series, asked.points, tolerance);
  const filled = all.filter(({ verdict }) => verdict !== 'missing');
  const decisions = countDecisions({
    ...reading,
    diagnosis,
    asked: asked.points,
    tolerance,
    causes: cause === undefined ? 0 : CONVENTION_CAUSES.has(cause.cause.id) ? 1 : axesOff(all),
  });
  return {
    sheet,
    unread: [
      ...reference.unread,
      ...unreadIn(sheet, ['base', 'sizes', 'y', 'blank', 'zero', 'pieces']),
    ],
    reference,
    key,
    convention,
    tolerance,
    asked,
    series,
    notAsked: given.filter((one) => !isJudged(one)),
    cells: answered ? filled : all,
    blanks: all.length - filled.length,
    answered,
    cause,
    diagnosis,
    decisions: answered ? { ...decisions, asked: decisions.given } : decisions,
    worn: wornSheet(reference, errors(key, series, convention)),
  };
}

/** Whether something counts, and all of it is right. */
export function isRight({ cells }: Marking): boolean {
  return cells.length > 0 && cells.every(({ verdict }) => verdict === 'right');
}

/** Whether most of what is asked for is blank, and blanks are mistakes. */
export function isMostlyBlank({ answered, blanks, cells }: Marking): boolean {
  return !answered && blanks > MOSTLY_BLANK * cells.length;
}

/** Whether nothing that is asked for is given. */
export function isBlankSheet({ cells }: Marking): boolean {
  return cells.every(({ verdict }) => verdict === 'missing');
}

/**
 * Points and axes that a cause of the whole sheet spoils: each has the numbers of another place, though
 * its share and sign were thought of. Another zero or direction than stated is one wrong line.
 */
function axesOff(cells: readonly MarkedCell[]): number {
  const idOf = ({ piece, point, axis }: MarkedCell): string => errorId(piece, point, axis);
  const moving = new Set(cells.filter(({ right }) => Math.abs(right) > SAME_PLACE).map(idOf));
  const wrong = cells.filter((cell) => cell.verdict === 'wrong' && moving.has(idOf(cell)));
  return Math.max(1, new Set(wrong.map(idOf)).size);
}

/** Errors of a sheet in the axes of the drawing; steps are added up, blanks are right. */
function errors(key: AnswerKey, all: readonly Series[], convention: Convention): ErrorAt {
  const found = new Map<string, readonly number[]>();
  const forms: readonly Form[] = ['step', 'move'];
  for (const form of forms)
    for (const series of all.filter((one) => one.form === form)) {
      const right = rightValues(key, series);
      const off = series.given.map((mm, i) => (mm === undefined ? 0 : mm - (right[i] ?? NaN)));
      const moves = form === 'step' ? addedUp(off, key.base) : off;
      const direction = directionOf(convention, series.piece)[series.axis];
      found.set(
        errorId(series.piece, series.point, series.axis),
        moves.map((mm) => mm * direction),
      );
    }
  return (piece, point, axis, size) => found.get(errorId(piece, point, axis))?.[size] ?? 0;
}

function errorId(piece: string, point: string, axis: Axis): string {
  return `${piece}.${point} ${axis}`;
}

function toleranceOf(text: string, unit: LengthUnit): number {
  const mm = lengthWithUnit(text, unit, 'tolerance');
  // Half an inch hides every slip there is.
  if (mm !== undefined && mm >= 0 && mm <= toMillimeters(1 / 2, 'in')) return mm;
  throw new InputError('bad-option', {
    what: 'the tolerance is not usable',
    allowed: 'a length from 0 to 1/2 in, such as 1/32in or 0.5mm',
    got: text,
    place: { field: 'tolerance' },
  });
}
