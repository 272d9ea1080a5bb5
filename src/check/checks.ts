/** Every check of a graded pattern. A new check is a file of its own and a line in this list. */
import type { SizeChart } from '../chart/size-chart';
import type { GradedPattern, GradedRange } from '../grade/graded-pattern';
import type { Pattern } from '../pattern/pattern';
import type { GivenRules } from '../rule-sheet/point-rules';
import { diagnose } from '../seams/diagnose';
import type { Redraft } from '../seams/redraft';
import { regrader } from '../seams/regrade';
import type { WalkedSeam } from '../seams/walked-seam';
import type { LengthDisplay } from '../units';
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
import { checkFinishedGirths } from './finished-girths';
import { checkFolds } from './fold-straight';
import { checkGivenPattern, checkTurningSteps } from './given-pattern';
import { checkGradedEqualsDraft } from './graded-equals-draft';
import { checkLargerPieces } from './larger-pieces';
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
import { checkVent } from './vent';
import { checkZip } from './zip';

/** What a check may ask about. */
export interface CheckContext {
  readonly pattern: Pattern;
  readonly range: GradedPattern;
  readonly seams: readonly WalkedSeam[];
  /** The rule of each point that has one of its own. */
  readonly rules: GivenRules;
  /** Whether somebody typed the rules, so that they may have slips of the pen. */
  readonly areRulesTyped: boolean;
  /** The body measurements, where they are known. */
  readonly chart: SizeChart | undefined;
  /** Published tables to compare the chart with; a choice that fits it if undefined. */
  readonly against: readonly string[] | undefined;
  /** The range with its drafts, where every size was drafted. */
  readonly drafted: GradedRange | undefined;
  /** What a changed formula would do to the rules, where they are derived from formulas. */
  readonly redraft?: Redraft | undefined;
  readonly display: LengthDisplay;
  /** The same before its rules were rounded; undefined where they are not. */
  readonly exact: ExactGrade | undefined;
}

/** What a rounded grade is held against. */
export interface ExactGrade extends Pick<CheckContext, 'range' | 'seams' | 'rules'> {
  /** All that a check may ask about, made when it is asked for. */
  readonly context: () => CheckContext;
}

/** Says what it finds; never throws. */
export type Check = (context: CheckContext) => readonly Finding[];

type RangeCheck = (range: GradedRange, display: LengthDisplay) => readonly Finding[];

/** A check of a grade against its drafts, of which a pattern that was there already has none. */
function ofDraft(check: RangeCheck): Check {
  return ({ drafted, display }) => (drafted === undefined ? [] : check(drafted, display));
}

/** A check of what only a drafted skirt has: declared panels, and the parameters of its style. */
function ofSkirt(check: RangeCheck): Check {
  return (context) =>
    context.range.plans.some(({ part }) => part === 'panel') ? ofDraft(check)(context) : [];
}

/** A check of numbers that somebody typed; those derived from drafts have no slips of the pen. */
function ofTypedRules(check: Check): Check {
  return (context) => (context.areRulesTyped ? check(context) : []);
}

/** A check of a graded pattern, wherever it and its rules came from. */
function ofPattern(
  check: (range: GradedPattern, display: LengthDisplay) => readonly Finding[],
): Check {
  return ({ range, display }) => check(range, display);
}

/**
 * In the order in which findings of one severity are told. What stands as of a draft, a skirt or typed
 * rules asks for something that nothing else has; all others are of any pattern.
 */
export const CHECKS: readonly Check[] = [
  ({ chart }) => (chart === undefined ? [] : chartNotes(chart)),
  ({ pattern, rules, seams }) => checkGivenPattern(pattern, rules, seams),
  // A derived step goes the other way where the chart's growth does, which is told of the chart.
  ofTypedRules(({ pattern, rules, range }) => checkTurningSteps(pattern, rules, range)),
  // Of a draft the girths are measured, and a piece may lose length where the chart says so.
  ofTypedRules(({ range, display }) => checkLargerPieces(range, display)),
  ofDraft(checkGradedEqualsDraft),
  ofDraft(checkRuleFormulas),
  // Body plus ease: no sheet says what a pattern is to measure.
  ofSkirt(checkFinishedGirths),
  sewnSeams,
  ({ range, rules, display }) => checkFolds(range, rules, display),
  // How wide a dart may be depends on the body below it, and a tip needs a hip line to stay above.
  // Darts that cross are told of any outline.
  ofSkirt(checkDarts),
  // What there is to take in, and how many darts to a panel, are parameters.
  ofSkirt(checkDartNumber),
  ofPattern(checkDartLegs),
  ofPattern(checkDartTruing),
  // Needs to know what is waist, side and center; corners over darts and seams are told of any edge.
  ofSkirt(checkClosedWaist),
  ofDraft(noteTruing),
  // Side, stride, vent, facing, lining and zip hang on parameters, points and pieces by name.
  ofSkirt(checkSideTakeUp),
  ofSkirt(noteSideDirection),
  ofSkirt(checkStride),
  ofSkirt(checkVent),
  ofSkirt(checkFacings),
  ofSkirt(checkLining),
  ofSkirt(checkZip),
  ofPattern(checkOutlineSimple),
  ofPattern(checkCutLines),
  ofPattern(checkCutWidths),
  ofPattern(checkTurnUps),
  ofPattern(noteRoundedPoints),
  // Says what is lost in waist and hip, which are measured on panels.
  ofSkirt(noteRoundingDrift),
  ({ chart, against, display }) => (chart === undefined ? [] : checkChart(chart, display, against)),
];

/** The findings of all checks, the gravest first. Rounding alone warns; it does not fail. */
export function checkPattern(
  context: CheckContext,
  checks: readonly Check[] = CHECKS,
): readonly Finding[] {
  return bySeverity(checks.flatMap((check) => unlessRounded(check, context)));
}

/** A failure that the exact grade does not have is of the rounding that was asked for, and a warning. */
function unlessRounded(check: Check, context: CheckContext): readonly Finding[] {
  const found = check(context);
  if (context.exact === undefined || !found.some(isFailure)) return found;
  const failed = new Set(check(context.exact.context()).filter(isFailure).map(placeOf));
  return found.map((finding) =>
    isFailure(finding) && !failed.has(placeOf(finding))
      ? { ...finding, severity: 'warning', message: `${finding.message}, by rounding alone` }
      : finding,
  );
}

function isFailure({ severity }: Finding): boolean {
  return severity === 'fail';
}

function placeOf({ check, size, piece, subject }: Finding): string {
  return JSON.stringify([check, size, piece, subject]);
}

/** Slips first, which are looked for in the exact grade, then seam by seam. */
function sewnSeams(context: CheckContext): readonly Finding[] {
  const { pattern, range, seams, areRulesTyped, display } = context;
  const exact = context.exact ?? context;
  const regrade = regrader(pattern, exact.rules);
  const graded = { pattern, rules: exact.rules, regrade, redraft: context.redraft };
  const sizes = exact.range.sizes.map(({ pieces }) => pieces);
  const diagnoses = diagnose(graded, exact.seams, sizes, areRulesTyped);
  return [
    ...slipFindings(range, pattern, diagnoses, display),
    ...checkSewnSeams(range, seams, exact.seams, graded, display, diagnoses),
  ];
}
