/**
 * Formulas that the engine itself writes, as those of its blocks and the lengths it has read: numbers,
 * names, calls and operators in their plainest form, read without mathjs, which takes longer to set up
 * than all of them to read. What is not that plain is left to mathjs.
 */
import type { Place } from '../errors';
import type { Formula } from './formula';
import { UNIT_LENGTHS } from './formula';
import { parseFormula } from './parse';
import { plainTree } from './plain-tree';
import type { FormulaTree } from './tree';

/** Reads a formula. */
export type FormulaParser = (text: string, place: Place) => Formula;

/** Reads a formula that the engine wrote; gives and throws what `parseFormula` does. */
export function ownFormula(text: string, place: Place): Formula {
  const tree = plainTree(text);
  if (tree === undefined) return parseFormula(text, place);
  return { text, place, tree, names: [...new Set(namesIn(tree))] };
}

/**
 * A parser that reads each text once: a range compiles its block several times over, and blocks say
 * the same at many points.
 */
export function parserWithMemory(): FormulaParser {
  const known = new Map<string, Formula>();
  return (text, place) => {
    const formula = known.get(text) ?? ownFormula(text, place);
    known.set(text, formula);
    return { ...formula, place };
  };
}

function namesIn(tree: FormulaTree): readonly string[] {
  if (tree.kind === 'number') return [];
  if (tree.kind === 'name') return UNIT_LENGTHS.has(tree.name) ? [] : [tree.name];
  return tree.parts.flatMap(namesIn);
}
