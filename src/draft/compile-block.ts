/** Block to drafter: every formula compiled once, and a draft of any size by filling in numbers. */
import { InputError } from '../errors';
import type { Evaluate } from '../formula/compile';
import { compileFormula } from '../formula/compile';
import type { FormulaParser } from '../formula/own-formula';
import { ownFormula } from '../formula/own-formula';
import type { Point } from '../geometry/point';
import type { Piece, PiecePlan } from '../pattern/piece';
import { piecePlan } from '../pattern/piece';
import { TRUING } from '../tolerance';
import type { Block, BlockLayout, BlockPiece } from './block';
import type { Definition, OrderedDefinitions } from './definitions';
import { orderDefinitions } from './definitions';
import { checkSum, rangeCheck } from './parameter-limits';
import { findRoot } from './newton';
import type { ResolvedParameter } from './parameters';

/** One size drafted: its pieces, and every parameter and value by name (mm or plain numbers). */
export interface Draft {
  readonly pieces: readonly Piece[];
  readonly parameters: ReadonlyMap<string, number>;
  /** What truing moved in this size, in the order of the block's rules. */
  readonly trued: readonly TruedLength[];
  /** Every number of the draft in the drafter's own order; other sizes read `base.` names here. */
  readonly values: Float64Array;
  /** A parameter or value by its name, `front/width` for one of a piece; NaN if there is none. */
  readonly valueOf: (key: string) => number;
}

/** A length that truing found in one size, and how well. */
export interface TruedLength {
  readonly piece: string;
  /** What was moved, and for what, in words. */
  readonly meaning: string;
  /** mm, as found. */
  readonly moved: number;
  /** mm by which the aim is still missed. */
  readonly left: number;
}

/** A block ready to draft any size of one range; all its drafts have the same points. */
export interface Drafter {
  readonly plans: readonly PiecePlan[];
  /** The chart rows that the draft uses, in the order in which `draft` takes their values. */
  readonly measurements: readonly string[];
  /** What every coordinate is computed from, for those who explain or differentiate it. */
  readonly definitions: OrderedDefinitions;
  /**
   * Drafts one size. `body` holds millimeters in the order of `measurements`; `base` is the draft
   * of the base size, absent for the base itself. Throws InputError `parameter-out-of-range` or
   * `formula-not-finite` naming the size.
   */
  readonly draft: (
    body: readonly number[],
    size: string,
    base?: Draft,
    changed?: ChangedFormula,
  ) => Draft;
  /** The same drafter with other values of its layout, by name, in mm; a name that it lacks changes nothing. */
  readonly decidedAnew: (values: ReadonlyMap<string, number>) => Drafter;
}

/** A draft asked for with one formula changed: what is drawn from it follows. */
export interface ChangedFormula {
  /** Such as `front/side_hip.x`; a key that no formula has changes nothing. */
  readonly key: string;
  /** What the formula is to give instead of `value`, where it gives `ofBase` in the base size. */
  readonly by: (value: number, ofBase: number) => number;
}

/**
 * Compiles a block, in the layout decided for a range, for a chart that offers the measurements
 * `chartRows`; `parse` reads its formulas. Throws InputError
 * `formula-unknown-name`, `formula-cycle` or `formula-dimension` with the formula and its place.
 */
export function compileBlock(
  block: Block,
  layout: BlockLayout,
  parameters: readonly ResolvedParameter[],
  chartRows: readonly string[],
  parse: FormulaParser = ownFormula,
): Drafter {
  const definitions = orderDefinitions(block, layout, parameters, chartRows, parse);
  const { order, measurements } = definitions;
  const slots = new Map(
    [...measurements, ...order.map(({ key }) => key)].map((key, i) => [key, i]),
  );
  const slotOf = (key: string): number => slots.get(key) as number;

  const named = parameters
    .filter(({ definition }) => slots.has(definition.name))
    .map((parameter) => ({ parameter, slot: slotOf(parameter.definition.name) }));
  const steps = compiledSteps(definitions, slotOf);
  const pieces = layout.pieces.map((piece) => placesOf(piece, slotOf));
  const compiled: CompiledBlock = {
    ...{ block, layout, slots, slotOf, named },
    steps,
    stepAt: new Map(order.map(({ key }, i) => [key, i])),
    truedSteps: steps.filter(({ isTrued }) => isTrued),
    checks: named
      .filter(({ parameter }) => parameter.formula !== undefined)
      .map(({ parameter, slot }) => ({ slot, check: rangeCheck(parameter) })),
    pieces,
    truedPieces: pieces.filter(({ plan }) =>
      layout.truing.some(({ piece }) => piece === plan.name),
    ),
    unknowns: layout.truing.map(({ piece, unknown }) => slotOf(`${piece}/${unknown}`)),
  };
  return drafterOf(compiled, definitions);
}

function drafterOf(compiled: CompiledBlock, definitions: OrderedDefinitions): Drafter {
  return {
    plans: [...compiled.pieces, ...compiled.layout.derived].map(({ plan }) => plan),
    measurements: definitions.measurements,
    definitions,
    draft: (body, size, base, changed) => drafted(compiled, { body, base, changed }, size),
    decidedAnew: (values) => {
      const steps = [...compiled.steps];
      for (const [name, value] of values) {
        const at = compiled.stepAt.get(name) ?? -1;
        const step = steps[at];
        if (step !== undefined) steps[at] = { ...step, evaluate: () => value };
      }
      const truedSteps = steps.filter(({ isTrued }) => isTrued);
      return drafterOf({ ...compiled, steps, truedSteps }, definitions);
    },
  };
}

/** Where each number of a draft stands, and how it is come by. */
interface CompiledBlock {
  readonly block: Block;
  readonly layout: BlockLayout;
  readonly slots: ReadonlyMap<string, number>;
  /** The slot of a key that the block has. */
  readonly slotOf: (key: string) => number;
  readonly steps: readonly Step[];
  /** The place among them of the step that works out a key. */
  readonly stepAt: ReadonlyMap<string, number>;
  /** Those of them that truing changes, while it searches. */
  readonly truedSteps: readonly Step[];
  readonly named: readonly { readonly parameter: ResolvedParameter; readonly slot: number }[];
  /** Of parameters that are formulas, which have no value before a size is drafted. */
  readonly checks: readonly {
    readonly slot: number;
    readonly check: ReturnType<typeof rangeCheck>;
  }[];
  readonly pieces: readonly PlacedPiece[];
  /** Those in which truing moves something. */
  readonly truedPieces: readonly PlacedPiece[];
  /** The slots that truing fills in. */
  readonly unknowns: readonly number[];
}

/** What one size is drafted from. */
interface Given {
  readonly body: readonly number[];
  readonly base: Draft | undefined;
  readonly changed: ChangedFormula | undefined;
}

function compiledSteps(
  { order, keyOf }: OrderedDefinitions,
  slotOf: (key: string) => number,
): readonly Step[] {
  const following = new Set<number>();
  return order.map(({ key, piece, given }): Step => {
    const slot = slotOf(key);
    const uses: number[] = [];
    const use = (name: string): number => uses[uses.push(slotOf(name)) - 1] as number;
    const evaluate = evaluation(given, use, (name) => keyOf(name, piece));
    const isTrued = given.by === 'truing' || uses.some((used) => following.has(used));
    if (isTrued) following.add(slot);
    return { slot, evaluate, isTrued, ofBase: given.by === 'base' };
  });
}

/** How one value is worked out; `use` gives the slot of a key that it reads. */
function evaluation(
  given: Definition['given'],
  use: (key: string) => number,
  keyOf: (name: string) => string,
): Evaluate | undefined {
  switch (given.by) {
    case 'formula':
      return compileFormula(given.formula, (name) => use(keyOf(name)));
    case 'truing':
      return undefined;
    case 'base': {
      const own = use(given.key);
      return (values) => values[own] as number;
    }
  }
}

function drafted(compiled: CompiledBlock, given: Given, size: string): Draft {
  const { block, layout, slots, slotOf, named, checks } = compiled;
  const plain = filled(compiled, given);
  for (const { slot, check } of checks) check(plain[slot] as number, size);
  for (const rule of block.sums) checkSum(rule, (name) => plain[slotOf(name)] as number, size);
  const { at, values, left } = trued(compiled, given, plain);
  const panels = compiled.pieces.map((piece) => shaped(piece, values));
  const valueOf = (key: string): number => values[slots.get(key) ?? -1] ?? NaN;
  const pieces = [
    ...panels,
    ...layout.derived.map(({ plan, points }) => ({ plan, points: points(panels, valueOf) })),
  ];
  for (const piece of pieces) checkFinite(piece, size);
  return {
    pieces,
    parameters: new Map(
      named.map(({ parameter, slot }) => [parameter.definition.name, values[slot] as number]),
    ),
    trued: layout.truing.map(({ piece, meaning }, i) => ({
      piece,
      meaning,
      moved: at[i] as number,
      left: left[i] as number,
    })),
    values,
    valueOf,
  };
}

/** Every number of the draft, before truing: the lengths that it finds are zero. */
function filled(compiled: CompiledBlock, given: Given): Float64Array {
  const values = new Float64Array(compiled.slots.size);
  values.set(given.body);
  fillIn(values, compiled.steps, compiled, given);
  return values;
}

/** The same draft with these lengths found: what follows from them is worked out anew. */
function refilled(
  plain: Float64Array,
  compiled: CompiledBlock,
  given: Given,
  found: readonly number[],
): Float64Array {
  const values = plain.slice();
  compiled.unknowns.forEach((slot, i) => (values[slot] = found[i] as number));
  fillIn(values, compiled.truedSteps, compiled, given);
  return values;
}

function fillIn(
  values: Float64Array,
  steps: readonly Step[],
  { slots }: CompiledBlock,
  { base, changed }: Given,
): void {
  const altered = changed === undefined ? undefined : slots.get(changed.key);
  for (const { slot, evaluate, ofBase } of steps) {
    if (evaluate === undefined) continue;
    values[slot] = ofBase && base !== undefined ? (base.values[slot] as number) : evaluate(values);
    if (slot === altered && changed !== undefined && base !== undefined)
      values[slot] = changed.by(values[slot], base.values[slot] as number);
  }
}

function shaped({ plan, at }: PlacedPiece, values: Float64Array): Piece {
  return {
    plan,
    points: at.map(({ x, y }): Point => ({ x: values[x] as number, y: values[y] as number })),
  };
}

/** Finds the lengths at which the rules of truing hold; `left` is by how much they still miss. */
function trued(
  compiled: CompiledBlock,
  given: Given,
  plain: Float64Array,
): { at: readonly number[]; values: Float64Array; left: readonly number[] } {
  const { truing } = compiled.layout;
  if (truing.length === 0) return { at: [], values: plain, left: [] };
  const misses = (values: Float64Array): readonly number[] => {
    const pieces = compiled.truedPieces.map((piece) => shaped(piece, values));
    const value = (name: string): number => values[compiled.slotOf(name)] as number;
    return truing.map(({ residual }) => residual(pieces, value));
  };
  const valuesAt = (found: readonly number[]) => refilled(plain, compiled, given, found);
  const { at } = findRoot((found) => misses(valuesAt(found)), truing.length, TRUING);
  const values = valuesAt(at);
  return { at, values, left: misses(values) };
}

interface Step {
  readonly slot: number;
  /** Absent for a length that truing fills in. */
  readonly evaluate: Evaluate | undefined;
  /** Whether it changes with the lengths that truing finds. */
  readonly isTrued: boolean;
  /** True for a value that other sizes take from the base. */
  readonly ofBase: boolean;
}

interface PlacedPiece {
  readonly plan: PiecePlan;
  /** The slots of each point's coordinates. */
  readonly at: readonly { readonly x: number; readonly y: number }[];
}

function placesOf(piece: BlockPiece, slotOf: (key: string) => number): PlacedPiece {
  const { points, values, ...lines } = piece;
  return {
    plan: piecePlan({
      part: 'piece',
      ...lines,
      pointNames: points.map(({ name }) => name),
      handles: new Set(points.filter(({ handle }) => handle).map(({ name }) => name)),
    }),
    at: points.map(({ name }) => ({
      x: slotOf(`${piece.name}/${name}.x`),
      y: slotOf(`${piece.name}/${name}.y`),
    })),
  };
}

function checkFinite({ plan, points }: Piece, size: string): void {
  let sum = 0;
  for (const { x, y } of points) sum += x + y;
  if (Number.isFinite(sum)) return;
  const index = points.findIndex(({ x, y }) => !Number.isFinite(x + y));
  throw new InputError('formula-not-finite', {
    what: 'a coordinate is no finite number: the measurements or parameters do not make a skirt',
    place: { point: `${plan.name}.${plan.pointNames[index] ?? '?'}`, size },
  });
}
