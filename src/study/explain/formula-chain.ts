/**
 * How a coordinate comes from measurements: its formula and those of everything that it names, with
 * what the style decides filled in, and without what cancels out or only has another name.
 */
import type { Draft, Drafter } from '../../draft/compile-block';
import type { Definition } from '../../draft/definitions';
import type { Fraction } from '../../formula/fraction';
import { ONE, ZERO, fraction, plus, quotient, times } from '../../formula/fraction';
import type { LinearForm } from '../../formula/linear-form';
import { linearForm, summedTerms } from '../../formula/linear-form';
import { trimmed } from '../../units';

/** One formula of the chain. */
export interface ChainLink {
  /** `side_waist.x`, `waist_ease`; names of other pieces do not occur. */
  readonly name: string;
  /** As the style writes it, or where the value comes from; a sum where numbers were filled in. */
  readonly given: string | LinearForm;
  /** True where the chain ends: a value that is typed, kept from the base size or found by truing. */
  readonly isEnd: boolean;
}

/** The formulas behind one coordinate, for somebody who reads from it back to the body. */
export interface FormulaChain {
  /** The coordinate first, then what it names, each once; measurements are left out. */
  readonly links: readonly ChainLink[];
  /** Measurements in which the chain ends. */
  readonly measurements: readonly string[];
  /**
   * All links put together, in mm: a share of each measurement, of each length that the style keeps
   * the same in all sizes, and of what no sum can say. Undefined without links.
   */
  readonly together: LinearForm | undefined;
}

/** A definition with its numbers filled in. Names are keys such as `front/side_waist.x`. */
interface Simplified {
  readonly given: string | LinearForm;
  /** The keys on which it still depends. */
  readonly uses: readonly string[];
  /** The definition as a sum of measurements, lengths that are typed, and what is no sum. */
  readonly together: LinearForm;
}

/**
 * The chain of `front/side_waist.x` as it is in the base size, whose draft is `base`; without links
 * where the coordinate has no formula.
 */
export function formulaChain(drafter: Drafter, base: Draft, key: string): FormulaChain {
  const { simplified, named } = simplifiedDefinitions(drafter, base);
  const links: ChainLink[] = [];
  const measurements = new Set<string>();
  const seen = new Set<string>();
  const visit = (own: string, name: string): void => {
    if (seen.has(own)) return;
    seen.add(own);
    const found = simplified.get(own);
    if (found === undefined) {
      if (drafter.measurements.includes(own)) measurements.add(own);
      return;
    }
    links.push({
      name: plainName(name),
      given: typeof found.given === 'string' ? found.given : plainForm(found.given),
      isEnd: found.uses.length === 0,
    });
    for (const used of found.uses) visit(used, used);
  };
  visit(named(key), key);
  const sum = simplified.get(named(key))?.together;
  return {
    links,
    measurements: [...measurements],
    together: sum === undefined ? undefined : plainForm(sum),
  };
}

/** All definitions in their order, each after what it uses, so that one pass puts them together. */
function simplifiedDefinitions(
  { definitions: { order, keyOf } }: Drafter,
  base: Draft,
): {
  readonly simplified: ReadonlyMap<string, Simplified>;
  /** What a key is only another name for, or the key itself. */
  readonly named: (key: string) => string;
} {
  const numbers = new Map<string, Fraction>();
  const others = new Map<string, string>();
  const simplified = new Map<string, Simplified>();
  const named = (key: string): string => others.get(key) ?? key;
  const number = (key: string, value: Fraction): Simplified => {
    numbers.set(key, value);
    const text = trimmed(quotient(value), 4);
    return { given: text, uses: [], together: { constant: value, terms: new Map() } };
  };
  const simplify = (definition: Definition): Simplified => {
    const { key, piece, quantity, given } = definition;
    const alone = { together: single(key), uses: [] };
    if (given.by === 'truing') return { ...alone, given: 'found by truing: no formula gives it' };
    if (given.by === 'base')
      return quantity === 'number'
        ? number(key, fraction(base.valueOf(given.key)))
        : { ...alone, given: `${plainName(given.key)} of the base size, kept in every size` };
    const { formula } = given;
    const typed = linearForm(formula, (name) => numbers.get(keyOf(name, piece)));
    const keys = formula.names.map((name) => keyOf(name, piece));
    if (typed === undefined) return { ...alone, uses: keys, given: formula.text };
    const form = renamed(typed, (name) => named(keyOf(name, piece)));
    if (form.terms.size === 0 && quantity === 'number') return number(key, form.constant);
    // A length that the style states keeps its name, so that waist/4 + dart is seen as such.
    if (keys.length === 0 && piece === undefined) return { ...alone, given: formula.text };
    const [[only, share] = ['', ZERO], ...more] = form.terms;
    const isOther = more.length === 0 && form.constant.top === 0 && quotient(share) === 1;
    if (isOther && simplified.has(only)) others.set(key, only);
    return {
      given: keys.every((own) => form.terms.has(own)) ? formula.text : form,
      uses: [...form.terms.keys()],
      together: substituted(form, (name) => simplified.get(name)?.together),
    };
  };
  for (const definition of order) simplified.set(definition.key, simplify(definition));
  return { simplified, named };
}

function single(name: string): LinearForm {
  return { constant: ZERO, terms: new Map([[name, ONE]]) };
}

function renamed({ constant, terms }: LinearForm, nameOf: (name: string) => string): LinearForm {
  return sumOf(
    constant,
    [...terms].map(([name, share]) => [share, single(nameOf(name))]),
  );
}

/** Each name replaced by the sum it stands for, where there is one. */
function substituted(
  { constant, terms }: LinearForm,
  sumFor: (name: string) => LinearForm | undefined,
): LinearForm {
  return sumOf(
    constant,
    [...terms].map(([name, share]) => [share, sumFor(name) ?? single(name)]),
  );
}

/** Such as a coordinate less that of the zero. */
export function formLess(form: LinearForm, other: LinearForm): LinearForm {
  return sumOf(ZERO, [
    [ONE, form],
    [fraction(-1), other],
  ]);
}

function sumOf(
  constant: Fraction,
  parts: readonly (readonly [share: Fraction, form: LinearForm])[],
): LinearForm {
  return {
    constant: parts.reduce(
      (sum, [share, form]) => plus(sum, times(share, form.constant)),
      constant,
    ),
    terms: summedTerms(parts),
  };
}

/** Keys without the piece that they are looked up in. */
function plainForm(form: LinearForm): LinearForm {
  return {
    ...form,
    terms: new Map([...form.terms].map(([key, share]) => [plainName(key), share])),
  };
}

function plainName(key: string): string {
  return key.replace(/^(base\.)?[^/]*\//u, '$1');
}
