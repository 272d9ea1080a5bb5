/** The main job as a pure function: chart text in, graded range and findings out; no file. */
import { needValues } from '../chart/need-values';
import { readChart } from '../chart/read-chart';
import type { SizeChart } from '../chart/size-chart';
import type { CheckContext } from '../check/checks';
import { checkPattern } from '../check/checks';
import type { Drafter } from '../draft/compile-block';
import { ALLOWANCE_PRESETS } from '../draft/allowance-parameters';
import { compileBlock } from '../draft/compile-block';
import { decideLayout } from '../draft/decide-layout';
import type { ResolvedParameter } from '../draft/parameters';
import { resolveParameters } from '../draft/parameters';
import type { StyleChoice } from '../draft/style-file';
import type { Style } from '../draft/styles';
import { findStyle } from '../draft/styles';
import { gradeSizes } from '../grade/grade-sizes';
import type {
  GradedPattern,
  GradedRange,
  GradedSize,
  Measure,
  SizedPattern,
} from '../grade/graded-pattern';
import { derivedRules } from '../grade/derived-rules';
import { ruleFormulas } from '../grade/rule-formula';
import { CENTER_WAIST, stackOn } from '../grade/stack';
import { finishedMeasures } from '../measure/finished';
import type { PointOfMeasure } from '../measure/point-of-measure';
import { skirtPoints } from '../measure/skirt-points';
import { zipLengths } from '../measure/zip';
import { panelsOf } from '../pattern/piece';
import type { Pattern } from '../pattern/pattern';
import { ruledPiece } from '../pattern/pattern';
import type { GivenRules } from '../rule-sheet/point-rules';
import type { WalkedSeam } from '../seams/walked-seam';
import { walkedSeams } from '../seams/walked-seam';
import { roundingOf, exactGrade } from './rounding';
import { allowedStep } from '../stride/walking-room';
import { walkingBodies } from '../stride/walking-bodies';
import type { GradeResult } from './grade-result';
import { displayOf, knownSize, shownSizes } from './grade-result';
import type { GradeRequest } from './requests';

/** A graded range that was drafted, and what it was drafted from. */
export interface DraftResult extends GradeResult {
  readonly chart: SizeChart;
  readonly style: Style;
  readonly parameters: readonly ResolvedParameter[];
  /** The compiled block, whose definitions tell how each point is drawn. */
  readonly drafter: Drafter;
  readonly range: GradedRange;
  readonly shown: readonly GradedSize[];
}

/**
 * Drafts, grades, measures and checks a whole size range. Throws InputError for input that cannot
 * be used; what is wrong with the skirt itself comes back as findings.
 */
export function gradeChart(request: GradeRequest): DraftResult {
  const chart = readChart(request.chart, request.file ?? 'chart');
  const base = knownSize(chart.sizes, request.base, 'base', chart.file);
  const display = displayOf(request, chart.unit);
  const { style, settings } = chosenStyle(request);
  const chartRows = chart.rows.map((row) => row.name);
  const parameters = resolveParameters(style, settings, new Set(chartRows), chart.unit);
  const baseIndex = chart.sizes.indexOf(base);
  const walkers = walkingBodies(chart);
  const layout = decideLayout(
    style.block,
    parameters,
    chartRows,
    chart.sizes.map((label, i) => ({
      label,
      body: walkers[i] ?? new Map<string, number>(),
      measure: (name) => needValues(chart, name)[i] ?? NaN,
    })),
    baseIndex,
  );
  const drafter = compileBlock(style.block, layout, parameters, chartRows);
  const columns = drafter.measurements.map((name) => needValues(chart, name));
  const bodyOf = (size: number): number[] => columns.map((column) => column[size] as number);
  const baseDraft = drafter.draft(bodyOf(baseIndex), base);
  const drafts = chart.sizes.map((label, i) =>
    label === base ? baseDraft : drafter.draft(bodyOf(i), label, baseDraft),
  );
  const stackPoint = request.stack ?? stackPointOf(drafter);
  const graded = gradeSizes(
    drafts.map((draft, i) => ({ ...draft, label: chart.sizes[i] ?? '' })),
    { base: baseIndex, stackPoint, rounding: roundingOf(request.round, chart.unit, layout.seams) },
  );
  const points = skirtPoints(graded.plans);
  const formulas = ruleFormulas(drafter, bodyOf(baseIndex), baseDraft, stackPoint);
  const rangeOf = (own: GradedPattern): GradedRange => ({
    ...own,
    sizes: own.sizes.map((size, i) => {
      const own = drafter.measurements.map((name, k): [string, number] => [
        name,
        columns[k]?.[i] as number,
      ]);
      const body = new Map([...(walkers[i] ?? []), ...own]);
      return {
        ...size,
        body,
        draft: (drafts[i]?.pieces ?? []).map((piece) => stackOn(piece, stackPoint)),
        trued: drafts[i]?.trued ?? [],
        measures: measuresOf(points, size, body),
      };
    }),
    ruleFormulas: formulas,
  });
  const range = rangeOf(graded);
  const pattern: Pattern = {
    file: chart.file,
    title: titleOf(chart, style),
    unit: chart.unit,
    base,
    pieces: (range.sizes[baseIndex]?.pieces ?? []).map(ruledPiece),
    seams: layout.seams,
    unpaired: [],
    leftOut: [],
  };
  const seams = walkedSeams(range, pattern.seams);
  const rulesOf = (own: GradedPattern): GivenRules => derivedRules(own, pattern.file);
  const contextOf = (own: GradedRange, walked: readonly WalkedSeam[]): CheckContext => ({
    pattern,
    range: own,
    rules: rulesOf(own),
    areRulesTyped: false,
    seams: walked,
    chart,
    against: request.against,
    drafted: own,
    display,
    exact: exactGrade(own, pattern.seams, rulesOf, (exact, exactSeams) =>
      contextOf(rangeOf(exact), exactSeams),
    ),
  });
  return {
    title: pattern.title ?? '',
    pattern,
    chart,
    style,
    parameters,
    drafter,
    range,
    ruleTexts: range.ruleFormulas,
    seams,
    shown: shownSizes(range.sizes, request.sizes, chart.file),
    display,
    lines: request.lines,
    findings: checkPattern(contextOf(range, seams)),
  };
}

/** The center of the waist, where a style has one; else the sizes lie as they are drafted. */
function stackPointOf({ plans }: Drafter): string {
  return plans.some(({ index }) => index.has(CENTER_WAIST)) ? CENTER_WAIST : '';
}

/** What is measured on a skirt, and the step that it allows; nothing on what is no skirt. */
function measuresOf(
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

/** The chart's own title (`# title: ...`), or the style's name. */
function titleOf({ comments }: SizeChart, { name }: Style): string {
  const stated = comments.map((line) => /^title\s*[:=]\s*(.+)$/i.exec(line)?.[1]?.trim());
  return stated.find((title) => title !== undefined) ?? `${name} skirt`;
}

function chosenStyle({
  style = 'pencil',
  set = {},
  allowances = 'home',
}: GradeRequest): StyleChoice {
  const choice = typeof style === 'string' ? { style: findStyle(style), settings: [] } : style;
  const settings = Object.entries(set).map(([parameter, value]) => ({
    parameter,
    value,
    note: 'set by the caller',
    place: { field: 'set' },
  }));
  return {
    style: choice.style,
    settings: [...ALLOWANCE_PRESETS[allowances], ...choice.settings, ...settings],
  };
}
