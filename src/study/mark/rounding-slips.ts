/** Slips of rounding: step by step, by a coarse ruler, and with halves up or away from zero. */
import { roundTo } from '../../grade/rounding';
import { addedUp, asSteps } from '../../rule-sheet/moves-and-steps';
import { ARITHMETIC, SAME_PLACE } from '../../tolerance';
import type { LengthUnit } from '../../units';
import { fromMillimeters, inchFraction, toMillimeters, trimmed } from '../../units';
import type { AnswerKey } from './answer-key';
import type { Distort, Slip } from './slip';
import { slip } from './slip';

/** Rulers people round to, the finest first. */
const RULERS: Readonly<Record<LengthUnit, readonly number[]>> = {
  in: [1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2],
  cm: [0.05, 0.1, 0.2, 0.25, 0.5, 1],
  mm: [0.5, 1, 2, 2.5, 5, 10],
};

/** Rounds a length to a whole number of steps, all in mm. */
export type Round = (mm: number, step: number) => number;

/** Halves away from zero, and halves up: people do either, and both are right. */
const ROUNDS: readonly Round[] = [
  roundTo,
  (mm, step) => Math.floor(mm / step + 1 / 2 + ARITHMETIC) * step,
];

function roundedSteps(step: number, round: Round): Distort {
  return (moves, { key }) =>
    addedUp(
      asSteps(moves, key.base).map((move) => round(move, step)),
      key.base,
    );
}

function rounded(step: number, round: Round): Distort {
  return (moves) => moves.map((move) => round(move, step));
}

/** Another unit is written, and rounded to `step` mm. */
export function inUnit(factor: number, step: number, round: Round): Distort {
  return (moves) => moves.map((move) => round(move * factor, step));
}

/** The slip with halves away from zero, and with halves up where that makes other numbers of the key. */
export function bothRounds(key: AnswerKey, make: (round: Round) => Slip): readonly Slip[] {
  const [away, up] = ROUNDS.map(make);
  if (away === undefined || up === undefined) return [];
  const differ = [...key.points.values()].some((point) =>
    (['x', 'y'] as const).some((axis) => {
      const course = { key, point, axis };
      const moves = point.moves[axis];
      const other = up.distort(moves, course);
      return away
        .distort(moves, course)
        ?.some((mm, i) => Math.abs(mm - (other?.[i] ?? NaN)) > SAME_PLACE);
    }),
  );
  return differ ? [away, { ...up, id: `${up.id} up` }] : [away];
}

/** Rounding step by step, and by a ruler that is coarser than the tolerance in mm. */
export function rulerSlips(key: AnswerKey, unit: LengthUnit, tolerance: number): readonly Slip[] {
  const rulers = RULERS[unit].map((length) => ({
    mm: toMillimeters(length, unit),
    ruler: shownRuler(length, unit),
  }));
  return [
    ...rulers.flatMap(({ mm, ruler }) =>
      bothRounds(key, (round) =>
        slip(
          'rounded-steps',
          'rounding',
          `rounded per step to ${ruler} instead of cumulatively`,
          'add the exact steps up first and round the sum once, then no error can grow',
          roundedSteps(mm, round),
          ruler,
        ),
      ),
    ),
    // A ruler that stays within the tolerance makes no cell wrong.
    ...rulers
      .filter(({ mm }) => mm / 2 > tolerance)
      .flatMap(({ mm, ruler }) =>
        bothRounds(key, (round) =>
          slip(
            'coarse',
            'rounding',
            `rounded to ${ruler}, which is coarser than the tolerance allows`,
            'use a finer ruler, or assess with a wider tolerance',
            rounded(mm, round),
            ruler,
          ),
        ),
      ),
  ];
}

function shownRuler(length: number, unit: LengthUnit): string {
  const mm = toMillimeters(length, unit);
  return unit === 'in'
    ? `${inchFraction(mm)} in`
    : `${trimmed(fromMillimeters(mm, unit), 2)} ${unit}`;
}
