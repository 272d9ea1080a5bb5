/** Block to drafter: every formula compiled once and put in an order in which it can be computed. */
import { InputError } from '../errors';
import type { Place } from '../errors';
import type { Evaluate } from '../formula/compile';
import { compileFormula } from '../formula/compile';
import { checkDimension } from '../formula/dimension';
import type { Formula } from '../formula/formula';
import { parseFormula } from '../formula/parse';
import type { Point } from '../geometry/point';
import type { Piece, PiecePlan } from '../pattern/piece';
import { piecePlan } from '../pattern/piece';
import { parseLength } from '../chart/number-cell';
import { fromMillimeters, trimmed } from '../units';
import type { Block, BlockPiece } from './block';
import type { ResolvedParameter } from './parameters';

/** One size drafted: its pieces, and the parameters' values (mm or plain numbers). */
export interface Draft {
  readonly pieces: readonly Piece[];
  readonly parameters: ReadonlyMap<string, number>;
}

export interface Drafter {
  readonly plans: readonly PiecePlan[];
  /** The chart rows that the draft uses, in the order in which `draft` takes their values. */
  readonly measurements: readonly string[];
  /**
   * Drafts one size. `body` holds millimeters in the order of `measurements`. Throws InputError
   * `parameter-out-of-range` or `formula-not-finite` naming the size.
   */
  readonly draft: (body: readonly number[], size: string) => Draft;
}

/** A formula of the block under the name that others use for it. */
interface Definition {
  readonly name: string;
  readonly formula: Formula;
  /** The piece in which coordinates are looked up; undefined for parameters. */
  readonly piece: string | undefined;
  readonly dimension: 0 | 1;
}

/**
 * Compiles a block for a chart that offers the measurements `chartRows`. Throws InputError
 * `formula-unknown-name`, `formula-cycle` or `formula-dimension` with the formula and its place.
 */
export function compileBlock(
  block: Block,
  parameters: readonly ResolvedParameter[],
  chartRows: readonly string[],
): Drafter {
  const definitions = new Map<string, Definition>();
  for (const { definition, formula } of parameters) {
    if (formula === undefined) continue;
    const dimension = definition.quantity === 'length' ? 1 : 0;
    definitions.set(definition.name, {
      name: definition.name,
      formula,
      piece: undefined,
      dimension,
    });
  }
  for (const piece of block.pieces) {
    for (const { name, x, y } of piece.points) {
      for (const [axis, text] of Object.entries({ x, y })) {
        const key = `${piece.name}/${name}.${axis}`;
        const formula = parseFormula(text, { point: `${piece.name}.${name}.${axis}` });
        definitions.set(key, { name: key, formula, piece: piece.name, dimension: 1 });
      }
    }
  }

  const measurable = new Set(chartRows);
  const { order, measurements } = inOrder(definitions, measurable);
  const slots = new Map([...measurements, ...order.map((d) => d.name)].map((name, i) => [name, i]));
  const slotOf = (name: string): number => slots.get(name) as number;
  const dimensionOf = (name: string): number => definitions.get(name)?.dimension ?? 1;

  const steps = order.map(({ formula, piece, dimension }) => {
    checkDimension(formula, dimension, (name) => dimensionOf(scoped(name, piece)));
    return compileFormula(formula, (name) => slotOf(scoped(name, piece)));
  });
  const limits = parameters
    .filter((parameter) => parameter.formula !== undefined)
    .map((parameter) => limitOf(parameter, slotOf(parameter.definition.name)));
  const pieces = block.pieces.map((piece) => ({
    plan: planOf(piece),
    at: piece.points.map(({ name }) => ({
      x: slotOf(`${piece.name}/${name}.x`),
      y: slotOf(`${piece.name}/${name}.y`),
    })),
  }));
  const names = parameters.map(({ definition }) => definition.name);

  return {
    plans: pieces.map(({ plan }) => plan),
    measurements,
    draft: (body, size) => {
      const values = evaluate(body, steps);
      for (const limit of limits) checkLimit(limit, values, size);
      const drafted = pieces.map(({ plan, at }): Piece => {
        const points: Point[] = at.map(({ x, y }) => ({
          x: values[x] as number,
          y: values[y] as number,
        }));
        checkFinite(plan, points, size);
        return { plan, points };
      });
      return {
        pieces: drafted,
        parameters: new Map(names.map((name) => [name, values[slotOf(name)] as number])),
      };
    },
  };
}

function evaluate(body: readonly number[], steps: readonly Evaluate[]): Float64Array {
  const values = new Float64Array(body.length + steps.length);
  values.set(body);
  let slot = body.length;
  for (const step of steps) values[slot++] = step(values);
  return values;
}

/** Coordinates belong to their piece; measurements and parameters to all. */
function scoped(name: string, piece: string | undefined): string {
  return piece !== undefined && name.includes('.') ? `${piece}/${name}` : name;
}

/** Definitions so ordered that each comes after all it uses, and the measurements they end in. */
function inOrder(
  definitions: ReadonlyMap<string, Definition>,
  measurable: ReadonlySet<string>,
): { order: readonly Definition[]; measurements: readonly string[] } {
  const order: Definition[] = [];
  const done = new Set<string>();
  const measurements = new Set<string>();
  const open: string[] = [];

  const visit = (definition: Definition): void => {
    if (done.has(definition.name)) return;
    if (open.includes(definition.name)) {
      const loop = [...open.slice(open.indexOf(definition.name)), definition.name];
      throw new InputError('formula-cycle', {
        what: `the formulas go round in a circle: ${loop.map(plainName).join(' -> ')}`,
        allowed: 'formulas that end in measurements and numbers',
        got: definition.formula.text,
        place: definition.formula.place,
      });
    }
    open.push(definition.name);
    for (const name of definition.formula.names) {
      const used = definitions.get(scoped(name, definition.piece));
      if (used !== undefined) visit(used);
      else if (measurable.has(name)) measurements.add(name);
      else refuseName(name, definition, definitions, measurable);
    }
    open.pop();
    done.add(definition.name);
    order.push(definition);
  };
  for (const definition of definitions.values()) visit(definition);
  return { order, measurements: [...measurements] };
}

function plainName(key: string): string {
  return key.replace('/', '.');
}

function refuseName(
  name: string,
  definition: Definition,
  definitions: ReadonlyMap<string, Definition>,
  measurable: ReadonlySet<string>,
): never {
  const parameters = [...definitions.keys()].filter((key) => !key.includes('/'));
  throw new InputError('formula-unknown-name', {
    what: `"${name}" is neither a measurement of the chart nor a parameter of the style`,
    allowed: `measurements ${[...measurable].join(', ')}; parameters ${parameters.join(', ')}`,
    got: definition.formula.text,
    place: definition.formula.place,
  });
}

function planOf(piece: BlockPiece): PiecePlan {
  return piecePlan({
    name: piece.name,
    pointNames: piece.points.map(({ name }) => name),
    handles: new Set(piece.points.filter(({ handle }) => handle).map(({ name }) => name)),
    outline: piece.outline,
    marks: piece.marks,
  });
}

interface Limit {
  readonly parameter: ResolvedParameter;
  readonly slot: number;
  readonly least: number;
  readonly most: number;
}

function limitOf(parameter: ResolvedParameter, slot: number): Limit {
  const { quantity, least, most } = parameter.definition;
  const bound = (text: string): number =>
    quantity === 'length' ? (parseLength(text, 'mm') as number) : Number(text);
  return { parameter, slot, least: bound(least), most: bound(most) };
}

function checkLimit(limit: Limit, values: Float64Array, size: string): void {
  const value = values[limit.slot] as number;
  if (!(value >= limit.least && value <= limit.most)) refuseValue(limit, value, size);
}

function refuseValue({ parameter, least, most }: Limit, value: number, size: string): never {
  const { definition, text } = parameter;
  const place: Place = { ...parameter.place, size };
  if (!Number.isFinite(value))
    throw new InputError('formula-not-finite', {
      what: 'the formula gives no finite number',
      got: `${text} = ${value}`,
      place,
    });
  const inUnit = (mm: number): string =>
    definition.quantity === 'length'
      ? `${trimmed(mm, 2)} mm (${trimmed(fromMillimeters(mm, 'in'), 3)} in)`
      : trimmed(mm, 4);
  throw new InputError('parameter-out-of-range', {
    what: `${definition.name} is out of its range`,
    allowed: `${inUnit(least)} to ${inUnit(most)}`,
    got: `${text}${inUnit(value) === text ? '' : ` = ${inUnit(value)}`}`,
    place,
  });
}

function checkFinite(plan: PiecePlan, points: readonly Point[], size: string): void {
  let sum = 0;
  for (const { x, y } of points) sum += x + y;
  if (Number.isFinite(sum)) return;
  const index = points.findIndex(({ x, y }) => !Number.isFinite(x + y));
  throw new InputError('formula-not-finite', {
    what: 'a coordinate is no finite number',
    place: { point: `${plan.name}.${plan.pointNames[index] ?? '?'}`, size },
  });
}
