/** Corners: square at the center lines, and front and back together straight across the side. */
import type { GradedRange, GradedSize } from '../grade/graded-range';
import { cornerAngle } from '../measure/corner';
import { panelsOf } from '../pattern/piece';
import { SQUARE } from '../tolerance';
import { trimmed } from '../units';
import type { Finding } from './finding';

const SOURCE = 'common practice, no source: waist and hem run on across fold and side seam';

const CENTERS = ['center_waist', 'center_hem'] as const;
const SIDES = [
  { name: 'side_waist', edge: 'waist' },
  { name: 'side_hem', edge: 'hem' },
] as const;

/**
 * A finding, in degrees, for each such corner of each size; one that is off warns, since it sews
 * but shows.
 */
export function checkSquareCorners(range: GradedRange): Finding[] {
  return range.sizes.flatMap((size) => [...centers(size), ...sides(size)]);
}

function centers(size: GradedSize): Finding[] {
  return panelsOf(size.pieces).flatMap((piece) =>
    CENTERS.map((name): Finding => {
      const measured = cornerAngle(piece, name);
      // Where a vent goes on beyond the center line, so does the hem.
      const expected = name === 'center_hem' && piece.plan.index.has('vent_hem') ? 180 : 90;
      const held = Math.abs(measured - expected) <= SQUARE;
      return {
        severity: held ? 'ok' : 'warning',
        check: 'square-at-center',
        size: size.label,
        piece: piece.plan.name,
        subject: name,
        quantity: 'angle',
        measured,
        expected,
        tolerance: SQUARE,
        source: SOURCE,
        message: held
          ? `the corner is ${expected === 90 ? 'square' : 'straight'}`
          : `the corner has ${trimmed(measured, 1)} degrees instead of ${expected}, ` +
            'which makes a point or a dip',
      };
    }),
  );
}

function sides(size: GradedSize): Finding[] {
  return SIDES.map(({ name, edge }): Finding => {
    const angles = panelsOf(size.pieces).map((piece) => cornerAngle(piece, name));
    const measured = angles.reduce((sum, angle) => sum + angle, 0);
    const held = Math.abs(measured - 180) <= 2 * SQUARE;
    return {
      severity: held ? 'ok' : 'warning',
      check: 'straight-across-side',
      size: size.label,
      piece: 'front, back',
      subject: name,
      quantity: 'angle',
      measured,
      expected: 180,
      tolerance: 2 * SQUARE,
      source: SOURCE,
      message: held
        ? `front and back corners add up to ${trimmed(measured, 1)} degrees`
        : `front and back corners add up to ${trimmed(measured, 1)} degrees instead of 180: ` +
          `with the side seam sewn, true the ${edge} across it by hand`,
    };
  });
}
