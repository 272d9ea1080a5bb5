/** The slips that are looked for, the likelier first where two explain a sheet equally well. */
import { roundTo } from '../../grade/rounding';
import type { LengthUnit } from '../../units';
import {
  CENTIMETERS_PER_INCH,
  fromMillimeters,
  inchFraction,
  toMillimeters,
  trimmed,
} from '../../units';
import type { AnswerKey } from './answer-key';
import { addedUp, asSteps } from '../../rule-sheet/steps';
import { breakSlips } from './break-slips';
import type { Slip } from './slip';

type Distort = Slip['distort'];

const WAIST = 'waist_girth';
const HIP = 'hip_girth';

/** Moves that a girth has no part in are not divided, so no wrong share of them can be taken. */
function shareOf(factor: number): Distort {
  return (moves, { point, axis }) =>
    [WAIST, HIP].some((girth) => (point.slopes[axis].get(girth) ?? 0) !== 0)
      ? moves.map((move) => move * factor)
      : undefined;
}

/** The increments of another girth times the slope of the right one. */
function taken(wanted: string, used: string): Distort {
  return (moves, { key, point, axis }) => {
    const slope = point.slopes[axis].get(wanted);
    const [right, wrong] = [key.increments.get(wanted), key.increments.get(used)];
    if (slope === undefined || right === undefined || wrong === undefined) return undefined;
    return moves.map((move, i) => move + slope * ((wrong[i] ?? NaN) - (right[i] ?? NaN)));
  };
}

function scaled(factor: number): Distort {
  return (moves) => moves.map((move) => move * factor);
}

function roundedSteps(step: number): Distort {
  return (moves, { key }) =>
    addedUp(
      asSteps(moves, key.base).map((move) => roundTo(move, step)),
      key.base,
    );
}

function still(role: 'tip' | 'other'): Distort {
  return (moves, { point }) =>
    (point.role === 'tip') === (role === 'tip') ? moves.map(() => 0) : undefined;
}

const unchanged: Distort = (moves) => moves;

/** Rulers people round to, the finest first. */
const RULERS: Readonly<Record<LengthUnit, readonly number[]>> = {
  in: [1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2],
  cm: [0.05, 0.1, 0.2, 0.25, 0.5, 1],
  mm: [0.5, 1, 2, 2.5, 5, 10],
};

const slip = (
  kind: string,
  stage: Slip['stage'],
  words: string,
  advice: string,
  distort: Distort,
  particulars = '',
): Slip => ({
  id: particulars === '' ? kind : `${kind} ${particulars}`,
  kind,
  stage,
  words,
  advice,
  distort,
});

/** Slips of units, signs, columns, shares and girths. */
const MISREAD: readonly Slip[] = [
  slip(
    'form',
    'form',
    'steps and moves exchanged: a step from the neighbor where the whole move from the base belongs, or the reverse',
    'moves are counted from the base size; steps from the neighbor must be added up from there',
    unchanged,
  ),
  slip(
    'centimeters',
    'unit',
    'inches read as centimeters: every number is 2.54 times too small',
    'read the unit of the chart before the numbers',
    scaled(1 / CENTIMETERS_PER_INCH),
  ),
  slip(
    'inches',
    'unit',
    'centimeters written where inches belong: every number is 2.54 times too large',
    'divide centimeters by 2.54 before they go into a sheet in inches',
    scaled(CENTIMETERS_PER_INCH),
  ),
  slip(
    'sign',
    'sign',
    'sign turned: the point moves the other way',
    'larger sizes move away from the zero, smaller ones toward it; y is positive toward the hem',
    scaled(-1),
  ),
  slip(
    'swap',
    'place',
    'x and y swapped: dx stands in the column of dy',
    'dx runs along the waist, dy along the center line',
    unchanged,
  ),
  slip(
    'whole',
    'share',
    'whole step instead of a quarter: four times too far',
    'a girth goes round two fronts and two backs: each quarter takes a fourth of the step',
    shareOf(4),
  ),
  slip(
    'half',
    'share',
    'half instead of a quarter (at a dart, a quarter instead of an eighth): twice too far',
    'halve the girth step for front and back together, and once more for one panel',
    shareOf(2),
  ),
  slip(
    'hip-for-waist',
    'girth',
    'hip used for waist',
    'points of the waist edge take the steps of the waist',
    taken(WAIST, HIP),
  ),
  slip(
    'waist-for-hip',
    'girth',
    'waist used for hip',
    'the side takes the steps of the hip from the hip line down',
    taken(HIP, WAIST),
  ),
];

/** Points left where they are. */
const UNMOVED: readonly Slip[] = [
  slip(
    'dart-tip',
    'still',
    'a dart leg moved without its tip',
    'legs and tip of a dart move together, or the dart leans and its legs differ',
    still('tip'),
  ),
  slip(
    'still',
    'still',
    'not moved although its measurement grows',
    'follow the measurement that the point is drawn from',
    still('other'),
  ),
];

/** Rounding step by step, and by a ruler that is coarser than the tolerance in mm. */
function rulerSlips(unit: LengthUnit, tolerance: number): readonly Slip[] {
  return [
    ...RULERS[unit].map((length) => {
      const ruler = shownRuler(length, unit);
      return slip(
        'rounded-steps',
        'rounding',
        `rounded per step to ${ruler} instead of cumulatively`,
        'add the exact steps up first and round the sum once, then no error can grow',
        roundedSteps(toMillimeters(length, unit)),
        ruler,
      );
    }),
    // A ruler that stays within the tolerance makes no cell wrong.
    ...RULERS[unit]
      .filter((length) => toMillimeters(length, unit) / 2 > tolerance)
      .map((length) => {
        const ruler = shownRuler(length, unit);
        return slip(
          'coarse',
          'rounding',
          `rounded to ${ruler}, which is coarser than the tolerance allows`,
          'use a finer ruler, or assess with a wider tolerance',
          (moves) => moves.map((move) => roundTo(move, toMillimeters(length, unit))),
          ruler,
        );
      }),
  ];
}

/** All slips for a sheet in `unit` marked against `key`; `tolerance` in mm. */
export function slipsFor(key: AnswerKey, unit: LengthUnit, tolerance: number): readonly Slip[] {
  return [...MISREAD, ...breakSlips(key), ...UNMOVED, ...rulerSlips(unit, tolerance)];
}

function shownRuler(length: number, unit: LengthUnit): string {
  const mm = toMillimeters(length, unit);
  return unit === 'in'
    ? `${inchFraction(mm)} in`
    : `${trimmed(fromMillimeters(mm, unit), 2)} ${unit}`;
}
