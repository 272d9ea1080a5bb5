/** Sizes that are named by a step, as in `4-6`: what is typed there is the growth from 4 to 6. */
import { InputError } from '../errors';
import { withPlainHyphens } from '../table/tidy-text';
import type { TypedCell } from '../table/typed-table';

/** From one size to the next, as a sheet writes it. */
interface Step {
  readonly from: string;
  readonly to: string;
}

/** The size to which a typed step belongs, and whether it is typed from there toward the base. */
export interface StepSize {
  readonly size: string;
  readonly reversed: boolean;
}

/** What the labels of a sheet mean. */
export interface SizeHeads {
  /** The sizes in their order. */
  readonly sizes: readonly string[];
  /** The size of a label that is a step; undefined for a plain size. */
  readonly stepOf: (label: TypedCell) => StepSize | undefined;
}

/** `4-6`, `4 to 6`, `4 > 6`; of several hyphens each may be the one. */
const BETWEEN = / ?(?:-|>|\u2192) ?| to /giu;

/**
 * Tells steps from sizes. Where the sizes are known, a label is a step if it is none of them and
 * leads from one to its neighbor; otherwise labels are steps if all are and they follow on one
 * another, or if they go on from a single plain size. Throws InputError `base-missing` or `size-unknown`
 * for steps that cannot be counted, and for labels that may as well be sizes, such as `X-L` beside `L`.
 */
export function sizeHeads(
  labels: readonly string[],
  known: readonly string[] | undefined,
  base: string | undefined,
  file: string,
): SizeHeads {
  const sizes = known ?? chained(labels, base) ?? mixed(labels, file);
  if (sizes === undefined) return { sizes: labels, stepOf: () => undefined };
  const stepOf = ({ text, place }: TypedCell): StepSize | undefined => {
    if (sizes.includes(text)) return undefined;
    const step = splits(text).find(({ from, to }) => sizes.includes(from) && sizes.includes(to));
    if (step === undefined) return undefined;
    const [from, to] = [sizes.indexOf(step.from), sizes.indexOf(step.to)];
    const at = base === undefined ? -1 : sizes.indexOf(base);
    if (at < 0) {
      throw new InputError(base === undefined ? 'base-missing' : 'size-unknown', {
        what: 'steps count from the base size, and the sheet has none that is known',
        allowed: `a line such as "# base: ${step.from}" with one of ${sizes.join(', ')}`,
        got: base ?? '',
        place: { file },
      });
    }
    if (Math.abs(from - to) !== 1) {
      throw new InputError('size-unknown', {
        what: 'a step does not lead from a size to its neighbor',
        allowed: `neighbors among ${sizes.join(', ')}`,
        got: text,
        place,
      });
    }
    const reversed = Math.abs(to - at) < Math.abs(from - at);
    return { size: reversed ? step.from : step.to, reversed };
  };
  return { sizes, stepOf };
}

function splits(label: string): readonly Step[] {
  const text = withPlainHyphens(label);
  return [...text.matchAll(BETWEEN)]
    .map(({ 0: mark, index }) => ({
      from: text.slice(0, index).trim(),
      to: text.slice(index + mark.length).trim(),
    }))
    .filter(({ from, to }) => from !== '' && to !== '' && from !== to);
}

/**
 * The sizes through which the labels lead, each a step that goes on where another ends; undefined if
 * they are no such steps, or if the base is one of the labels.
 */
function chained(
  labels: readonly string[],
  base: string | undefined,
): readonly string[] | undefined {
  if (base !== undefined && labels.includes(base)) return undefined;
  const steps = labels.flatMap((label) => {
    const [step, ...others] = splits(label);
    return step === undefined || others.length > 0 ? [] : [step];
  });
  const [first, ...rest] = steps;
  if (first === undefined || steps.length < labels.length) return undefined;
  const sizes = [first.from, first.to];
  // Steps may stand in any order, from the base outward or from one end to the other.
  let left: readonly Step[] = rest;
  for (let before = -1; before !== left.length;) {
    before = left.length;
    left = left.filter((step) => !joins(sizes, step));
  }
  const isPath = left.length === 0 && new Set(sizes).size === sizes.length;
  const isTold = rest.length > 0 || (base !== undefined && sizes.includes(base));
  return isPath && isTold ? sizes : undefined;
}

/** What sizes are called that steps lead between; `X`, `Tall` or `Long` beside a hyphen are parts of a name. */
const PLAIN_NAME = /^(?:\d+|\d?X*[SL]|M|small|medium|large)$/iu;

/**
 * The sizes of labels of which one is plain, as the base may be, and the others are steps that go on from
 * it; undefined if no label goes on, so that labels such as `36-38` beside each other are sizes. Throws
 * InputError `size-unknown` for a label that goes on and may be the name of a size.
 */
function mixed(labels: readonly string[], file: string): readonly string[] | undefined {
  const plain = labels.filter((label) => splits(label).length === 0);
  const sizes = [...plain];
  let left = labels.filter((label) => !plain.includes(label));
  if (sizes.length === 0) return undefined;
  for (let count = -1; count !== left.length;) {
    count = left.length;
    left = left.filter((label) => {
      const steps = splits(label);
      const step = steps.find(
        ({ from, to }) =>
          (sizes.includes(from) && sizes.includes(to)) || joins(sizes, { from, to }),
      );
      if (step === undefined) return true;
      if (plain.length > 1 || ![step.from, step.to].every((name) => PLAIN_NAME.test(name)))
        refuseDoubted(label, step, plain, file);
      return false;
    });
  }
  return plain.length + left.length === labels.length ? undefined : [...sizes, ...left];
}

function refuseDoubted(label: string, { from, to }: Step, plain: readonly string[], file: string) {
  throw new InputError('size-unknown', {
    what: `a column may be a size of its own or the step from ${from} to ${to}`,
    allowed: `a line "# sizes: ${[...plain, label].join(', ')}" where it is a size; columns that all are steps, or none, where it is a step`,
    got: label,
    place: { file },
  });
}

/** Puts a step on to whichever end of the sizes it leads from or to; false if it does to neither. */
function joins(sizes: string[], { from, to }: Step): boolean {
  const [start, end] = [sizes[0], sizes.at(-1)];
  if (from === end || to === end) sizes.push(from === end ? to : from);
  else if (from === start || to === start) sizes.unshift(from === start ? to : from);
  else return false;
  return true;
}
