/** Formulas in plain form, read as mathjs reads them, in a fraction of the time. */
import { FUNCTIONS } from './formula';
import type { FormulaTree, Operator } from './tree';

/** A number, a name with its axis, or a sign. */
const TOKEN = /\s*(\d+(?:\.\d+)?|[A-Za-z_]\w*(?:\.[A-Za-z_]\w*)?|[-+*/^(),])\s*/uy;
const NUMBER = /^\d/u;
const NAME = /^[A-Za-z_]/u;
const COORDINATE = /^(?:\w+\.[xy]|base\.\w+)$/u;
/** How units are called in a tree, by how they are written behind a number. */
const UNITS: ReadonlyMap<string, string> = new Map([
  ['in', 'inch'],
  ['cm', 'cm'],
  ['mm', 'mm'],
]);
/** Words that are no names to mathjs. */
const NO_NAMES = new Set(
  'in inch cm mm to mod and or xor not true false null undefined NaN Infinity end'.split(' '),
);

/** A tree, or undefined where what stands there is not in plain form. */
type Found = FormulaTree | undefined;

/** The parts of a text, and which of them is read next. */
interface Reading {
  readonly tokens: readonly string[];
  at: number;
}

/**
 * The tree of a text of numbers, names, calls, parentheses, + - * / ^ and units behind numbers;
 * undefined for any other, and where a unit belongs to a fraction.
 */
export function plainTree(text: string): Found {
  const reading: Reading = { tokens: tokensOf(text) ?? [], at: 0 };
  const tree = sum(reading);
  return reading.at === reading.tokens.length ? tree : undefined;
}

/** The parts of a text in their order, or undefined if something else stands there. */
function tokensOf(text: string): readonly string[] | undefined {
  const tokens: string[] = [];
  let end = 0;
  while (end < text.length) {
    TOKEN.lastIndex = end;
    const token = TOKEN.exec(text)?.[1];
    if (token === undefined) return undefined;
    tokens.push(token);
    end = TOKEN.lastIndex;
  }
  return tokens;
}

/** Takes the first of the signs that stands next, if any does. */
function taken<Sign extends string>(reading: Reading, ...signs: readonly Sign[]): Sign | undefined {
  const sign = signs.find((one) => one === reading.tokens[reading.at]);
  if (sign !== undefined) reading.at++;
  return sign;
}

function sum(reading: Reading): Found {
  return chain(reading, product, ['+', '-']);
}

function product(reading: Reading): Found {
  return chain(reading, measured, ['*', '/']);
}

/** Parts between operators that are worked off from the left. */
function chain(
  reading: Reading,
  part: (reading: Reading) => Found,
  operators: readonly Operator[],
): Found {
  let left = part(reading);
  for (;;) {
    const operator = taken(reading, ...operators);
    if (left === undefined || operator === undefined) return left;
    const right = part(reading);
    left = right && { kind: 'operation', operator, parts: [left, right] };
  }
}

function measured(reading: Reading): Found {
  const isBelow = reading.tokens[reading.at - 1] === '/';
  const amount = signed(reading);
  const unit = UNITS.get(reading.tokens[reading.at] ?? '');
  if (unit === undefined || amount === undefined) return amount;
  reading.at++;
  // Of 1/2 in the half has the unit, not the two.
  if (isBelow || !isAmount(amount)) return undefined;
  return { kind: 'operation', operator: '*', parts: [amount, { kind: 'name', name: unit }] };
}

/** Numbers alone, which a unit may stand behind. */
function isAmount(tree: FormulaTree): boolean {
  if (tree.kind === 'operation') return tree.parts.every(isAmount);
  return tree.kind === 'number';
}

function signed(reading: Reading): Found {
  const operator = taken(reading, '-', '+');
  if (operator === undefined) return power(reading);
  const inner = signed(reading);
  return inner && { kind: 'operation', operator, parts: [inner] };
}

function power(reading: Reading): Found {
  const base = atom(reading);
  if (base === undefined || taken(reading, '^') === undefined) return base;
  const exponent = atom(reading);
  if (exponent?.kind !== 'number' || !Number.isInteger(exponent.value)) return undefined;
  return { kind: 'operation', operator: '^', parts: [base, exponent] };
}

function atom(reading: Reading): Found {
  if (taken(reading, '(')) {
    const inner = sum(reading);
    return taken(reading, ')') && inner;
  }
  const token = reading.tokens[reading.at++] ?? '';
  if (NUMBER.test(token)) return { kind: 'number', value: Number(token) };
  if (!NAME.test(token)) return undefined;
  if (taken(reading, '(')) return call(reading, token);
  const isName = token.includes('.') ? COORDINATE.test(token) : !NO_NAMES.has(token);
  return isName ? { kind: 'name', name: token } : undefined;
}

function call(reading: Reading, name: string): Found {
  const parts: FormulaTree[] = [];
  do {
    const part = sum(reading);
    if (part === undefined) return undefined;
    parts.push(part);
  } while (taken(reading, ','));
  const arity = FUNCTIONS.get(name);
  if (arity === undefined || parts.length < arity.least || parts.length > arity.most)
    return undefined;
  return taken(reading, ')') && { kind: 'call', name, parts };
}
