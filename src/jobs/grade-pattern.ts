/** The job of a sample room as a pure function: a pattern and its rules in, sizes and findings out. */
import { needSteps } from '../chart/need-steps';
import { readChart } from '../chart/read-chart';
import type { SizeChart } from '../chart/size-chart';
import type { Check } from '../check/checks';
import { CHECKS, checkPattern } from '../check/checks';
import { readD6673 } from '../dxf/read-d6673';
import { InputError } from '../errors';
import { givenRuleTexts, gradedPieces } from '../given/grade-given';
import { readPattern } from '../given/read-pattern';
import { cutSizes, gradeSizes } from '../grade/grade-sizes';
import type { Pattern } from '../pattern/pattern';
import type { GivenRules } from '../rule-sheet/point-rules';
import { readRules } from '../rule-sheet/read-rules';
import { readSeams } from '../seams/read-seams';
import { IN_TYPED_RULES } from '../seams/slip-search';
import { refuseUnmetStretches } from '../seams/eased-stretches';
import { withCourses } from '../seams/side-course';
import { withStated } from '../seams/stated-pair';
import { counted } from '../table/counted';
import { matchSize } from '../table/name-match';
import { displayAsTyped, hasFractions } from '../table/typed-fractions';
import { walkedSeams } from '../seams/walked-seam';
import { roundingOf, shownSizes } from './asked';
import { checkContext } from './check-context';
import type { GradeResult, Made } from './grade-result';
import type { PatternRequest } from './requests';

/**
 * Grades a given pattern and walks its seams. Throws InputError for input that cannot be used; what
 * is wrong with the pattern or its rules comes back as findings of `checks`.
 */
export function gradePattern(
  request: PatternRequest,
  checks: readonly Check[] = CHECKS,
): GradeResult {
  const { pattern: read, rules, chart } = readRequest(request);
  const more = request.seams && readSeams(request.seams.text, request.seams.file, read);
  const base = read.pieces.map((piece) => piece.base);
  const pattern = {
    ...read,
    seams: withCourses(base, withStated(read, more?.pairs ?? [])),
    unread: [...read.unread, ...(more?.unread ?? [])],
  };
  refuseUnmetStretches(base, pattern.seams);
  const display = displayAsTyped(
    request,
    pattern.unit,
    [request.pattern, request.rules].some(({ text }) => hasFractions(text)),
  );
  const pieces = gradedPieces(pattern, rules);
  const net = gradeSizes(
    rules.sizes.map((label, i) => ({ label, pieces: pieces[i] ?? [], parameters: new Map() })),
    {
      base: rules.base,
      stackPoint: request.stack ?? '',
      rounding: roundingOf(request.round, pattern.unit, pattern.seams),
    },
  );
  const range = cutSizes(net);
  const seams = walkedSeams(range, pattern.seams);
  const known = { pattern, range, rules, seams, chart, display };
  const context = checkContext({
    ...known,
    against: undefined,
    search: IN_TYPED_RULES,
    rulesOf: () => rules,
    measured: (exact) => exact,
  });
  return {
    ...known,
    made: madeOf(pattern, rules),
    title: pattern.title ?? pattern.file.replace(/^.*[\\/]|\.\w+$/gu, ''),
    imprint: pattern.imprint ?? {},
    ruleTexts: givenRuleTexts(pattern, rules),
    shown: shownSizes(range.sizes, request.sizes, pattern.file),
    lines: request.lines,
    findings: checkPattern(context, checks),
  };
}

function madeOf({ file, pieces }: Pattern, { ruled }: GivenRules): Made {
  const points = ruled.reduce((sum, own) => sum + own.size, 0);
  return {
    of: `${counted(pieces.length, 'piece')}, ${counted(points, 'point')} with rules`,
    inFull: `Pattern ${file}`,
    caution: 'A pattern is graded by its rules; the rules are yours.',
  };
}

interface ReadRequest {
  readonly pattern: Pattern;
  readonly rules: GivenRules;
  readonly chart: SizeChart | undefined;
}

/** The pattern and its rules, from a drawing with its rule table or from sheets. */
function readRequest(request: PatternRequest): ReadRequest {
  if (/\.dxf$/iu.test(request.pattern.file)) {
    const { pattern, rules } = readD6673(request.pattern, request.rules);
    refuseForDrawing(request, pattern.base ?? '');
    return { pattern, rules, chart: undefined };
  }
  const pattern = readPattern(request.pattern.text, request.pattern.file);
  refuseOtherBase(request, pattern);
  const chart = request.chart && readChart(request.chart.text, request.chart.file);
  if (chart !== undefined) needSteps(chart);
  const rules = readRules(request.rules.text, request.rules.file, {
    pieces: pattern.pieces.map(({ base: { plan }, ruleNames }) => ({ plan, ruleNames })),
    unit: pattern.unit,
    countsUp: pattern.countsUp,
    chart,
    base: request.base?.trim() ?? pattern.base,
    namedRules: request.namedRules,
  });
  return { pattern, rules, chart };
}

/** Throws InputError `rule-contradicted` for a base in which the pattern says it is not drawn. */
function refuseOtherBase({ base }: PatternRequest, pattern: Pattern): void {
  if (base === undefined || pattern.base === undefined) return;
  if (matchSize(base, [pattern.base]) !== undefined) return;
  throw new InputError('rule-contradicted', {
    what: 'the pattern says that it is drawn in another size than the base',
    allowed: `${pattern.base}, or no base, as the pattern states it`,
    got: base,
    place: { file: pattern.file, field: 'base' },
  });
}

/**
 * A drawing has its rules and its sample size in its own table. Throws InputError `bad-option` for a
 * base or a chart beside them.
 */
function refuseForDrawing({ base, chart, namedRules }: PatternRequest, sample: string): void {
  const refuse = (field: string, what: string, allowed: string, got: string): never => {
    throw new InputError('bad-option', { what, allowed, got, place: { field } });
  };
  if (base !== undefined && matchSize(base, [sample]) === undefined) {
    refuse('base', 'the base is the sample size that the rule table states', sample, base);
  }
  if (chart !== undefined) {
    refuse('chart', 'a rule table has no formulas', 'a drawing without a chart', chart.file);
  }
  if (namedRules !== undefined) {
    refuse(
      'library',
      'a rule table numbers its rules',
      'a drawing without a library',
      namedRules.file,
    );
  }
}
