/**
 * The whole waist as it is sewn: darts closed, front and back joined at the side. Every dart may run
 * on smoothly and the waist between them still wave, so the edge is looked at from end to end.
 */
import type { Bends } from '../geometry/bends';
import { bendsOf } from '../geometry/bends';
import type { Point } from '../geometry/point';
import { add, cross, dot, point, subtract, unit } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { movedSegment, reversed, segmentTangent } from '../geometry/segment';
import type { GradedPattern, SizedPattern } from '../grade/graded-pattern';
import { closeDarts } from '../pattern/closed-darts';
import type { Piece } from '../pattern/piece';
import { panelsOf } from '../pattern/piece';
import { EDGE_TURN, WAIST_TURNS_BACK, WAIST_WAVE } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength, trimmed } from '../units';
import type { Finding } from './finding';
import { found } from './finding';

const SOURCE = 'common practice, no source: the waist is trued with the darts closed';

/**
 * Two findings for each size, turning and wave, which warn where the closed waist has a corner,
 * turns back or waves; none for a skirt whose panels are not a front and a back.
 */
export function checkClosedWaist(range: GradedPattern, display: LengthDisplay): Finding[] {
  return range.sizes.flatMap((size) => {
    const [front, back, ...others] = panelsOf(size.pieces);
    if (front === undefined || back === undefined || others.length > 0) return [];
    const bends = bendsOf(closedWaist(front, back));
    return [turning(size, bends), waving(size, bends, display)];
  });
}

/**
 * From center front over the side to center back. The back is laid as it is sewn, mirrored, and
 * turned until its side runs in the direction of the front's where they start.
 */
function closedWaist(front: Piece, back: Piece): readonly Segment[] {
  const { waist, side } = closeDarts(front);
  const other = closeDarts(back);
  const mirrored = (segment: Segment): Segment => movedSegment(segment, ({ x, y }) => point(-x, y));
  const otherSide = mirrored(other.side);
  const [down, otherDown] = [side, otherSide].map((segment) => unit(segmentTangent(segment, 0)));
  if (down === undefined || otherDown === undefined) return waist;
  const [cos, sin] = [dot(otherDown, down), cross(otherDown, down)];
  const beside = (p: Point): Point => {
    const { x, y } = subtract(p, otherSide.from);
    return add(side.from, point(cos * x - sin * y, sin * x + cos * y));
  };
  return [
    ...waist,
    ...other.waist.toReversed().map((segment) => movedSegment(reversed(mirrored(segment)), beside)),
  ];
}

function turning(size: SizedPattern, { corners, turnBack }: Bends): Finding {
  const corner = Math.max(0, ...corners);
  const isBent = corner > EDGE_TURN;
  const held = !isBent && turnBack <= WAIST_TURNS_BACK;
  return {
    severity: held ? 'ok' : 'warning',
    check: 'closed-waist',
    size: size.label,
    piece: 'front, back',
    subject: isBent ? 'corner' : 'direction',
    quantity: 'angle',
    measured: isBent ? corner : turnBack,
    expected: 0,
    tolerance: isBent ? EDGE_TURN : WAIST_TURNS_BACK,
    source: SOURCE,
    message: isBent
      ? `with darts closed and sides joined the waist has a corner of ${trimmed(corner, 1)} ` +
        'degrees: fold the darts, join the sides and true the waist by hand'
      : `with darts closed and sides joined the waist turns back by ${trimmed(turnBack, 1)} ` +
        `degrees${held ? '' : ': fold the darts and true it by hand'}`,
  };
}

function waving(size: SizedPattern, { wave }: Bends, display: LengthDisplay): Finding {
  const held = wave <= WAIST_WAVE;
  return found({
    severity: held ? 'ok' : 'warning',
    check: 'closed-waist',
    size: size.label,
    piece: 'front, back',
    subject: 'wave',
    measured: wave,
    expected: 0,
    tolerance: WAIST_WAVE,
    source: SOURCE,
    message:
      `with darts closed and sides joined the waist waves by ${showLength(wave, display)}` +
      (held ? '' : ': fold the darts and true it by hand'),
  });
}
