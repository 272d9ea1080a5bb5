/** The pieces of a given pattern ready to cut: by the cut line that it gives, or by its allowances. */
import { nearestOn } from '../geometry/nearest';
import type { Point } from '../geometry/point';
import { cross, distance, quarterTurn, scale, subtract, unit } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { segmentAt, segmentTangent } from '../geometry/segment';
import { allowanceParameter } from '../pattern/allowance';
import { cutLine } from '../pattern/cut-line';
import type { CutPiece, Notch } from '../pattern/cut-piece';
import { notchAt } from '../pattern/cut-pieces';
import { grainline } from '../pattern/grainline';
import type { Edge, Piece } from '../pattern/piece';
import { cutLineSegments, edgeSegments, outlineSegments, pointOf } from '../pattern/piece';
import { stripsOf } from '../pattern/strip';
import type { GivenPiece } from './pattern';

/**
 * The pieces of one size, in the order of the pattern; one without allowances is cut along its
 * outline. Undefined if no piece has a cut line or an allowance.
 */
export function cutGiven(
  given: readonly GivenPiece[],
  pieces: readonly Piece[],
): readonly CutPiece[] | undefined {
  const hasCut = given.some(
    ({ base, allowances }) => base.plan.cutLine !== undefined || allowances.size > 0,
  );
  if (!hasCut) return undefined;
  return pieces.map((piece, i) => cutOf(piece, given[i]?.allowances ?? new Map(), i + 1));
}

/** The allowances of a piece as parameters of its strips. */
export function allowanceParameters(
  allowances: ReadonlyMap<string, number>,
): ReadonlyMap<string, number> {
  return new Map([...allowances].map(([edge, mm]) => [allowanceParameter('piece', edge), mm]));
}

/** The piece with an outline that runs clockwise on paper, as cut lines are made. */
export function clockwise(piece: Piece): Piece {
  const area = outlineSegments(piece).reduce((sum, { from, to }) => sum + cross(from, to), 0);
  if (area >= 0) return piece;
  const outline = piece.plan.outline.toReversed().map(turnedRound);
  return { ...piece, plan: { ...piece.plan, outline } };
}

function turnedRound(edge: Edge): Edge {
  const ends = { from: edge.to, to: edge.from };
  return edge.kind === 'cubic'
    ? { ...edge, ...ends, leave: edge.arrive, arrive: edge.leave }
    : { ...edge, ...ends };
}

/** mm in which the cut line is looked for outside the outline where the pattern gives it as a line. */
const WIDEST = 200;

function cutOf(piece: Piece, allowances: ReadonlyMap<string, number>, number: number): CutPiece {
  const { plan } = piece;
  const net = outlineSegments(piece);
  const { cut, corners } = cutLineOf(piece, net, allowances);
  const widest = plan.cutLine ? WIDEST : Math.max(0, ...allowances.values());
  const at = (name: string): Point => corners.get(name) ?? pointOf(piece, name);
  const grain = plan.marks.find(({ name }) => name === 'grainline');
  const [from, to] = (grain?.through ?? []).map((name) => pointOf(piece, name));
  const fold = [...(plan.cutLine ?? []), ...plan.outline].find(({ kind }) => kind === 'fold');
  return {
    piece,
    number,
    net,
    cut,
    corners,
    notches: (plan.notches ?? []).map((name) => notchOf(piece, name, net, cut, widest)),
    drillHoles: (plan.drillHoles ?? []).map((name) => pointOf(piece, name)),
    grain: from && to ? { from, to } : grainline(net, 'down'),
    fold: fold && { from: at(fold.from), to: at(fold.to) },
    allowances,
  };
}

function cutLineOf(
  piece: Piece,
  net: readonly Segment[],
  allowances: ReadonlyMap<string, number>,
): { readonly cut: readonly Segment[]; readonly corners: CutPiece['corners'] } {
  const given = cutLineSegments(piece);
  if (given !== undefined) return { cut: given, corners: new Map() };
  if (allowances.size === 0) return { cut: net, corners: new Map() };
  const strips = stripsOf(clockwise(piece), allowanceParameters(allowances));
  const { segments: cut, corners } = cutLine(strips, 0);
  return { cut, corners };
}

/** A notch of the outline reaches out to the cut line, one of the cut line in toward the outline. */
function notchOf(
  piece: Piece,
  name: string,
  net: readonly Segment[],
  cut: readonly Segment[],
  widest: number,
): Notch {
  const marks = piece.plan.doubleNotches?.has(name) ? 2 : 1;
  const at = pointOf(piece, name);
  const leaving = clockwise(piece).plan.outline.find((edge) => edge.from === name);
  const segment = leaving && edgeSegments(piece, leaving)[0];
  if (segment !== undefined) {
    const outward = scale(quarterTurn(unit(segmentTangent(segment, 0))), -1);
    return notchAt({ name, at, outward, marks }, cut, widest);
  }
  const sewn = piece.plan.sewnNotches?.get(name);
  if (sewn !== undefined) {
    const own = pointOf(piece, sewn);
    return { name, net: own, cut: at, inward: unit(subtract(own, at)), marks };
  }
  const nearest = net
    .map((part) => segmentAt(part, nearestOn(part, at)))
    .reduce((a, b) => (distance(b, at) < distance(a, at) ? b : a));
  return { name, net: nearest, cut: at, inward: unit(subtract(nearest, at)), marks };
}
