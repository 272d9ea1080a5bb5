/** The slips that are looked for, the likelier first where two explain a sheet equally well. */
import type { LengthUnit } from '../../units';
import { CENTIMETERS_PER_INCH, UNIT_WORDS, toMillimeters, trimmed } from '../../units';
import type { AnswerKey } from './answer-key';
import { breakSlips } from './break-slips';
import { BASE_MOVED, formSlips } from './form-slips';
import { intakeSlips } from './intake-slips';
import { bothRounds, inUnit, rulerSlips } from './rounding-slips';
import { ROW_HABITS } from './row-habits';
import { rowSlips } from './row-slips';
import type { SeriesName } from './series';
import type { Distort, Slip } from './slip';
import { slip } from './slip';

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

function still(role: 'tip' | 'other'): Distort {
  return (moves, { point }) =>
    (point.role === 'tip') === (role === 'tip') ? moves.map(() => 0) : undefined;
}

const unchanged: Distort = (moves) => moves;

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
    'dx runs from the center to the side, dy along the center line',
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
    'eighth',
    'share',
    'an eighth instead of a quarter (at a dart, half of its share): half as far as it should go',
    'divide the girth step by four for one panel; only what lies in the middle takes half of that',
    shareOf(1 / 2),
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

/** Units that are mixed up in sheets of each unit, centimeters also to the millimeter. */
function mixedUnits(key: AnswerKey, unit: LengthUnit): readonly Slip[] {
  switch (unit) {
    case 'in':
      return [
        ...bothRounds(key, (round) => {
          const distort = inUnit(CENTIMETERS_PER_INCH, toMillimeters(0.1, 'in'), round);
          const written = 'centimeters to the millimeter';
          return unitSlip('inches rounded', written, CENTIMETERS_PER_INCH, unit, distort);
        }),
        unitSlip('millimeters for inches', 'millimeters', 10 * CENTIMETERS_PER_INCH, unit),
      ];
    case 'cm':
      return [unitSlip('millimeters', 'millimeters', 10, unit)];
    case 'mm':
      return [unitSlip('centimeters for millimeters', 'centimeters', 1 / 10, unit)];
  }
}

/** `written` where the unit of the sheet belongs. */
function unitSlip(
  id: string,
  written: string,
  factor: number,
  unit: LengthUnit,
  distort: Distort = scaled(factor),
): Slip {
  return slip(
    id,
    'unit',
    `${written} written where ${UNIT_WORDS[unit]} belong: every number is ${trimmed(factor, 2)} times as large`,
    'write the unit at the head of the sheet, and turn every number into it',
    distort,
  );
}

/** Shares where it is not known what a point is a share of. */
const OUT_OF_PROPORTION: readonly Slip[] = [
  [4, 'whole', 'four times too far'],
  [2, 'half', 'twice too far'],
  [1 / 2, 'eighth', 'half as far as it should go'],
  [1 / 4, 'quarter of it', 'a fourth of how far it should go'],
].map(([factor, kind, words]) =>
  slip(
    String(kind),
    'share',
    `another share: ${words}`,
    'work out how many pieces share what the garment grows by, and which part of it falls to this one',
    scaled(Number(factor)),
  ),
);

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

/** All slips for a sheet in `unit` with these rows, marked against `key`; `tolerance` in mm. */
export function slipsFor(
  key: AnswerKey,
  rows: readonly SeriesName[],
  unit: LengthUnit,
  tolerance: number,
): readonly Slip[] {
  const isProportion = [...key.points.values()].some(
    ({ slopes }) => slopes.x.size + slopes.y.size > 0,
  );
  return [
    ...MISREAD.filter(({ stage }) => isProportion || (stage !== 'share' && stage !== 'girth')),
    ...(isProportion ? [] : OUT_OF_PROPORTION),
    ...mixedUnits(key, unit),
    ...breakSlips(key),
    ...UNMOVED,
    ...rulerSlips(key, unit, tolerance),
    ...rowSlips(key, rows),
    ...formSlips(key),
    ...intakeSlips(unit),
    ...ROW_HABITS,
    BASE_MOVED,
  ];
}
