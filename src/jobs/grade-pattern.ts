/** The job of a sample room as a pure function: a pattern and its rules in, sizes and findings out. */
import { readChart } from '../chart/read-chart';
import type { SizeChart } from '../chart/size-chart';
import { chartNotes } from '../check/chart-notes';
import type { Finding } from '../check/finding';
import { bySeverity } from '../check/finding';
import { checkGivenCutLines } from '../check/given-cut-lines';
import { checkGivenPattern } from '../check/given-pattern';
import { checkLargerPieces } from '../check/larger-pieces';
import { checkOddSigns } from '../check/odd-signs';
import { checkOutlineSimple } from '../check/outline-simple';
import { checkSewnSeams } from '../check/sewn-seams';
import { readD6673 } from '../dxf/read-d6673';
import { givenRuleTexts, gradeGiven } from '../given/grade-given';
import type { GivenPattern, SeamPair } from '../given/pattern';
import { readPattern } from '../given/read-pattern';
import { readRules } from '../rule-sheet/read-given-rules';
import type { GivenRules } from '../rule-sheet/point-rules';
import { readSeams } from '../seams/seam-pairs';
import type { GradedPattern, RuleTexts, SizedPieces } from '../grade/graded-range';
import { readRoundingStep } from '../grade/rounding-step';
import type { LinesShown } from '../render/lines-shown';
import { checkStack, refuseForDrawing, shownSizes } from './pattern-options';
import { regrader } from '../seams/regrade';
import { walkPair, wayOf } from '../seams/walk-pair';
import type { WalkedSeam } from '../seams/seam-trial';
import type { LengthDisplay, LengthUnit } from '../units';

/** A text and the name of its file for messages. */
export interface NamedText {
  readonly text: string;
  readonly file: string;
}

export interface PatternRequest {
  /** The pieces in the base size: CSV, or DXF after ASTM D6673 if the file is called so. */
  readonly pattern: NamedText;
  /** The rule sheet: CSV, or with DXF the rule table. */
  readonly rules: NamedText;
  /** A chart for rules that are formulas of its increments. */
  readonly chart?: NamedText;
  /** What is sewn to what; equal seam names pair edges besides. */
  readonly seams?: NamedText;
  /** Label of the base size; if absent the pattern or the rule sheet says it. */
  readonly base?: string;
  /** Labels of the sizes to show; all if absent. */
  readonly sizes?: readonly string[];
  /** Rounding step such as `1/16in` or `0.5mm`, with its unit. */
  readonly round?: string;
  /** Point on which the sizes of a piece are stacked; if absent they lie as the rules say. */
  readonly stack?: string;
  /** The lines that the drawings show, where the pattern says how it is cut. */
  readonly lines?: LinesShown;
  /** Unit of everything written; the pattern's if absent. */
  readonly unit?: LengthUnit;
  /** Shows inches as fractions. */
  readonly fractions?: boolean;
}

export interface PatternResult {
  readonly title: string;
  readonly pattern: GivenPattern;
  readonly rules: GivenRules;
  readonly range: GradedPattern;
  readonly ruleTexts: RuleTexts;
  readonly seams: readonly WalkedSeam[];
  readonly stackPoint: string;
  /** The sizes asked for. */
  readonly shown: readonly SizedPieces[];
  /** The lines asked for. */
  readonly lines: LinesShown | undefined;
  readonly display: LengthDisplay;
  /** Gravest first. */
  readonly findings: readonly Finding[];
}

/**
 * Grades a given pattern and walks its seams. Throws InputError for input that cannot be used; what
 * is wrong with the pattern or its rules comes back as findings.
 */
export function gradePattern(request: PatternRequest): PatternResult {
  if (/\.dxf$/iu.test(request.pattern.file)) {
    const { pattern, rules } = readD6673(request.pattern, request.rules);
    refuseForDrawing(request, pattern.base ?? '');
    return gradeRead(request, pattern, rules, undefined);
  }
  const pattern = readPattern(request.pattern.text, request.pattern.file);
  const chart = request.chart && readChart(request.chart.text, request.chart.file);
  const rules = readRules(request.rules.text, request.rules.file, {
    pattern,
    chart,
    base: request.base?.trim(),
  });
  return gradeRead(request, pattern, rules, chart);
}

/** The same from a pattern and rules that are read already. */
function gradeRead(
  request: Omit<PatternRequest, 'pattern' | 'rules'>,
  pattern: GivenPattern,
  rules: GivenRules,
  chart: SizeChart | undefined,
): PatternResult {
  const display: LengthDisplay = {
    unit: request.unit ?? pattern.unit,
    fractions: request.fractions ?? false,
  };
  const stackPoint = request.stack ?? '';
  checkStack(pattern, stackPoint);
  const roundingStep =
    request.round === undefined ? undefined : readRoundingStep(request.round, pattern.unit);
  const range = gradeGiven(pattern, rules, { roundingStep, stackPoint });
  const seams = walkedSeams(range, [
    ...pattern.seams,
    ...(request.seams === undefined
      ? []
      : readSeams(request.seams.text, request.seams.file, pattern)),
  ]);
  const sewn = checkSewnSeams(
    range,
    seams,
    { pattern, rules, regrade: regrader(pattern, rules) },
    display,
  );
  const signs = sewn.filter(({ check }) => check === 'wrong-sign');
  const told = new Set(signs.map(({ piece, subject }) => `${piece}.${subject}`));
  const shown = shownSizes(range, request.sizes);
  return {
    title: pattern.title ?? pattern.file.replace(/^.*[\\/]|\.\w+$/gu, ''),
    pattern,
    rules,
    range,
    ruleTexts: givenRuleTexts(pattern, rules),
    seams,
    stackPoint,
    shown,
    lines: request.lines,
    display,
    findings: bySeverity([
      ...(chart === undefined ? [] : chartNotes(chart)),
      ...checkGivenPattern(pattern, rules, range),
      ...checkLargerPieces(range, display),
      ...sewn,
      ...checkOddSigns(pattern, rules, told),
      ...checkOutlineSimple(range),
      ...checkGivenCutLines(pattern, range, display),
    ]),
  };
}

function walkedSeams(range: GradedPattern, pairs: readonly SeamPair[]): readonly WalkedSeam[] {
  const base = range.sizes[range.rules.base]?.pieces ?? [];
  return pairs.map((pair) => {
    const way = wayOf(base, pair);
    return { pair, way, walks: range.sizes.map(({ pieces }) => walkPair(pieces, pair, way)) };
  });
}
