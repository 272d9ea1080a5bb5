/**
 * Bodies drafted and measured in great numbers: the block is compiled once for each layout that any of them
 * needs, and what a single body decides is filled in. A draft is the very one that `draftBodies` gives.
 */
import type { SizeChart } from '../chart/size-chart';
import { findRow } from '../chart/size-chart';
import { needValues } from '../chart/need-values';
import type { BlockLayout, LayoutChoice, RangeFacts } from '../draft/block';
import type { Draft, Drafter } from '../draft/compile-block';
import { compileBlock } from '../draft/compile-block';
import { STRIDE_OPENING, USUAL_OPENING, panelsAlone } from '../draft/decide-layout';
import { resolveParameters } from '../draft/parameters';
import { parserWithMemory } from '../formula/own-formula';
import type { SizedPattern } from '../grade/graded-pattern';
import { stackOn } from '../grade/stack';
import { chosenStyle } from '../jobs/draft-range';
import { measuresOf, stackPointOf } from '../jobs/grade-chart';
import type { PointOfMeasure } from '../measure/point-of-measure';
import { skirtPoints } from '../measure/skirt-points';
import { WALKING_ROWS } from '../stride/walker';
import { strideOpening } from '../stride/walking-room';
import type { BodyRequest } from './draft-bodies';
import type { BodyColumns } from './body-list';

/** A body drafted and measured, neither cut nor checked. */
export type MeasuredBody = Pick<SizedPattern, 'label' | 'pieces' | 'measures'>;

/** Drafts one body after another. Throws InputError as a draft does. */
export type BodyDrafter = (chart: SizeChart) => MeasuredBody;

/** A layout compiled, with what does not change from body to body. */
interface CompiledLayout {
  readonly drafter: Drafter;
  /** Of its panels alone. */
  readonly panels: Drafter;
  readonly stackPoint: string;
  readonly points: readonly PointOfMeasure[];
}

/** Makes the drafter of a list. Throws InputError for a style or a parameter that cannot be used. */
export function bodyDrafter(columns: BodyColumns, request: BodyRequest): BodyDrafter {
  const rowsOfAll = columns.columns.map(({ name }) => name);
  const ofAll = drafterOf(rowsOfAll, columns, request);
  const drafters = new Map([[rowsOfAll.join(), ofAll]]);
  return (chart) => {
    // A body may lack some of the rows, and is drafted as one of a list without them.
    const rows = chart.rows.map(({ name }) => name);
    const key = rows.join();
    const drafter = drafters.get(key) ?? drafterOf(rows, columns, request);
    drafters.set(key, drafter);
    return drafter(chart);
  };
}

function drafterOf(
  rows: readonly string[],
  { unit }: BodyColumns,
  request: BodyRequest,
): BodyDrafter {
  const { style, settings } = chosenStyle(request);
  const { block } = style;
  const parameters = resolveParameters(style, settings, new Set(rows), unit);
  const parse = parserWithMemory();
  const isNeeded = parameters.some(({ formula }) => formula?.names.includes(STRIDE_OPENING));
  const opened = [
    { name: STRIDE_OPENING, quantity: 'length', formula: `${USUAL_OPENING} mm` },
  ] as const;
  const none = { pieces: [], truing: [], derived: [], seams: [] };
  const facts = compileBlock(block, { ...none, values: opened }, parameters, rows, parse);
  const layouts = new Map<string, CompiledLayout>();
  const compiled = (known: RangeFacts, { key }: LayoutChoice): CompiledLayout => {
    const found = layouts.get(key);
    if (found !== undefined) return found;
    const layout = block.layout(known);
    const values = [...(layout.values ?? []), ...opened];
    const compile = (one: BlockLayout) =>
      compileBlock(block, { ...one, values }, parameters, rows, parse);
    const drafter = compile(layout);
    const panels = isNeeded ? compile(panelsAlone(layout)) : drafter;
    const made = {
      drafter,
      panels,
      stackPoint: stackPointOf(drafter),
      points: skirtPoints(drafter.plans),
    };
    layouts.set(key, made);
    return made;
  };
  const decidedWith = (body: Body, opening: number) => {
    const values = new Map([[STRIDE_OPENING, opening]]);
    const known = factsOf(draftOf(facts.decidedAnew(values), body), body);
    const choice = block.decide?.(known) ?? SAME_FOR_ALL;
    const layout = compiled(known, choice);
    for (const [name, value] of choice.values) values.set(name, value);
    return { known, layout, values };
  };
  /** The opening that the body's own stride needs, in a skirt with the usual one. */
  const openingFor = (body: Body): number => {
    const { known, layout, values } = decidedWith(body, USUAL_OPENING);
    const { parameters: own, pieces } = draftOf(layout.panels.decidedAnew(values), body);
    const [step, least] = [known.atBase('vent_step'), known.atBase('vent_least')];
    return strideOpening([{ body: body.walker, parameters: own, pieces }], { step, least });
  };
  return (chart) => {
    const body = bodyOf(chart, rows);
    const { layout, values } = decidedWith(body, isNeeded ? openingFor(body) : USUAL_OPENING);
    const draft = draftOf(layout.drafter.decidedAnew(values), body);
    const { stackPoint, points, drafter } = layout;
    const pieces = draft.pieces.map((piece) => stackOn(piece, stackPoint));
    const used = drafter.measurements.map((name) => [name, body.measure(name)] as const);
    const walker = new Map([...body.walker, ...used]);
    const sized = { pieces, parameters: draft.parameters };
    return { label: body.label, pieces, measures: measuresOf(points, sized, walker) };
  };
}

/** Of a block that decides nothing. */
const SAME_FOR_ALL: LayoutChoice = { key: '', values: new Map() };

/** One body, as a draft asks for it. */
interface Body {
  readonly label: string;
  /** mm. Throws InputError for what the chart lacks. */
  readonly measure: (name: string) => number;
  readonly walker: ReadonlyMap<string, number>;
  readonly rows: readonly string[];
}

function bodyOf(chart: SizeChart, rows: readonly string[]): Body {
  const walker = new Map<string, number>();
  for (const name of WALKING_ROWS) {
    const value = findRow(chart, name)?.values[0] ?? null;
    if (value !== null) walker.set(name, value);
  }
  return {
    label: chart.sizes[0] ?? '',
    measure: (name) => findRow(chart, name)?.values[0] ?? needValues(chart, name)[0] ?? NaN,
    walker,
    rows,
  };
}

function draftOf(drafter: Drafter, { label, measure }: Body): Draft {
  return drafter.draft(drafter.measurements.map(measure), label);
}

/** What a range of this one body tells a block. */
function factsOf({ valueOf }: Draft, { measure, rows }: Body): RangeFacts {
  // A row of the chart that no parameter uses is in no draft without points.
  const valueIn = (name: string): number => {
    const value = valueOf(name);
    return Number.isNaN(value) && rows.includes(name) ? measure(name) : value;
  };
  return {
    atBase: valueOf,
    span: (name) => {
      const value = valueIn(name);
      return [value, value];
    },
    least: (of) => of(valueIn),
    alwaysZero: (name) => valueOf(name) === 0,
  };
}
