/** Every size of a chart drafted in one style: what a grade is derived from. */
import { needValues } from '../chart/need-values';
import type { SizeChart } from '../chart/size-chart';
import { presetSettings } from '../draft/presets';
import type { BlockLayout } from '../draft/block';
import type { Draft, Drafter } from '../draft/compile-block';
import { compileBlock } from '../draft/compile-block';
import { decideLayout } from '../draft/decide-layout';
import type { ResolvedParameter } from '../draft/parameters';
import { resolveParameters } from '../draft/parameters';
import type { SaidLine } from '../table/said-line';
import type { StyleChoice } from '../draft/style-file';
import type { Style } from '../draft/styles';
import { DEFAULT_STYLE } from '../draft/default-style';
import { findAskedStyle } from '../draft/styles';
import { readEach } from '../errors';
import { parserWithMemory } from '../formula/own-formula';
import { walkingBodies } from '../stride/walking-bodies';
import type { GradeRequest } from './requests';

/** One size drafted from its own column of the chart. */
export interface DraftedSize {
  readonly label: string;
  /** The measurements that the draft used and those that tell its walker, in mm. */
  readonly body: ReadonlyMap<string, number>;
  /** Those that the draft used, in the order of the drafter. */
  readonly measured: readonly number[];
  readonly draft: Draft;
}

/** A range before it is graded. */
export interface DraftedRange {
  readonly style: Style;
  /** The lines of the style file, where one was asked for. */
  readonly styleLines: readonly SaidLine[];
  /** The title that a project states. */
  readonly title: string | undefined;
  readonly parameters: readonly ResolvedParameter[];
  readonly layout: BlockLayout;
  readonly drafter: Drafter;
  /** In the order of the chart. */
  readonly sizes: readonly DraftedSize[];
  /** Label of the last size, if it is a blend. */
  readonly blend?: string;
}

/**
 * Drafts all sizes of a chart from the base at place `base`. Throws InputError for a style, parameter
 * or formula that cannot be used, and where the chart lacks a measurement.
 */
export function draftRange(
  chart: SizeChart,
  base: number,
  request: Pick<GradeRequest, 'style' | 'set' | 'allowances'>,
): DraftedRange {
  const { style, settings, lines = [], title } = chosenStyle(request);
  const rows = chart.rows.map(({ name }) => name);
  const parameters = resolveParameters(style, settings, new Set(rows), chart.unit);
  const walkers = walkingBodies(chart);
  const sizes = chart.sizes.map((label, i) => ({
    label,
    body: walkers[i] ?? new Map<string, number>(),
    measure: (name: string) => needValues(chart, name)[i] ?? NaN,
  }));
  const parse = parserWithMemory();
  readEach(
    rows.filter((name) => parameters.some((parameter) => takesRow(parameter, name))),
    (name) => needValues(chart, name),
  );
  const layout = decideLayout(style.block, parameters, rows, sizes, base, parse);
  const drafter = compileBlock(style.block, layout, parameters, rows, parse);
  const columns = drafter.measurements.map((name) => needValues(chart, name));
  const measuredIn = (size: number): number[] => columns.map((column) => column[size] as number);
  const baseDraft = drafter.draft(measuredIn(base), chart.sizes[base] ?? '');
  return {
    ...{ style, styleLines: lines, title, parameters, layout, drafter },
    sizes: sizes.map(({ label, body }, i) => {
      const measured = measuredIn(i);
      const used = drafter.measurements.map((name, k) => [name, measured[k] as number] as const);
      return {
        ...{ label, measured },
        body: new Map([...body, ...used]),
        draft: i === base ? baseDraft : drafter.draft(measured, label, baseDraft),
      };
    }),
  };
}

function takesRow({ definition, formula }: ResolvedParameter, row: string): boolean {
  return formula === undefined ? definition.name === row : formula.names.includes(row);
}

/** The style asked for, with all that is set on top of it, the later going before the earlier. */
export function chosenStyle({
  style = DEFAULT_STYLE,
  set = {},
  allowances = 'home',
}: Pick<GradeRequest, 'style' | 'set' | 'allowances'>): StyleChoice {
  const choice = typeof style === 'string' ? { style: findAskedStyle(style), settings: [] } : style;
  const settings = Object.entries(set).map(([parameter, value]) => ({
    parameter,
    value,
    note: 'set by the caller',
    place: { field: 'set' },
  }));
  return {
    ...choice,
    settings: [
      ...presetSettings(allowances, { field: 'allowances' }),
      ...choice.settings,
      ...settings,
    ],
  };
}
