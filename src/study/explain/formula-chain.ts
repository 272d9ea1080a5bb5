/** How a coordinate comes from measurements: its formula, and those of everything that it names. */
import type { Drafter } from '../../draft/compile-block';
import type { Definition } from '../../draft/definitions';

/** One formula of the chain, for people. */
export interface ChainLink {
  /** `side_waist.x`, `waist_ease`; names of other pieces do not occur. */
  readonly name: string;
  /** `waist_girth/4 + waist_ease/4`, or where the value comes from if not from a formula. */
  readonly formula: string;
}

/**
 * The formulas behind one coordinate, for somebody who reads from the coordinate back to the body.
 */
export interface FormulaChain {
  /** The coordinate first, then what it names, each once; measurements are left out. */
  readonly links: readonly ChainLink[];
  /** Measurements in which the chain ends. */
  readonly measurements: readonly string[];
}

/** The chain of `front/side_waist.x`; without links where the coordinate has no formula. */
export function formulaChain({ definitions, measurements }: Drafter, key: string): FormulaChain {
  const { order, keyOf } = definitions;
  const byKey = new Map(order.map((definition) => [definition.key, definition]));
  const links: ChainLink[] = [];
  const reached = new Set<string>();
  const seen = new Set<string>();
  const visit = (name: string): void => {
    if (seen.has(name)) return;
    seen.add(name);
    const definition = byKey.get(name);
    if (definition === undefined) {
      if (measurements.includes(name)) reached.add(name);
      return;
    }
    links.push({ name: plainName(name), formula: formulaText(definition) });
    for (const used of namesIn(definition)) visit(keyOf(used, definition.piece));
  };
  visit(key);
  return { links, measurements: [...reached] };
}

function namesIn({ given }: Definition): readonly string[] {
  switch (given.by) {
    case 'formula':
      return given.formula.names;
    case 'base':
      return [given.key];
    case 'truing':
      return [];
  }
}

function formulaText({ given }: Definition): string {
  switch (given.by) {
    case 'formula':
      return given.formula.text;
    case 'base':
      return `${plainName(given.key)} of the base size, kept in every size`;
    case 'truing':
      return 'found by truing: no formula gives it';
  }
}

/** A key without the piece that its name is looked up in. */
function plainName(key: string): string {
  return key.replace(/^(base\.)?[^/]*\//u, '$1');
}
