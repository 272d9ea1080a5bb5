/** The formulas of a block under the names that others use for them, in an order to compute them. */
import { InputError, readEach } from '../errors';
import { checkDimension } from '../formula/dimension';
import type { Formula } from '../formula/formula';
import type { FormulaParser } from '../formula/own-formula';
import type { Block, BlockLayout, FormulaQuantity } from './block';
import type { ResolvedParameter } from './parameters';
import { wantedNames } from '../table/near-names';
import { recognizeMeasurement } from '../chart/vocabulary';

/** Names of one piece are kept apart by its name and a slash: `front/side_hip.x`. */
export interface Definition {
  readonly key: string;
  /** The piece in which names are looked up first; undefined for parameters and common values. */
  readonly piece: string | undefined;
  readonly quantity: FormulaQuantity;
  /** A formula; or the key whose value in the base size this is; or a length found by truing. */
  readonly given:
    | { readonly by: 'formula'; readonly formula: Formula }
    | { readonly by: 'base'; readonly key: string }
    | { readonly by: 'truing' };
}

/** All definitions of a block, ordered so that one pass computes a draft. */
export interface OrderedDefinitions {
  /** Each after all that it uses. */
  readonly order: readonly Definition[];
  /** Chart rows in which the definitions end. */
  readonly measurements: readonly string[];
  /** The key that a name means inside a piece, or the name itself for a measurement. */
  readonly keyOf: (name: string, piece: string | undefined) => string;
}

const BASE = 'base.';

/**
 * Collects and orders the definitions of a block. Throws InputError `formula-unknown-name`,
 * `formula-cycle` or `formula-dimension` with the formula and its place.
 */
export function orderDefinitions(
  block: Block,
  layout: BlockLayout,
  parameters: readonly ResolvedParameter[],
  chartRows: readonly string[],
  parse: FormulaParser,
): OrderedDefinitions {
  const definitions = collect(block, layout, parameters, parse);
  const measurable = new Set(chartRows);
  const keyOf = (name: string, piece: string | undefined): string => {
    if (name.startsWith(BASE)) return `${BASE}${keyOf(name.slice(BASE.length), piece)}`;
    const own = `${piece ?? ''}/${name}`;
    return definitions.has(own) ? own : name;
  };

  const order: Definition[] = [];
  const done = new Set<string>();
  const measurements = new Set<string>();
  const open: string[] = [];
  const visit = (definition: Definition): void => {
    const { key, given } = definition;
    if (done.has(key)) return;
    if (open.includes(key)) refuseCycle([...open.slice(open.indexOf(key)), key], definition);
    open.push(key);
    const names =
      given.by === 'formula' ? given.formula.names : given.by === 'base' ? [given.key] : [];
    try {
      for (const name of names) use(keyOf(name, definition.piece), name, definition);
    } finally {
      // What is refused is refused once, whatever else uses it.
      open.pop();
      done.add(key);
    }
    order.push(definition);
  };
  const use = (key: string, name: string, by: Definition): void => {
    const used = definitions.get(key);
    if (used !== undefined) visit(used);
    else if (measurable.has(key)) measurements.add(key);
    else if (key.startsWith(BASE)) {
      const of = key.slice(BASE.length);
      const quantity = definitions.get(of)?.quantity ?? 'length';
      const definition: Definition = {
        key,
        piece: by.piece,
        quantity,
        given: { by: 'base', key: of },
      };
      definitions.set(key, definition);
      visit(definition);
    } else refuseName(name, by, definitions, measurable);
  };
  readEach([...definitions.values()], visit);
  checkDimensions(order, keyOf, definitions);
  return { order, measurements: [...measurements], keyOf };
}

/** Throws InputError `formula-dimension`. */
function checkDimensions(
  order: readonly Definition[],
  keyOf: OrderedDefinitions['keyOf'],
  definitions: ReadonlyMap<string, Definition>,
): void {
  const dimensionOf = (key: string): number =>
    definitions.get(key)?.quantity === 'number' ? 0 : 1;
  readEach(order, ({ piece, quantity, given }) => {
    if (given.by !== 'formula') return;
    checkDimension(given.formula, quantity === 'length' ? 1 : 0, (name) =>
      dimensionOf(keyOf(name, piece)),
    );
  });
}

function collect(
  block: Block,
  layout: BlockLayout,
  parameters: readonly ResolvedParameter[],
  parse: FormulaParser,
): Map<string, Definition> {
  const definitions = new Map<string, Definition>();
  const add = (
    key: string,
    quantity: FormulaQuantity,
    formula: Formula,
    piece: string | undefined,
  ): void => void definitions.set(key, { key, piece, quantity, given: { by: 'formula', formula } });

  for (const { definition, formula } of parameters)
    if (formula !== undefined) add(definition.name, definition.quantity, formula, undefined);
  for (const { name, quantity, formula } of [...block.values, ...(layout.values ?? [])])
    add(name, quantity, parse(formula, { parameter: name }), undefined);
  for (const { unknown, piece } of layout.truing) {
    const key = `${piece}/${unknown}`;
    definitions.set(key, { key, piece, quantity: 'length', given: { by: 'truing' } });
  }
  for (const piece of layout.pieces) {
    for (const { name, quantity, formula } of piece.values ?? [])
      add(
        `${piece.name}/${name}`,
        quantity,
        parse(formula, { point: `${piece.name} ${name}` }),
        piece.name,
      );
    for (const { name, x, y } of piece.points)
      for (const [axis, text] of Object.entries({ x, y }))
        add(
          `${piece.name}/${name}.${axis}`,
          'length',
          parse(text, { point: `${piece.name}.${name}.${axis}` }),
          piece.name,
        );
  }
  return definitions;
}

function formulaOf({ given }: Definition): Pick<Formula, 'text' | 'place'> {
  return given.by === 'formula' ? given.formula : { text: '', place: {} };
}

function refuseCycle(loop: readonly string[], definition: Definition): never {
  const { text, place } = formulaOf(definition);
  throw new InputError('formula-cycle', {
    what: `the formulas go round in a circle: ${loop.map((key) => key.replace('/', '.')).join(' -> ')}`,
    allowed: 'formulas that end in measurements and numbers',
    got: text,
    place,
  });
}

function refuseName(
  name: string,
  definition: Definition,
  definitions: ReadonlyMap<string, Definition>,
  measurable: ReadonlySet<string>,
): never {
  const { text, place } = formulaOf(definition);
  const settable = [...definitions.keys()].filter((key) => !/[/.]/.test(key));
  const known = [...measurable, ...settable];
  const measurement = recognizeMeasurement(name)?.name;
  if (measurement !== undefined && !known.includes(measurement))
    throw new InputError('formula-unknown-name', {
      what: `the formula takes ${measurement}, and the chart has no row of it`,
      allowed: `a row ${measurement} in the chart, or a formula without it`,
      got: text,
      place,
    });
  throw new InputError('formula-unknown-name', {
    what: `"${name}" is neither a measurement of the chart nor a parameter of the style`,
    ...wantedNames(
      known.find((one) => one === recognizeMeasurement(name)?.name) ?? name,
      known,
      'a measurement of the chart, such as ' +
        `${[...measurable].slice(0, 3).join(', ')}, or a parameter, such as ${settable.slice(0, 3).join(', ')}`,
    ),
    got: text,
    place,
  });
}
