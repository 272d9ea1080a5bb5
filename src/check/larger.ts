/** Larger sizes must be larger: nothing that makes a size may shrink on the way up. */
import { labelRanks } from '../chart/label-order';
import type { Finding, Quantity } from './finding';

/** Something measured in every size that a larger size has no less of. */
export interface GrowingMeasure {
  readonly piece: string;
  readonly subject: string;
  /** As a sentence says it: `the waist`. */
  readonly name: string;
  readonly quantity: Quantity;
  /** One a size, in the order of the labels. */
  readonly values: readonly number[];
  /** What it may fall by unseen, in the unit of the values. */
  readonly slack: number;
  readonly show: (value: number) => string;
}

/**
 * A failure for each measure that falls over the range, or else for each step in which it falls.
 * The labels tell which size is the larger where they can (8 to 16, S to L), whatever their order;
 * where they cannot, the sizes are taken from small to large, and a finding is but a warning.
 */
export function checkLarger(
  labels: readonly string[],
  measures: readonly GrowingMeasure[],
): Finding[] {
  const ranks = labelRanks(labels);
  const severity = ranks === undefined ? 'warning' : 'fail';
  return measures.flatMap((measure) => {
    const sizes = measure.values
      .map((value, i) => ({ size: labels[i] ?? '', value, rank: ranks?.[i] ?? i }))
      .sort((a, b) => a.rank - b.rank);
    return falls(sizes, measure.slack).map(([from, to]): Finding => ({
      severity,
      check: 'larger-is-smaller',
      size: `${from.size}-${to.size}`,
      piece: measure.piece,
      subject: measure.subject,
      quantity: measure.quantity,
      measured: to.value,
      expected: from.value,
      tolerance: measure.slack,
      source: 'common practice, no source',
      message:
        `larger sizes get smaller: from ${from.size} to ${to.size} ${measure.name} falls from ` +
        `${measure.show(from.value)} to ${measure.show(to.value)}`,
    }));
  });
}

interface Sized {
  readonly size: string;
  readonly value: number;
}

/** The whole range if it falls, else its steps that fall. */
function falls(sizes: readonly Sized[], slack: number): (readonly [Sized, Sized])[] {
  const fallen = ([from, to]: readonly [Sized, Sized]) => to.value < from.value - slack;
  const [first, last] = [sizes[0], sizes.at(-1)];
  if (first === undefined || last === undefined) return [];
  if (fallen([first, last])) return [[first, last]];
  return sizes
    .slice(1)
    .map((to, i) => [sizes[i] ?? to, to] as const)
    .filter(fallen);
}
