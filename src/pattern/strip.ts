/** The sewing line of a piece stretch by stretch, each with the allowance outside it. */
import { forwardParallel } from '../geometry/forward-parallel';
import type { Point } from '../geometry/point';
import { add, distance, quarterTurn, scale, unit } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { segmentTangent } from '../geometry/segment';
import { SAME_PLACE } from '../tolerance';
import { allowanceAlong, finishOf } from './allowance';
import { dartCap } from './dart-cap';
import type { DartEdge, Edge, EdgeFinish, Piece } from './piece';
import { edgeSegments, pointOf } from './piece';

/** One stretch of the sewing line and what is added outside it. */
export interface Strip {
  readonly seam: string;
  readonly finish: EdgeFinish;
  readonly isFold: boolean;
  /** mm. */
  readonly width: number;
  /** Names of the ends, as far as they are points of the piece. */
  readonly start: string;
  readonly end: string;
  readonly net: Segment;
}

/**
 * The strips of a piece whose outline runs clockwise on paper, in its order. Across the mouth of a
 * dart the sewing line is the dart's cap, pressed as `press_to_side` says, toward the center if it
 * says nothing; in a piece with a `<dart>_fold` point the cap ends there. Edges of no length have
 * no strip.
 */
export function stripsOf(piece: Piece, parameters: ReadonlyMap<string, number>): readonly Strip[] {
  const toSide = (parameters.get('press_to_side') ?? 0) > 0.5;
  return piece.plan.outline.flatMap((edge) => {
    const width = allowanceAlong(piece.plan, edge, parameters);
    return sewingLine(piece, edge, toSide)
      .filter(({ net }) => hasLength(net))
      .map(({ net, start, end }) => ({
        seam: edge.seam,
        finish: finishOf(piece.plan, edge.seam),
        isFold: edge.kind === 'fold',
        width,
        start,
        end,
        net,
      }));
  });
}

type SewnLine = Pick<Strip, 'net' | 'start' | 'end'>;

function sewingLine(piece: Piece, edge: Edge, toSide: boolean): readonly SewnLine[] {
  const { from: start, to: end } = edge;
  if (edge.kind !== 'dart') return edgeSegments(piece, edge).map((net) => ({ net, start, end }));
  const [from, to] = [pointOf(piece, start), pointOf(piece, end)];
  const cap = capOf(piece, edge, toSide);
  const name = `${edge.name}_fold`;
  return [
    { net: { kind: 'line', from, to: cap }, start, end: name },
    { net: { kind: 'line', from: cap, to }, start: name, end },
  ];
}

/** Where the fold of a closed dart ends on the sewing line. */
function capOf(piece: Piece, dart: DartEdge, toSide: boolean): Point {
  const fold = `${dart.name}_fold`;
  if (piece.plan.index.has(fold)) return pointOf(piece, fold);
  // A dart of no width has nothing to fold.
  const [from, to] = [pointOf(piece, dart.from), pointOf(piece, dart.to)];
  if (distance(from, to) <= SAME_PLACE) return from;
  return dartCap(piece, dart, toSide ? 'side' : 'center');
}

function hasLength(segment: Segment): boolean {
  if (distance(segment.from, segment.to) > SAME_PLACE) return true;
  return segment.kind === 'cubic' && distance(segment.from, segment.leave) > SAME_PLACE;
}

/**
 * The parallel of a strip's sewing line to its left, which is outside, end to end. Where the line
 * bends inward at an end, tighter than the allowance is wide, the parallel ends before it folds back.
 */
export function outerEdge({ net, width }: Strip): readonly Segment[] {
  if (width === 0) return [net];
  if (net.kind === 'cubic') return forwardParallel(net, -width);
  const out = scale(quarterTurn(unit(segmentTangent(net, 0))), -width);
  return [{ kind: 'line', from: add(net.from, out), to: add(net.to, out) }];
}
