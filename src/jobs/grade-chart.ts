/** The main job as a pure function: chart text in, graded range and findings out; no file. */
import { chartNotes } from '../check/chart-notes';
import { needValues } from '../chart/need-values';
import { readChart } from '../chart/read-chart';
import type { SizeChart } from '../chart/size-chart';
import { checkChart } from '../check/chart';
import { checkRange } from '../check/range';
import type { Finding } from '../check/finding';
import { bySeverity } from '../check/finding';
import type { Drafter } from '../draft/compile-block';
import type { AllowancePreset } from '../draft/allowance-parameters';
import { ALLOWANCE_PRESETS } from '../draft/allowance-parameters';
import { compileBlock } from '../draft/compile-block';
import { decideLayout } from '../draft/decide-layout';
import type { ResolvedParameter } from '../draft/parameters';
import { resolveParameters } from '../draft/parameters';
import type { StyleChoice } from '../draft/style-file';
import type { Style } from '../draft/styles';
import { findStyle } from '../draft/styles';
import { InputError } from '../errors';
import { allowedStep } from '../stride/walking-room';
import { gradeRange } from '../grade/grade-range';
import type { GradedRange, GradedSize } from '../grade/graded-range';
import { ruleFormulas } from '../grade/rule-formula';
import { CENTER_WAIST } from '../grade/stack';
import { readRoundingStep } from '../grade/rounding-step';
import type { LinesShown } from '../render/lines-shown';
import type { LengthDisplay, LengthUnit } from '../units';
import { walkingBodies } from '../stride/walking-bodies';

export interface GradeRequest {
  /** Text of the chart, CSV. */
  readonly chart: string;
  /** Its name for messages. */
  readonly file?: string;
  /** Label of the base size. */
  readonly base: string;
  /** Name of a style of the engine, or what `readStyle` gave; `pencil` if absent. */
  readonly style?: string | StyleChoice;
  /** Parameters set on top of the style: name to value or formula. */
  readonly set?: Readonly<Record<string, string>>;
  /** Labels of the sizes to show; all if absent. The rules always come from the whole chart. */
  readonly sizes?: readonly string[];
  /** Rounding step such as `1/16in` or `0.5mm`, with its unit. */
  readonly round?: string;
  /** Point on which the sizes are stacked. */
  readonly stack?: string;
  /** Unit of tables, drawings and messages; the chart's if absent. */
  readonly unit?: LengthUnit;
  /** Shows inches as fractions. */
  readonly fractions?: boolean;
  /** Ready-made widths of the seam allowances; a style and `set` go before them. `home` if absent. */
  readonly allowances?: AllowancePreset;
  /** The lines that the drawings show; what suits each drawing if absent. */
  readonly lines?: LinesShown;
  /** Published tables to compare the chart with; a choice that fits the chart if absent. */
  readonly against?: readonly string[];
}

export interface GradeResult {
  readonly chart: SizeChart;
  readonly style: Style;
  readonly parameters: readonly ResolvedParameter[];
  /** The compiled block, whose definitions tell how each point is drawn. */
  readonly drafter: Drafter;
  readonly range: GradedRange;
  /** The sizes asked for. */
  readonly shown: readonly GradedSize[];
  readonly display: LengthDisplay;
  /** The lines asked for. */
  readonly lines: LinesShown | undefined;
  /** Gravest first. */
  readonly findings: readonly Finding[];
}

/**
 * Drafts, grades, measures and checks a whole size range. Throws InputError for input that cannot
 * be used; what is wrong with the skirt itself comes back as findings.
 */
export function gradeChart(request: GradeRequest): GradeResult {
  const chart = readChart(request.chart, request.file ?? 'chart');
  const base = knownSize(chart, request.base, '--base');
  const labels = request.sizes?.map((label) => knownSize(chart, label, '--sizes'));
  const display: LengthDisplay = {
    unit: request.unit ?? chart.unit,
    fractions: request.fractions ?? false,
  };
  const roundingStep =
    request.round === undefined ? undefined : readRoundingStep(request.round, chart.unit);
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
  const drafted = chart.sizes.map((label, i) => {
    const body = bodyOf(i);
    return {
      label,
      body: new Map([
        ...(walkers[i] ?? []),
        ...drafter.measurements.map((name, k): [string, number] => [name, body[k] as number]),
      ]),
      draft: label === base ? baseDraft : drafter.draft(body, label, baseDraft),
    };
  });
  const stackPoint = request.stack ?? CENTER_WAIST;
  const graded = gradeRange(drafter.plans, drafted, { base, stackPoint, roundingStep });
  const range: GradedRange = {
    ...graded,
    sizes: graded.sizes.map((size) => ({
      ...size,
      measures: [...size.measures, { name: 'stride', value: allowedStep(size) }],
    })),
    ruleFormulas: ruleFormulas(drafter, bodyOf(baseIndex), baseDraft, stackPoint),
  };
  return {
    chart,
    style,
    parameters,
    drafter,
    range,
    shown: range.sizes.filter(({ label }) => labels === undefined || labels.includes(label)),
    display,
    lines: request.lines,
    findings: bySeverity([
      ...chartNotes(chart),
      ...checkRange(range, display),
      ...checkChart(chart, display, request.against),
    ]),
  };
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
    place: { option: '--set' },
  }));
  return {
    style: choice.style,
    settings: [...ALLOWANCE_PRESETS[allowances], ...choice.settings, ...settings],
  };
}

function knownSize(chart: SizeChart, label: string, option: string): string {
  if (chart.sizes.includes(label.trim())) return label.trim();
  throw new InputError('size-unknown', {
    what: 'the chart has no such size',
    allowed: chart.sizes.join(', '),
    got: label,
    place: { option, file: chart.file },
  });
}
