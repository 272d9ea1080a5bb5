/** The stack point: the point of each piece on which all sizes lie, and the zero of its rules. */
import { subtract } from '../geometry/point';
import type { Piece, PiecePlan } from '../pattern/piece';
import { pointOf } from '../pattern/piece';
import { meantName } from '../table/name-match';

/** The default: center line at the waist. */
export const CENTER_WAIST = 'center_waist';

/**
 * The point of this name, which every panel has, or without panels any piece. Throws InputError
 * `point-unknown` naming those there are. An empty name stacks nothing and is always right.
 */
export function stackPointNamed(plans: readonly PiecePlan[], name: string): string {
  if (name === '') return '';
  const panels = plans.filter((plan) => plan.part === 'panel');
  const known =
    panels.length > 0
      ? (panels[0]?.pointNames ?? []).filter(
          (own) => panels.every(({ index }) => index.has(own)) && !panels.some(isToAlter(own)),
        )
      : plans.flatMap(({ pointNames, handles }) => pointNames.filter((own) => !handles.has(own)));
  return meantName({ text: name.trim(), place: { field: 'stack' } }, [...new Set(known)], {
    code: 'point-unknown',
    what:
      panels.length > 0
        ? 'the sizes cannot be stacked on a point that not all panels have'
        : 'no piece has this point to stack its sizes on',
  });
}

/** Where a skirt is lengthened or shortened nobody stacks its sizes. */
function isToAlter(point: string): (plan: PiecePlan) => boolean {
  return ({ marks }) =>
    marks.some(
      ({ name, through }) =>
        (name === 'length-line' || name === 'hip-depth-line') && through.includes(point),
    );
}

/**
 * The piece moved, not turned, so that its stack point is zero. A piece without such a point, such
 * as a waistband, keeps the zero it was made with.
 */
export function stackOn(piece: Piece, name: string): Piece {
  if (!piece.plan.index.has(name)) return piece;
  const zero = pointOf(piece, name);
  if (zero.x === 0 && zero.y === 0) return piece;
  return { plan: piece.plan, points: piece.points.map((p) => subtract(p, zero)) };
}
