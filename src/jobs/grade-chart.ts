/** The main job as a pure function: chart text in, graded range and findings out; no file. */
import { withBlend } from '../chart/blend';
import { needSteps } from '../chart/need-steps';
import { readChart } from '../chart/read-chart';
import { isInFractions } from '../chart/size-chart';
import { statedBase } from '../chart/size-chart';
import type { SizeChart } from '../chart/size-chart';
import type { Check, CheckContext } from '../check/checks';
import { CHECKS, checkPattern } from '../check/checks';
import type { Drafter } from '../draft/compile-block';
import { InputError } from '../errors';
import { cutSizes, gradeSizes } from '../grade/grade-sizes';
import type {
  DraftedPattern,
  GradedPattern,
  Measure,
  RangeDraft,
  SizedPattern,
} from '../grade/graded-pattern';
import { derivedRules } from '../grade/derived-rules';
import { redraftOf } from '../grade/redraft';
import { ruleFormulas } from '../grade/rule-formula';
import { CENTER_WAIST, stackOn } from '../grade/stack';
import { finishedMeasures } from '../measure/finished';
import type { PointOfMeasure } from '../measure/point-of-measure';
import { skirtPoints } from '../measure/skirt-points';
import { zipLengths } from '../measure/zip-lengths';
import { panelsOf } from '../pattern/piece';
import type { Pattern } from '../pattern/pattern';
import { ruledPiece } from '../pattern/pattern';
import type { GivenRules } from '../rule-sheet/point-rules';
import { imprintOf } from '../table/imprint';
import { unreadIn } from '../table/unread';
import { allStated } from '../table/said-line';
import { displayAsTyped } from '../table/typed-fractions';
import { inFormulas } from '../seams/slip-search';
import { walkedSeams } from '../seams/walked-seam';
import { allowedStep } from '../stride/walking-room';
import { knownSize, roundingOf, shownSizes } from './asked';
import { baseAndBlend, blendOf } from './blended-range';
import { refuseChartOrders, refuseOtherBase } from './chart-orders';
import { checkContext } from './check-context';
import type { DraftedRange } from './draft-range';
import { draftRange } from './draft-range';
import type { Drafted, Grade, GradeResult, Made } from './grade-result';
import type { GradeRequest } from './requests';

/**
 * Drafts, grades, measures and checks a whole size range. Throws InputError for input that cannot
 * be used; what is wrong with the skirt itself comes back as findings of `checks`.
 */
export function gradeChart(request: GradeRequest, checks: readonly Check[] = CHECKS): ChartGrade {
  return gradeReadChart(readRequested(request), request, checks);
}

/** A chart graded and checked. */
export type ChartGrade = GradeResult & Drafted;

/** What is asked of a chart that is read already. */
export type ReadChartRequest = Omit<GradeRequest, 'chart' | 'file'>;

/** The same for a chart that is read already. Throws InputError as `gradeChart` does. */
export function gradeReadChart(
  chart: SizeChart,
  request: ReadChartRequest,
  checks: readonly Check[] = CHECKS,
): ChartGrade {
  const { grade, context } = graded(chart, request, true);
  return { ...grade, findings: checkPattern(context(), checks) };
}

function readRequested({ chart, file = 'chart' }: GradeRequest): SizeChart {
  return readChart(chart, file);
}

/**
 * Drafts, grades and measures a whole size range, its net lines only. Throws InputError as `gradeChart`
 * does, and `sizes-too-few` for a chart of one size, of which nothing can be asked.
 */
export function gradeUnchecked(request: GradeRequest): Grade & Drafted {
  const { grade } = graded(readRequested(request), request, false);
  needSteps(grade.chart);
  return grade;
}

/** The graded range, and what its checks may ask about, made when it is asked for. */
interface Graded {
  readonly grade: Grade & Drafted;
  readonly context: () => CheckContext;
}

function graded(typed: SizeChart, request: ReadChartRequest, isCut: boolean): Graded {
  const label = baseOf(typed, request.base);
  refuseOtherBase(typed, label);
  const display = displayAsTyped(request, typed.unit, isInFractions(typed));
  const { chart, drafted } = draftedChart(typed, label, request);
  const base = drafted.sizes.findIndex((size) => size.label === label);
  const { style, layout, drafter } = drafted;
  refuseChartOrders(chart, style);
  const net = gradeSizes(
    drafted.sizes.map((size) => ({ ...size.draft, label: size.label })),
    {
      base,
      stackPoint: request.stack ?? stackPointOf(drafter),
      rounding: roundingOf(request.round, chart.unit, layout.seams),
    },
  );
  const range = draftedPattern(isCut ? cutSizes(net) : net, drafted);
  const pattern = patternOf(chart, drafted, range);
  const seams = walkedSeams(range, pattern.seams);
  const rulesOf = (own: GradedPattern): GivenRules => derivedRules(own, pattern.file);
  const rules = rulesOf(range);
  const grade: Grade & Drafted = {
    title: pattern.title ?? '',
    made: madeOf(range.draft),
    imprint: imprintOf([...chart.comments, ...drafted.styleLines]),
    ...{ pattern, chart, range, rules, seams, display },
    ruleTexts: range.draft.ruleFormulas,
    shown: shownSizes(
      range.sizes,
      drafted.blend === undefined ? request.sizes : [drafted.blend],
      chart.file,
    ),
    lines: request.lines,
  };
  const context = (): CheckContext =>
    checkContext({
      ...{ pattern, range, rules, seams, display },
      // A blend is no size of the range, so that it has no steps.
      chart: typed,
      against: request.against,
      search: inFormulas(redraftOf(drafter, drafted.sizes, range)),
      rulesOf,
      measured: (exact) => draftedPattern(exact, drafted),
    });
  return { grade, context };
}

/**
 * The base as the chart spells it, the one that it states if none is asked for; the only size needs no
 * naming. Throws `base-missing`, `size-unknown`.
 */
function baseOf(chart: SizeChart, asked: string | undefined): string {
  const { sizes, file } = chart;
  const base = asked ?? statedBase(chart);
  if (base !== undefined) return knownSize(sizes, base, 'base', file);
  const [only, ...others] = sizes;
  if (only !== undefined && others.length === 0) return only;
  throw new InputError('base-missing', {
    what: 'the chart has several sizes, and nothing says which is the base that all rules start from',
    allowed: `${sizes.join(', ')}; or a line "# base: ${sizes[Math.floor(sizes.length / 2)] ?? ''}" in the chart`,
    place: { file, field: 'base' },
  });
}

/** The sizes of a chart drafted; with a blend it has one more, and only the base is graded beside it. */
function draftedChart(
  typed: SizeChart,
  base: string,
  request: ReadChartRequest,
): { readonly chart: SizeChart; readonly drafted: DraftedRange } {
  const blend = blendOf(request, typed);
  const chart = blend === undefined ? typed : withBlend(typed, blend);
  const range = draftRange(chart, chart.sizes.indexOf(base), request);
  return { chart, drafted: blend === undefined ? range : baseAndBlend(range, base, blend) };
}

/** What is graded, as a pattern that somebody could have given: its pieces in the base size. */
function patternOf(
  chart: SizeChart,
  drafted: DraftedRange,
  { base, sizes }: GradedPattern,
): Pattern {
  return {
    file: chart.file,
    title: titleOf(chart, drafted),
    unit: chart.unit,
    base,
    pieces: (sizes.find(({ label }) => label === base)?.pieces ?? []).map(ruledPiece),
    seams: drafted.layout.seams,
    unpaired: [],
    leftOut: [],
    // The chart's own are told with its notes.
    unread: unreadIn({ comments: drafted.styleLines }, ['based on']),
  };
}

/** A graded pattern, rounded or exact, with its measures and what it was drafted from. */
function draftedPattern(
  graded: GradedPattern,
  { style, parameters, drafter, sizes, blend }: DraftedRange,
): DraftedPattern {
  const { stackPoint } = graded;
  const points = skirtPoints(graded.plans);
  const first = sizes.find(({ label }) => label === graded.base);
  if (first === undefined) throw new RangeError('a range is graded from its base');
  return {
    ...graded,
    blend,
    sizes: graded.sizes.map((size, i) => ({
      ...size,
      measures: measuresOf(points, size, (sizes[i] ?? first).body),
    })),
    draft: {
      ...{ style, parameters, drafter },
      ruleFormulas: ruleFormulas(drafter, first.measured, first.draft, stackPoint),
      sizes: sizes.map(({ body, draft: { pieces, trued } }) => ({
        ...{ body, trued },
        pieces: pieces.map((piece) => stackOn(piece, stackPoint)),
      })),
    },
  };
}

/** The center of the waist, where a style has one; else the sizes lie as they are drafted. */
export function stackPointOf({ plans }: Drafter): string {
  return plans.some(({ index }) => index.has(CENTER_WAIST)) ? CENTER_WAIST : '';
}

/** What is measured on a skirt, and the step that it allows, infinite if any; nothing on no skirt. */
export function measuresOf(
  points: readonly PointOfMeasure[],
  { pieces, parameters }: Pick<SizedPattern, 'pieces' | 'parameters'>,
  body: ReadonlyMap<string, number>,
): readonly Measure[] {
  if (panelsOf(pieces).length === 0) return [];
  return [
    ...finishedMeasures(points, pieces, zipLengths(pieces, parameters)),
    { name: 'stride', value: allowedStep({ pieces, parameters, body }) },
  ];
}

function madeOf({ style, parameters }: Pick<RangeDraft, 'style' | 'parameters'>): Made {
  const set = parameters
    .filter(({ origin }) => origin === 'setting')
    .map(({ definition, text }) => `${definition.name} = ${text}`);
  return {
    of: `style ${style.name}`,
    inFull: `Style ${style.name}, ${set.length === 0 ? 'nothing set' : `set: ${set.join(', ')}`}`,
    caution: 'A narrow hem shortens the stride. Standards are voluntary and bodies vary.',
  };
}

/** What a project calls the skirt, else the chart (`# title: ...`), else its style file or its style. */
function titleOf(
  { comments }: SizeChart,
  { title, styleLines, style }: Pick<DraftedRange, 'title' | 'styleLines' | 'style'>,
): string {
  const stated = allStated([...comments, ...styleLines], 'title').find(({ text }) => text !== '');
  return title ?? stated?.text ?? `${style.name} skirt`;
}
