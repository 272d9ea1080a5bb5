/** The checks of graded patterns. A new check is a file of its own and a line in one of these lists. */
import type { SizeChart } from '../chart/size-chart';
import type { GradedPattern, GradedRange } from '../grade/graded-pattern';
import type { Pattern } from '../pattern/pattern';
import type { GivenRules } from '../rule-sheet/point-rules';
import { diagnose } from '../seams/diagnose';
import type { Redraft } from '../seams/redraft';
import { regrader } from '../seams/regrade';
import type { WalkedSeam } from '../seams/walked-seam';
import type { LengthDisplay } from '../units';
import { checkBandEase } from './band-ease';
import { checkChart } from './chart';
import { chartNotes } from './chart-notes';
import { checkClosedWaist } from './closed-waist';
import { checkCutLines } from './cut-line';
import { checkCutWidths } from './cut-width';
import { checkDartLegs } from './dart-legs';
import { checkDartNumber } from './dart-number';
import { checkDartTruing } from './dart-truing';
import { checkDarts } from './darts';
import { checkFacings } from './facing';
import type { Finding } from './finding';
import { bySeverity } from './finding';
import { checkFarFromBase } from './far-from-base';
import { checkFinishedGirths } from './finished-girths';
import { checkFolds } from './fold-straight';
import { checkGivenPattern, checkTurningSteps } from './given-pattern';
import { checkGradedEqualsDraft } from './graded-equals-draft';
import { checkLargerPieces } from './larger-pieces';
import { checkLengthLines } from './length-lines';
import { checkLining } from './lining';
import { checkOutlineSimple } from './outline-simple';
import { noteRoundedPoints } from './rounded-points';
import { noteRoundingDrift } from './rounding-drift';
import { checkRuleFormulas } from './rule-formula';
import { slipFindings } from './rule-slips';
import { checkSewnSeams } from './sewn-seams';
import { checkSideTakeUp, noteSideDirection } from './side-seam';
import { checkStride } from './stride';
import { noteTruing } from './truing';
import { checkTurnUps } from './turn-up';
import { unlessUntrued } from './untrued';
import { checkVent } from './vent';
import { checkZip } from './zip';

/** What a check may ask about. */
export interface CheckContext {
  readonly pattern: Pattern;
  readonly range: GradedPattern;
  readonly seams: readonly WalkedSeam[];
  /** The rule of each point that has one of its own. */
  readonly rules: GivenRules;
  /** The body measurements, where they are known. */
  readonly chart: SizeChart | undefined;
  /** Published tables to compare the chart with; a choice that fits it if undefined. */
  readonly against: readonly string[] | undefined;
  readonly display: LengthDisplay;
  /** The same before its rules were rounded; undefined where they are not. */
  readonly exact: ExactGrade<CheckContext> | undefined;
}

/** What a check of a range may ask about, every size of which was drafted. */
export interface DraftContext extends CheckContext {
  readonly range: GradedRange;
  /** What a changed formula would do to the rules. */
  readonly redraft: Redraft;
  readonly exact: ExactGrade<DraftContext> | undefined;
}

/** What a rounded grade is held against. */
export interface ExactGrade<Context> extends Pick<CheckContext, 'range' | 'seams' | 'rules'> {
  /** All that a check may ask about, made when it is asked for. */
  readonly context: () => Context;
}

/** Says what it finds; never throws. */
export type Check<Context = CheckContext> = (context: Context) => readonly Finding[];

type RangeCheck<Range> = (range: Range, display: LengthDisplay) => readonly Finding[];

/** A check of nothing but the graded range. */
function ofRange<Range>(
  check: RangeCheck<Range>,
): Check<Pick<CheckContext, 'display'> & { readonly range: Range }> {
  return ({ range, display }) => check(range, display);
}

/** A check of what only a drafted skirt has: declared panels, and the parameters of its style. */
function ofSkirt(check: RangeCheck<GradedRange>): Check<DraftContext> {
  return ({ range, display }) =>
    range.plans.some(({ part }) => part === 'panel') ? check(range, display) : [];
}

/** What is to be known before anything is measured. */
const NOTES: readonly Check[] = [
  ({ chart }) => (chart === undefined ? [] : chartNotes(chart)),
  ({ pattern, rules, seams, range }) => checkGivenPattern(pattern, rules, seams, range),
];

const FOLDS: Check = ({ range, rules, display }) => checkFolds(range, rules, display);

const DARTS: readonly Check[] = [ofRange(checkDartLegs), ofRange(checkDartTruing)];

/** Of the lines of any piece. */
const LINES: readonly Check[] = [
  ofRange(checkOutlineSimple),
  ofRange(checkCutLines),
  ofRange(checkCutWidths),
  ofRange(checkTurnUps),
  ofRange(noteRoundedPoints),
];

const CHART: Check = ({ chart, against, display }) =>
  chart === undefined ? [] : checkChart(chart, display, against);

/** Of a pattern and rules that somebody typed, in the order in which those of one severity are told. */
export const PATTERN_CHECKS: readonly Check[] = [
  ...NOTES,
  // A derived step goes the other way where the chart's growth does, which is told of the chart.
  ({ pattern, rules, range }) => checkTurningSteps(pattern, rules, range),
  // Of a draft the girths are measured, and a piece may lose length where the chart says so.
  ofRange(checkLargerPieces),
  ({ range, chart, display }) => checkFarFromBase(range, chart, false, display),
  (context) => sewnSeams(context, undefined),
  FOLDS,
  ...DARTS,
  ...LINES,
  CHART,
];

/** Of a drafted range, in the order in which those of one severity are told. */
export const DRAFT_CHECKS: readonly Check<DraftContext>[] = [
  ...NOTES,
  ({ range, chart, display }) => checkFarFromBase(range, chart, true, display),
  ofRange(checkGradedEqualsDraft),
  ofRange(checkRuleFormulas),
  // Body plus ease: no sheet says what a pattern is to measure.
  ofSkirt(checkFinishedGirths),
  ofSkirt(checkBandEase),
  FOLDS,
  // How wide a dart may be depends on the body below it, and a tip needs a hip line to stay above.
  // Darts that cross are told of any outline.
  ofSkirt(checkDarts),
  // What there is to take in, and how many darts to a panel, are parameters.
  ofSkirt(checkDartNumber),
  unlessUntrued([
    (context) => sewnSeams(context, context.redraft),
    ...DARTS,
    // Needs to know what is waist, side and center; corners over darts and seams are told of any edge.
    ofSkirt(checkClosedWaist),
  ]),
  ofRange(noteTruing),
  // Side, stride, vent, facing, lining and zip hang on parameters, points and pieces by name.
  ofSkirt(checkSideTakeUp),
  ofSkirt(noteSideDirection),
  ofSkirt(checkStride),
  ofSkirt(checkVent),
  ofSkirt(checkFacings),
  ofSkirt(checkLining),
  ofSkirt(checkZip),
  ofSkirt(checkLengthLines),
  ...LINES,
  // Says what is lost in waist and hip, which are measured on panels.
  ofSkirt(noteRoundingDrift),
  CHART,
];

/** The findings of these checks, the gravest first. Rounding alone warns; it does not fail. */
export function checkPattern<
  Context extends { readonly exact: Pick<ExactGrade<Context>, 'context'> | undefined },
>(context: Context, checks: readonly Check<Context>[]): readonly Finding[] {
  return bySeverity(checks.flatMap((check) => unlessRounded(check, context, context.exact)));
}

/** A failure that the exact grade does not have is of the rounding that was asked for, and a warning. */
function unlessRounded<Context>(
  check: Check<Context>,
  context: Context,
  exact: Pick<ExactGrade<Context>, 'context'> | undefined,
): readonly Finding[] {
  const found = check(context);
  if (exact === undefined || !found.some(isFailure)) return found;
  const failed = new Set(check(exact.context()).filter(isFailure).map(placeOf));
  return found.map((finding) =>
    isFailure(finding) && !failed.has(placeOf(finding))
      ? {
          ...finding,
          severity: 'warning',
          message: `${finding.message}, by rounding alone`,
          byRounding: true,
        }
      : finding,
  );
}

function isFailure({ severity }: Finding): boolean {
  return severity === 'fail';
}

function placeOf({ check, size, piece, subject }: Finding): string {
  return JSON.stringify([check, size, piece, subject]);
}

/**
 * Slips first, which are looked for in the exact grade, then seam by seam. Slips are of formulas where
 * `redraft` tells what a changed one would do, else of the rules.
 */
function sewnSeams(context: CheckContext, redraft: Redraft | undefined): readonly Finding[] {
  const { pattern, range, seams, display } = context;
  const exact = context.exact ?? context;
  const regrade = regrader(pattern, exact.rules);
  const graded = { pattern, rules: exact.rules, regrade, redraft };
  const sizes = exact.range.sizes.map(({ pieces }) => pieces);
  const diagnoses = diagnose(graded, exact.seams, sizes);
  return [
    ...slipFindings(range, pattern, diagnoses, display),
    ...checkSewnSeams(range, seams, exact.seams, graded, display, diagnoses),
  ];
}
