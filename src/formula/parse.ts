/** Text to checked formula: mathjs parses, this file decides what may stay. */
import type {
  AccessorNode,
  ConstantNode,
  FunctionNode,
  MathNode,
  OperatorNode,
  ParenthesisNode,
  SymbolNode,
} from 'mathjs';
import { create, parseDependencies } from 'mathjs/number';
import type { Place } from '../errors';
import { InputError, cut } from '../errors';
import type { Formula } from './formula';
import { FUNCTIONS, UNIT_LENGTHS } from './formula';
import type { FormulaTree, Operator } from './tree';

/** Made at the first formula that somebody typed, since it takes a few milliseconds. */
let made: ReturnType<typeof create> | undefined;

const OPERATORS: ReadonlySet<string> = new Set<Operator>(['+', '-', '*', '/', '^']);

/**
 * Parses and checks one formula, such as `waist_girth/4 + waist_ease/4` or `waist_to_knee - 2 in`.
 *
 * Allowed: numbers, names, `point.x` and `point.y`, + - * / ^ with a whole exponent, parentheses,
 * the functions in FUNCTIONS, and in, cm or mm behind a number; LONGEST characters, DEEPEST levels.
 * Throws InputError
 * `formula-malformed` or `formula-not-allowed` with the formula and its place.
 */
export function parseFormula(text: string, place: Place): Formula {
  checkBounds(text, place);
  refuseDoubtfulMinus(text, place);
  let raw: MathNode;
  try {
    made ??= create({ ...parseDependencies });
    raw = made.parse(withUnitNames(text));
  } catch (error) {
    throw new InputError('formula-malformed', {
      what: `the formula cannot be read (${error instanceof Error ? error.message : String(error)})`,
      allowed: 'such as waist_girth/4 + 1 in',
      got: text,
      place,
    });
  }
  const names = new Set<string>();
  const tree = checked(raw, { text, place, names });
  return { text, place, tree, names: [...names] };
}

/** Characters of a formula; nobody could follow a longer one. The engine's own figure. */
const LONGEST = 1_000;
/** Levels of brackets, and of signs or powers one after another. The engine's own figure. */
const DEEPEST = 50;

const NUMERALS = /\d+(?:\.\d*)?(?:e[+-]?\d+)?/giu;

/** Holds a formula to LONGEST and DEEPEST, and its numbers to those there are, before anything walks down into it. */
function checkBounds(text: string, place: Place): void {
  if (text.length > LONGEST) refuseSize('long', `${LONGEST} characters`, text, place);
  let [open, deepest] = [0, 0];
  for (const character of text) {
    if ('([{'.includes(character)) deepest = Math.max(deepest, ++open);
    else if (')]}'.includes(character)) open--;
  }
  // What is read from its right end goes a level down with every sign.
  const signs = /(?:[-+~!]\s*|\bnot\b\s*)+/gu;
  for (const [run] of text.matchAll(signs))
    deepest = Math.max(deepest, run.split(/\S/u).length - 1);
  deepest = Math.max(deepest, text.split(/[\^?=]/u).length - 1);
  if (deepest > DEEPEST) refuseSize('deeply nested', `${DEEPEST} levels`, text, place);
  // Such as 1e400, which would be told as Infinity wherever a part of the formula is quoted.
  const tooLarge = text.match(NUMERALS)?.find((numeral) => Number(numeral) === Infinity);
  if (tooLarge !== undefined) {
    throw new InputError('formula-not-allowed', {
      what: `the number ${cut(tooLarge, 60)} is not allowed in a formula`,
      allowed: 'finite numbers',
      got: text,
      place,
    });
  }
}

/** `2-1/2`, `2 -1/2` where the 2 stands by itself, not as a divisor, factor or part of a name. */
const DOUBTFUL_MINUS = /(?:^|[(+,-])\s*\d+(?:-\s*|\s+-)\d+\s*\/\s*\d/u;

/** In the trade `2-1/2` is two and a half, to a calculator one and a half. */
function refuseDoubtfulMinus(text: string, place: Place): void {
  if (!DOUBTFUL_MINUS.test(text)) return;
  throw new InputError('formula-malformed', {
    what: 'a minus before a fraction can be read in two ways',
    allowed:
      'blanks on both sides of a minus that takes away (2 - 1/2), none in a mixed number (2 1/2)',
    got: text,
    place,
  });
}

function refuseSize(what: string, allowed: string, text: string, place: Place): never {
  throw new InputError('formula-not-allowed', {
    what: `the formula is too ${what}`,
    allowed,
    got: `${text.length} characters, which begin with ${text.slice(0, 40)}`,
    place,
  });
}

/**
 * mathjs reads `in` as a conversion and `1 1/2 in` as a product, so the unit takes its full name
 * and a mixed fraction before a unit its plus sign.
 */
function withUnitNames(text: string): string {
  return text
    .replace(/(\d+)\s+(\d+)\s*\/\s*(\d+)(?=\s*(?:in|cm|mm)\b)/g, '($1+$2/$3)')
    .replace(/([\d.)]\s*)in\b/g, '$1inch');
}

interface Context {
  readonly text: string;
  readonly place: Place;
  readonly names: Set<string>;
}

function refuse(context: Context, what: string, allowed: string): never {
  throw new InputError('formula-not-allowed', {
    what: `${what} is not allowed in a formula`,
    allowed,
    got: context.text,
    place: context.place,
  });
}

/** The tree without parentheses and with coordinates as single names; refuses the rest. */
function checked(node: MathNode, context: Context): FormulaTree {
  switch (node.type) {
    case 'ParenthesisNode':
      return checked((node as ParenthesisNode).content, context);
    case 'ConstantNode': {
      const value: unknown = (node as ConstantNode).value;
      if (typeof value !== 'number') {
        const got =
          value === undefined || value === null
            ? 'nothing'
            : `the text or truth value ${node.toString()}`;
        refuse(context, got, 'numbers');
      }
      if (!Number.isFinite(value)) refuse(context, `the number ${String(value)}`, 'finite numbers');
      return { kind: 'number', value };
    }
    case 'SymbolNode': {
      const { name } = node as SymbolNode;
      if (!UNIT_LENGTHS.has(name)) context.names.add(name);
      return { kind: 'name', name };
    }
    case 'AccessorNode': {
      const name = coordinateName(node as AccessorNode);
      if (name === undefined) refuse(context, `${node.toString()}`, 'point.x and point.y');
      context.names.add(name);
      return { kind: 'name', name };
    }
    case 'OperatorNode':
      return checkedOperator(node as OperatorNode, context);
    case 'FunctionNode':
      return checkedCall(node as FunctionNode, context);
    default:
      return refuse(
        context,
        NODE_WORDS.get(node.type) ?? node.toString(),
        'numbers, names, + - * / ^ and parentheses',
      );
  }
}

const NODE_WORDS: ReadonlyMap<string, string> = new Map([
  ['AssignmentNode', 'an assignment'],
  ['FunctionAssignmentNode', 'a definition'],
  ['BlockNode', 'a list of statements'],
  ['ArrayNode', 'a list in brackets'],
  ['ObjectNode', 'an object in braces'],
  ['RangeNode', 'a range with a colon'],
  ['ConditionalNode', 'a choice with a question mark'],
  ['RelationalNode', 'a comparison'],
]);

/** `side_hip.x` or `base.width` for an accessor of exactly that form, otherwise undefined. */
function coordinateName(node: AccessorNode): string | undefined {
  const text = node.toString();
  return /^([A-Za-z_]\w*\.[xy]|base\.[A-Za-z_]\w*)$/.test(text) ? text : undefined;
}

function checkedOperator(node: OperatorNode, context: Context): FormulaTree {
  if ('isPercentage' in node && node.isPercentage === true)
    refuse(context, 'a percent sign', 'a plain factor such as 0.5');
  if (node.implicit && !isMeasuredNumber(node))
    refuse(
      context,
      `the product without a sign in "${node.toString()}"`,
      '* between factors, and a unit only behind a number',
    );
  const operator: string = node.op;
  if (!isOperator(operator)) refuse(context, `the operator ${operator}`, '+ - * / ^');
  const parts = node.args.map((part) => checked(part, context));
  if (operator === '^' && !isWholeNumber(parts[1]))
    refuse(context, `the power in "${node.toString()}"`, 'a whole number as exponent');
  return { kind: 'operation', operator, parts };
}

function isOperator(text: string): text is Operator {
  return OPERATORS.has(text);
}

/** A number, or a fraction or sum of numbers, directly followed by a unit: `2 in`, `1/2 cm`. */
function isMeasuredNumber(node: OperatorNode): boolean {
  const [amount, unit] = node.args;
  if (unit?.type !== 'SymbolNode' || !UNIT_LENGTHS.has((unit as SymbolNode).name)) return false;
  return amount?.filter((part) => part.type === 'SymbolNode').length === 0;
}

function isWholeNumber(tree: FormulaTree | undefined): boolean {
  return tree?.kind === 'number' && Number.isInteger(tree.value);
}

function checkedCall(node: FunctionNode, context: Context): FormulaTree {
  const allowed = [...FUNCTIONS.keys()].join(', ');
  // A call of anything but a plain name has no name that could be looked up.
  const name = typeof node.fn === 'string' ? node.fn : node.fn.name;
  const arity = FUNCTIONS.get(name);
  if (arity === undefined) refuse(context, `the function ${name || node.toString()}`, allowed);
  if (node.args.length < arity.least || node.args.length > arity.most)
    refuse(
      context,
      `${name} with ${node.args.length} arguments`,
      arity.least === arity.most ? `${arity.least}` : `${arity.least} to ${arity.most}`,
    );
  return { kind: 'call', name, parts: node.args.map((part) => checked(part, context)) };
}
