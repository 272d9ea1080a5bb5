/** Where the wrong numbers of a series start, seen from the base. */
import { EXACT_SLIP, RULE_RIGHT, TENFOLD } from '../../tolerance';
import type { AnswerKey } from './answer-key';
import type { Run } from './explanations';
import { rightValues } from './series';

/** Labels of sizes, and of steps such as `16-18`. */
export interface TroubleStart {
  /** The wrong size next to the base on each side, the smaller side first; the base if it is wrong. */
  readonly labels: readonly string[];
  /** Steps beyond which all sizes are off by one and the same length, so that only it is wrong. */
  readonly steps: readonly string[];
  /** Labels of the sizes whose number is ten times the right one, or a tenth of it: a decimal point. */
  readonly tenfold: readonly string[];
}

/** Where the trouble of wrong cells without a cause starts. */
export function troubleStarts(key: AnswerKey, { series, sizes }: Run): TroubleStart {
  const { sizes: names, base } = key;
  const right = rightValues(key, series);
  const offAt = (i: number): number => (series.given[i] ?? NaN) - (right[i] ?? NaN);
  const starts = [-1, 0, 1].flatMap((side) => {
    const own = sizes.filter((i) => Math.sign(i - base) === side);
    const first = side < 0 ? own.at(-1) : own[0];
    return first === undefined ? [] : [{ side, first }];
  });
  const carried = starts.filter(({ side, first }) => {
    const beyond = names.flatMap((_, i) => (side !== 0 && (i - first) * side > 0 ? [i] : []));
    return (
      series.form === 'move' &&
      beyond.length > 0 &&
      beyond.every((i) => Math.abs(offAt(i) - offAt(first)) <= EXACT_SLIP)
    );
  });
  const isTenfold = (i: number): boolean => {
    const [own, wanted] = [Math.abs(series.given[i] ?? NaN), Math.abs(right[i] ?? NaN)];
    const [least, most] = [Math.min(own, wanted), Math.max(own, wanted)];
    return (
      least > RULE_RIGHT && Math.abs(most / 10 - least) <= Math.min(RULE_RIGHT, least * TENFOLD)
    );
  };
  return {
    tenfold: sizes.filter(isTenfold).map((i) => names[i] ?? ''),
    labels: starts.map(({ first }) => names[first] ?? ''),
    steps: carried.map(({ side, first }) => {
      const [a, b] = [first, first - side].toSorted((one, other) => one - other);
      return `${names[a ?? 0] ?? ''}-${names[b ?? 0] ?? ''}`;
    }),
  };
}
