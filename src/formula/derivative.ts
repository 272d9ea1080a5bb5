/** The exact derivative of one formula by one of its names, by mathjs. */
import type { FunctionNode, MathNode, SymbolNode } from 'mathjs';
import {
  ConstantNodeDependencies,
  FunctionNodeDependencies,
  OperatorNodeDependencies,
  ParenthesisNodeDependencies,
  SymbolNodeDependencies,
  create,
  createDerivative,
  equalDependencies,
  factory,
  isZeroDependencies,
  numericDependencies,
} from 'mathjs/number';
import type { Formula } from './formula';
import { valueAt } from './value-at';

type Derivatives = ReturnType<typeof create>;

/**
 * What mathjs needs to derive a tree. Its parser and its simplifier are asked for but not used: the
 * derivatives are evaluated and not read, and to simplify one takes 5 to 60 ms, a hundred times as
 * long as to derive it.
 */
function derivatives(): Derivatives {
  const asItIs = (tree: MathNode): MathNode => tree;
  return create({
    ...ConstantNodeDependencies,
    ...FunctionNodeDependencies,
    ...OperatorNodeDependencies,
    ...ParenthesisNodeDependencies,
    ...SymbolNodeDependencies,
    ...equalDependencies,
    ...isZeroDependencies,
    ...numericDependencies,
    createParse: factory('parse', [], () => asItIs),
    createSimplify: factory('simplify', [], () => asItIs),
    createDerivative,
  });
}

/** Made at the first derivative, since most styles need none and it takes a few milliseconds. */
let made: Derivatives | undefined;

/**
 * The tree of the derivative of `formula` by `name`, not simplified but in the same few operators
 * and functions. Undefined where mathjs has no rule for it: where the name is in a `min` or `max`.
 */
export function derivative(formula: Formula, name: string): MathNode | undefined {
  if (inChoice(formula.tree, name)) return undefined;
  const math = (made ??= derivatives());
  const tree = math.derivative(formula.tree, new math.SymbolNode(name), { simplify: false });
  return tree.transform((node) =>
    isCall(node, 'sec')
      ? new math.OperatorNode('/', 'divide', [
          new math.ConstantNode(1),
          new math.FunctionNode('cos', node.args),
        ])
      : node,
  );
}

/**
 * The derivative's value where the names of the formula have these values; not finite at a kink
 * such as that of `abs`, and undefined where there is no rule for it.
 */
export function derivativeAt(
  formula: Formula,
  name: string,
  valueOf: (name: string) => number,
): number | undefined {
  const tree = derivative(formula, name);
  return tree === undefined ? undefined : valueAt(formula, tree, valueOf);
}

function inChoice(tree: MathNode, name: string): boolean {
  return tree
    .filter((node) => isCall(node, 'min') || isCall(node, 'max'))
    .some((node) => node.filter((part) => isName(part, name)).length > 0);
}

function isName(node: MathNode, name: string): boolean {
  return node.type === 'SymbolNode' && (node as SymbolNode).name === name;
}

function isCall(node: MathNode, name: string): node is FunctionNode {
  return node.type === 'FunctionNode' && (node as FunctionNode).fn.name === name;
}
