/** The wrong side of a size break: one step taken as large as its neighbor. */
import { SAME_STEP } from '../../tolerance';
import type { AnswerKey } from './answer-key';
import type { Slip } from './slip';

/**
 * One slip for each step that a neighboring step may be mistaken for: the step before it (the break
 * comes too late) or the one after it (too early). Only where a measurement breaks by more than
 * SAME_STEP.
 */
export function breakSlips(key: AnswerKey): readonly Slip[] {
  const intervals = key.sizes.slice(1).map((_, i) => i);
  return [
    ...intervals.flatMap((i) =>
      [i - 1, i + 1]
        .filter((other) => intervals.includes(other) && breaksBetween(key, i, other))
        .map((other) => breakSlip(key, i, other)),
    ),
    ...intervals
      .filter((i) => i > 0 && breaksBetween(key, i - 1, i))
      .flatMap((i) => [
        // One step alone is the wrong side of the break.
        ...(i < intervals.length - 1 ? [neverBreaks(key, i, 'after')] : []),
        ...(i > 1 ? [neverBreaks(key, i, 'before')] : []),
      ]),
  ];
}

/** A break that is not made at all: all steps on one side of it are as large as the last of the other. */
function neverBreaks({ sizes }: AnswerKey, i: number, side: 'after' | 'before'): Slip {
  const kept = side === 'after' ? i - 1 : i;
  const name = (step: number): string => `${sizes[step] ?? ''}-${sizes[step + 1] ?? ''}`;
  return {
    id: `break-never ${side} ${name(kept)}`,
    kind: 'break-never',
    stage: 'break',
    words:
      `a size break left out: every step ${side} ${name(kept)} is taken as large as that one, ` +
      `though the chart changes at ${sizes[i] ?? ''}`,
    advice: 'read the step between every two sizes of the chart before writing a row',
    distort: (moves, { key: { base } }) => {
      const step = growth(moves, kept);
      const made = moves.map((move, size) =>
        side === 'after'
          ? size > i
            ? (moves[i] ?? NaN) + (size - i) * step
            : move
          : size < i
            ? (moves[i] ?? NaN) - (i - size) * step
            : move,
      );
      // Seen from the base again.
      return made.map((move) => move - (made[base] ?? NaN));
    },
  };
}

function breaksBetween({ increments }: AnswerKey, a: number, b: number): boolean {
  return [...increments.values()].some(
    (moves) => Math.abs(growth(moves, a) - growth(moves, b)) > SAME_STEP / 2,
  );
}

/** Step `i` leads from size `i` to size `i + 1`. */
function growth(moves: readonly number[], i: number): number {
  return (moves[i + 1] ?? NaN) - (moves[i] ?? NaN);
}

function breakSlip({ sizes }: AnswerKey, i: number, other: number): Slip {
  const name = (step: number): string => `${sizes[step] ?? ''}-${sizes[step + 1] ?? ''}`;
  const late = other < i;
  return {
    id: `break ${name(i)} as ${name(other)}`,
    kind: 'break',
    stage: 'break',
    words:
      `wrong side of a size break: the step ${name(i)} is taken as large as ${name(other)}, ` +
      `so the break comes one size too ${late ? 'late' : 'early'}`,
    advice: 'a step belongs to the two sizes that it joins: subtract the smaller from the larger',
    distort: (moves, { key: { base } }) => {
      const change = growth(moves, other) - growth(moves, i);
      // All sizes beyond the step, seen from the base, carry the difference with them.
      return moves.map((move, size) => {
        if (base <= i) return size > i ? move + change : move;
        return size <= i ? move - change : move;
      });
    },
  };
}
