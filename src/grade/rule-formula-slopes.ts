/**
 * Slopes of every coordinate by every body measurement, found numerically: the whole draft is made
 * anew on both sides of the base size, with all its truing.
 */
import type { Draft, Drafter } from '../draft/compile-block';
import { InputError } from '../errors';
import type { Piece } from '../pattern/piece';
import { SLOPES_AGREE } from '../tolerance';
import { stackOn } from './stack';

/** mm. Far above what truing leaves (1e-6 mm) and far below what bends a rule. */
const STEP = 1;
/** Where each measurement is probed, in steps from the base. */
const PROBES = [-2, -1, 1, 2] as const;

/** Slopes of one coordinate by measurement, mm per mm; those that do not differ from zero are absent. */
export type Slopes = ReadonlyMap<string, number>;

/**
 * Probes the draft around the base size, whose measurements are `body` and whose draft is `base`.
 * Gives the slopes of a coordinate, with pieces and points numbered as in the plans and laid on the
 * stack point; undefined where it is not smooth at the base size, or where the style does not allow
 * a body beside it.
 */
export function probeSlopes(
  drafter: Drafter,
  body: readonly number[],
  base: Draft,
  stackPoint: string,
): (piece: number, point: number, axis: 'x' | 'y') => Slopes | undefined {
  const stacked = ({ pieces }: Draft): readonly Piece[] =>
    pieces.map((piece) => stackOn(piece, stackPoint));
  const atBase = stacked(base);
  const probes = drafter.measurements.map((name, k) => ({
    name,
    drafts: PROBES.map((steps) => {
      const moved = body.map((length, i) => (i === k ? length + steps * STEP : length));
      return stacked(drafted(drafter, moved, base) ?? { ...base, pieces: [] });
    }),
  }));
  return (piece, point, axis) => {
    const at = (pieces: readonly Piece[]): number => pieces[piece]?.points[point]?.[axis] ?? NaN;
    const slopes = new Map<string, number>();
    for (const { name, drafts } of probes) {
      const slope = slopeOf(drafts.map(at), at(atBase));
      if (slope === undefined) return undefined;
      if (Math.abs(slope) >= SLOPES_AGREE) slopes.set(name, slope);
    }
    return slopes;
  };
}

/** Undefined where the probe leaves what the style allows. */
function drafted(drafter: Drafter, body: readonly number[], base: Draft): Draft | undefined {
  try {
    return drafter.draft(body, 'a probe beside the base', base);
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

/**
 * Central differences over one and two steps must agree with each other and with what each side
 * alone gives, or there is a kink or a jump; then both together give the slope.
 */
function slopeOf(probes: readonly number[], middle: number): number | undefined {
  const [farBelow = NaN, below = NaN, above = NaN, farAbove = NaN] = probes;
  const near = (above - below) / (2 * STEP);
  const far = (farAbove - farBelow) / (4 * STEP);
  const right = (4 * above - farAbove - 3 * middle) / (2 * STEP);
  const left = (3 * middle - 4 * below + farBelow) / (2 * STEP);
  const all = [near, far, right, left];
  // Written so that a slope that is no number disagrees.
  return Math.max(...all) - Math.min(...all) <= SLOPES_AGREE ? (4 * near - far) / 3 : undefined;
}
