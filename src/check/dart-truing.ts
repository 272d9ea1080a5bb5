/** Darts as they are sewn: the edge smooth over the closed dart, the axis kept, the fold caught in the seam. */
import { present } from '../lists/present';
import type { Point } from '../geometry/point';
import { add, angleBetween, mirroredIn, scale, subtract, unit } from '../geometry/point';
import { segmentTangent } from '../geometry/segment';
import type { GradedPattern, SizedPattern } from '../grade/graded-pattern';
import type { DartEdge, Piece } from '../pattern/piece';
import { edgeSegments, pointOf } from '../pattern/piece';
import { AXIS_TURN, DART_FOLD, EDGE_TURN } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength, trimmed } from '../units';
import type { Finding } from './finding';
import { found } from './finding';

const COMMON_PRACTICE = 'common practice, no source';

/**
 * Findings for each dart of each size: an edge that turns over the closed dart and an axis that leans
 * warn, a fold that misses the seam fails. Only panels have a finding of the axis, since the tip of a
 * bodice's dart may follow the bust and its legs the side.
 */
export function checkDartTruing(range: GradedPattern, display: LengthDisplay): Finding[] {
  const base = range.sizes[range.rules.base]?.pieces ?? [];
  return range.sizes.flatMap((size) =>
    size.pieces.flatMap((piece, p) =>
      piece.plan.darts.flatMap((dart) =>
        present([
          closedEdge(size, piece, dart),
          piece.plan.part === 'panel' && axis(size, piece, dart, base[p] as Piece),
          fold(size, piece, dart, DART_FOLD, display),
        ]),
      ),
    ),
  );
}

/**
 * With the dart closed its edge must run on: the corners at its legs add up to 180 degrees. Nothing of
 * a dart between two edges, which may meet in a corner.
 */
function closedEdge(size: SizedPattern, piece: Piece, dart: DartEdge): Finding | undefined {
  const { outline } = piece.plan;
  const at = outline.indexOf(dart);
  const before = outline.at(at - 1);
  const after = outline[(at + 1) % outline.length];
  if (before?.seam !== after?.seam || before?.kind === 'dart' || after?.kind === 'dart')
    return undefined;
  const tip = pointOf(piece, dart.tip);
  const arriving = before && edgeSegments(piece, before).at(-1);
  const leaving = after && edgeSegments(piece, after)[0];
  const inner = arriving
    ? angleBetween(scale(segmentTangent(arriving, 1), -1), subtract(tip, pointOf(piece, dart.from)))
    : NaN;
  const outer = leaving
    ? angleBetween(segmentTangent(leaving, 0), subtract(tip, pointOf(piece, dart.to)))
    : NaN;
  const measured = inner + outer;
  const held = Math.abs(measured - 180) <= EDGE_TURN;
  const edge = `the edge ${dart.seam}`;
  return {
    severity: held ? 'ok' : 'warning',
    check: 'edge-over-dart',
    size: size.label,
    piece: piece.plan.name,
    subject: dart.name,
    quantity: 'angle',
    measured,
    expected: 180,
    tolerance: EDGE_TURN,
    source: `${COMMON_PRACTICE}: an edge is smooth with the dart closed`,
    message: held
      ? `with the dart closed ${edge} runs on smoothly`
      : `with the dart closed ${edge} turns by ${trimmed(Math.abs(measured - 180), 1)} degrees: ` +
        'fold the dart and true it by hand',
  };
}

function axisOf(piece: Piece, dart: DartEdge): Point {
  const mouth = scale(add(pointOf(piece, dart.from), pointOf(piece, dart.to)), 0.5);
  return subtract(pointOf(piece, dart.tip), mouth);
}

/** Legs and tip move together, so that the axis keeps the direction it has in the base size. */
function axis(size: SizedPattern, piece: Piece, dart: DartEdge, base: Piece): Finding {
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
  size: SizedPattern,
  piece: Piece,
  dart: DartEdge,
  tolerance: number,
  display: LengthDisplay,
): Finding | undefined {
  const mark = piece.plan.marks.find(
    ({ name, through }) => name === 'dart-fold' && through[0] === dart.from,
  );
  if (mark === undefined) return undefined;
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
  return found({
    severity: held ? 'ok' : 'fail',
    check: 'dart-fold',
    size: size.label,
    piece: piece.plan.name,
    subject: dart.name,
    measured,
    expected: 0,
    tolerance,
    source: 'Government of India, CITS Dress Making: the dart is folded and cut through',
    message: `the fold of the pressed dart ends ${showLength(measured, display)} from the waist`,
  });
}
