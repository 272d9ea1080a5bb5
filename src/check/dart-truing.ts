/** Darts as they are sewn: legs equal, waist smooth over the closed dart, fold caught in the seam. */
import type { Point } from '../geometry/point';
import { add, angleBetween, mirroredIn, scale, subtract, unit } from '../geometry/point';
import { segmentTangent } from '../geometry/segment';
import type { GradedRange, GradedSize } from '../grade/graded-pattern';
import type { DartEdge, Piece } from '../pattern/piece';
import { edgeSegments, panelsOf, pointOf } from '../pattern/piece';
import { legSeverity, dartLegs } from './dart-legs';
import { AXIS_TURN, DART_FOLD, DART_LEGS, WAIST_TURN } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength, trimmed } from '../units';
import type { Finding } from './finding';

const COMMON_PRACTICE = 'common practice, no source';

/**
 * Findings for each dart of each size: legs and fold fail, the closed waist and the axis warn. Legs that
 * only rounding has made unequal are eased in, and count as a seam that differs.
 */
export function checkDartTruing(range: GradedRange, display: LengthDisplay): Finding[] {
  const base = range.sizes[range.rules.base];
  return range.sizes.flatMap((size) =>
    panelsOf(size.pieces).flatMap((piece, p) =>
      piece.plan.darts.flatMap((dart) => [
        legs(size, piece, dart, panelsOf(size.draft)[p] as Piece, display),
        closedWaist(size, piece, dart),
        ...(base === undefined ? [] : [axis(size, piece, dart, panelsOf(base.pieces)[p] as Piece)]),
        ...fold(size, piece, dart, DART_FOLD, display),
      ]),
    ),
  );
}

function legs(
  size: GradedSize,
  piece: Piece,
  dart: DartEdge,
  draft: Piece,
  display: LengthDisplay,
): Finding {
  const [inner, outer] = dartLegs(piece, dart);
  const [draftInner, draftOuter] = dartLegs(draft, dart);
  return {
    severity: legSeverity(inner - outer, draftInner - draftOuter),
    check: 'dart-legs',
    size: size.label,
    piece: piece.plan.name,
    subject: dart.name,
    quantity: 'length',
    measured: inner,
    expected: outer,
    tolerance: DART_LEGS,
    source: 'abc-style.org, straight skirt draft: the two legs are made equal',
    message: `the legs are ${showLength(inner, display)} and ${showLength(outer, display)} long`,
  };
}

/** With the dart closed the waist edge must run on: the corners at its legs add up to 180 degrees. */
function closedWaist(size: GradedSize, piece: Piece, dart: DartEdge): Finding {
  const tip = pointOf(piece, dart.tip);
  const before = piece.plan.outline.find((edge) => edge.to === dart.from);
  const after = piece.plan.outline.find((edge) => edge.from === dart.to);
  const arriving = before && edgeSegments(piece, before).at(-1);
  const leaving = after && edgeSegments(piece, after)[0];
  const inner = arriving
    ? angleBetween(scale(segmentTangent(arriving, 1), -1), subtract(tip, pointOf(piece, dart.from)))
    : NaN;
  const outer = leaving
    ? angleBetween(segmentTangent(leaving, 0), subtract(tip, pointOf(piece, dart.to)))
    : NaN;
  const measured = inner + outer;
  const held = Math.abs(measured - 180) <= WAIST_TURN;
  return {
    severity: held ? 'ok' : 'warning',
    check: 'waist-over-dart',
    size: size.label,
    piece: piece.plan.name,
    subject: dart.name,
    quantity: 'angle',
    measured,
    expected: 180,
    tolerance: WAIST_TURN,
    source: `${COMMON_PRACTICE}: the waist is smooth with the dart closed`,
    message: held
      ? 'with the dart closed the waist runs on smoothly'
      : `with the dart closed the waist turns by ${trimmed(Math.abs(measured - 180), 1)} degrees: ` +
        'fold the dart and true the waist by hand',
  };
}

function axisOf(piece: Piece, dart: DartEdge): Point {
  const mouth = scale(add(pointOf(piece, dart.from), pointOf(piece, dart.to)), 0.5);
  return subtract(pointOf(piece, dart.tip), mouth);
}

/** Legs and tip move together, so that the axis keeps the direction it has in the base size. */
function axis(size: GradedSize, piece: Piece, dart: DartEdge, base: Piece): Finding {
  const measured = angleBetween(axisOf(piece, dart), axisOf(base, dart));
  const held = measured <= AXIS_TURN;
  return {
    severity: held ? 'ok' : 'warning',
    check: 'dart-axis',
    size: size.label,
    piece: piece.plan.name,
    subject: dart.name,
    quantity: 'angle',
    measured,
    expected: 0,
    tolerance: AXIS_TURN,
    source: 'arithmetic: if only the legs moved, the axis would lean more with every size',
    message: held
      ? 'the axis has the direction of the base size'
      : `the axis leans ${trimmed(measured, 2)} degrees from that of the base size`,
  };
}

/**
 * The fold of the closed dart must end on the waist seam: mirrored in the leg on the side to which
 * the dart is pressed, it lies on the waist edge there.
 */
function fold(
  size: GradedSize,
  piece: Piece,
  dart: DartEdge,
  tolerance: number,
  display: LengthDisplay,
): Finding[] {
  const mark = piece.plan.marks.find(
    ({ name, through }) => name === 'dart-fold' && through[0] === dart.from,
  );
  if (mark === undefined) return [];
  const end = pointOf(piece, mark.through[1] ?? '');
  const tip = pointOf(piece, dart.tip);
  const toSide = size.parameters.get('press_to_side') === 1;
  const corner = pointOf(piece, toSide ? dart.to : dart.from);
  const edge = piece.plan.outline.find((e) => (toSide ? e.from === dart.to : e.to === dart.from));
  const segment = edge && edgeSegments(piece, edge)[0];
  const tangent = segment ? unit(segmentTangent(segment, toSide ? 0 : 1)) : { x: NaN, y: NaN };
  const across = subtract(mirroredIn(end, corner, unit(subtract(tip, corner))), corner);
  const measured = Math.abs(across.x * tangent.y - across.y * tangent.x);
  const held = measured <= tolerance;
  return [
    {
      severity: held ? 'ok' : 'fail',
      check: 'dart-fold',
      size: size.label,
      piece: piece.plan.name,
      subject: dart.name,
      quantity: 'length',
      measured,
      expected: 0,
      tolerance,
      source: 'Government of India, CITS Dress Making: the dart is folded and cut through',
      message: `the fold of the pressed dart ends ${showLength(measured, display)} from the waist`,
    },
  ];
}
