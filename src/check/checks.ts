/** The checks of graded patterns. A new check is a file of its own and a line in this list. */
import type { SizeChart } from '../chart/size-chart';
import type { DraftedPattern, GradedPattern } from '../grade/graded-pattern';
import { isDrafted } from '../grade/graded-pattern';
import type { Pattern } from '../pattern/pattern';
import type { GivenRules } from '../rule-sheet/point-rules';
import { diagnose } from '../seams/diagnose';
import { regrader } from '../seams/regrade';
import type { SlipSearch } from '../seams/slip-search';
import type { WalkedSeam } from '../seams/walked-seam';
import type { LengthDisplay } from '../units';
import { checkAlikeSizes } from './alike-sizes';
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
import { checkIdenticalSizes } from './identical-sizes';
import { checkLargerPieces } from './larger-pieces';
import { checkLengthLines } from './length-lines';
import { checkLining } from './lining';
import { checkOutlineSimple } from './outline-simple';
import { checkPatternSize } from './pattern-size';
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
  /** Where slips in the rules are looked for. */
  readonly search: SlipSearch;
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

type RangeCheck<Range> = (range: Range, display: LengthDisplay) => readonly Finding[];

/** A check of nothing but the graded range. */
function ofRange(check: RangeCheck<GradedPattern>): Check {
  return ({ range, display }) => check(range, display);
}

/** A check of sizes beside their drafts. */
function ofDraft(check: RangeCheck<DraftedPattern>): Check {
  return ({ range, display }) => (isDrafted(range) ? check(range, display) : []);
}

/** A check of what only a drafted skirt has: declared panels, and the parameters of its style. */
function ofSkirt(check: RangeCheck<DraftedPattern>): Check {
  return ofDraft((range, display) =>
    range.plans.some(({ part }) => part === 'panel') ? check(range, display) : [],
  );
}

/** A check of rules by themselves; derived ones are held against what they were derived from. */
function ofTypedRules(check: Check): Check {
  return (context) => (context.rules.typed ? check(context) : []);
}

/** All checks, in the order in which findings of one severity are told. */
export const CHECKS: readonly Check[] = [
  // What is to be known before anything is measured.
  ({ chart }) => (chart === undefined ? [] : chartNotes(chart)),
  ({ pattern, rules, seams, range }) => checkGivenPattern(pattern, rules, seams, range),
  // Of a draft the lengths are parameters, which have limits.
  ofTypedRules(({ pattern, range, display }) => checkPatternSize(pattern, range, display)),
  // A derived step goes the other way where the chart's growth does, which is told of the chart.
  ofTypedRules(({ pattern, rules, range }) => checkTurningSteps(pattern, rules, range)),
  // Of a draft the girths are measured, and a piece may lose length where the chart says so.
  ofTypedRules(({ range, display }) => checkLargerPieces(range, display)),
  ({ range, rules, chart, exact }) => checkIdenticalSizes(range, rules, chart, exact?.range),
  ofTypedRules(({ range, rules, exact }) => checkAlikeSizes(exact?.range ?? range, rules)),
  ({ range, rules, chart, display }) => checkFarFromBase(range, rules, chart, display),
  ofDraft(checkGradedEqualsDraft),
  ofDraft(checkRuleFormulas),
  // Body plus ease: no sheet says what a pattern is to measure.
  ofSkirt(checkFinishedGirths),
  ofSkirt(checkBandEase),
  ({ range, rules, display }) => checkFolds(range, rules, display),
  // How wide a dart may be depends on the body below it, and a tip needs a hip line to stay above.
  // Darts that cross are told of any outline.
  ofSkirt(checkDarts),
  // What there is to take in, and how many darts to a panel, are parameters.
  ofSkirt(checkDartNumber),
  unlessUntrued([
    sewnSeams,
    ofRange(checkDartLegs),
    ofRange(checkDartTruing),
    // Needs to know what is waist, side and center; corners over darts and seams are told of any edge.
    ofSkirt(checkClosedWaist),
  ]),
  ofDraft(noteTruing),
  // Side, stride, vent, facing, lining and zip hang on parameters, points and pieces by name.
  ofSkirt(checkSideTakeUp),
  ofSkirt(noteSideDirection),
  ofSkirt(checkStride),
  ofSkirt(checkVent),
  ofSkirt(checkFacings),
  ofSkirt(checkLining),
  ofSkirt(checkZip),
  ofSkirt(checkLengthLines),
  ofRange(checkOutlineSimple),
  ofRange(checkCutLines),
  ofRange(checkCutWidths),
  ofRange(checkTurnUps),
  ofRange(noteRoundedPoints),
  // Says what is lost in waist and hip, which are measured on panels.
  ofSkirt(noteRoundingDrift),
  ({ chart, against, display }) => (chart === undefined ? [] : checkChart(chart, display, against)),
];

/** The findings of these checks, the gravest first. Rounding alone warns; it does not fail. */
export function checkPattern(
  context: CheckContext,
  checks: readonly Check[] = CHECKS,
): readonly Finding[] {
  return bySeverity(checks.flatMap((check) => unlessRounded(check, context)));
}

/** A failure that the exact grade does not have is of the rounding that was asked for, and a warning. */
function unlessRounded(check: Check, context: CheckContext): readonly Finding[] {
  const found = check(context);
  const { exact } = context;
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

/** Slips first, which are looked for in the exact grade, then seam by seam. */
function sewnSeams(context: CheckContext): readonly Finding[] {
  const { pattern, range, seams, search, display } = context;
  const exact = context.exact ?? context;
  const graded = { pattern, rules: exact.rules, regrade: regrader(pattern, exact.rules), search };
  const sizes = exact.range.sizes.map(({ pieces }) => pieces);
  const diagnoses = diagnose(graded, exact.seams, sizes);
  return [
    ...slipFindings(range, pattern, diagnoses, display),
    ...checkSewnSeams(range, seams, exact.seams, graded, display, diagnoses),
  ];
}
