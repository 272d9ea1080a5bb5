/** Net pieces in, cut pieces out: allowances and marks, added after grading. */
import { controlBounds } from '../geometry/bounds';
import { boxSearch } from '../geometry/box-tree';
import { crossings } from '../geometry/crossings';
import type { Point } from '../geometry/point';
import { add, distance, scale } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { WIDEST_ALLOWANCE, allowancesOf, saysHowCut } from './allowance';
import { clockwise } from './clockwise';
import { cutLine } from './cut-line';
import type { CutPiece, Notch } from './cut-piece';
import { grainline } from './grainline';
import type { PlacedNotch } from './notch-places';
import { drillHole, notchPlaces } from './notch-places';
import type { Piece } from './piece';
import { cutLineSegments, outlineSegments, pointOf } from './piece';
import { stripsOf } from './strip';

/**
 * The pieces of one size ready to cut, in the order of `pieces`; undefined if nothing says how any
 * of them is cut. `parameters` are those that allowances are named by, in this size. A piece is cut
 * along the line that its pattern gives, else by its allowances, else along its outline. An
 * allowance is as wide in every size, since it is added to the graded net outline: widths are not
 * graded (common practice, no source). Throws a RangeError if an allowance has no value.
 */
export function cutPieces(
  pieces: readonly Piece[],
  parameters: ReadonlyMap<string, number>,
): readonly CutPiece[] | undefined {
  return pieces.some(({ plan }) => saysHowCut(plan)) ? markedPieces(pieces, parameters) : undefined;
}

/** The same pieces whether or not something says how they are cut: their marks stand on the outline then. */
export function markedPieces(
  pieces: readonly Piece[],
  parameters: ReadonlyMap<string, number>,
): readonly CutPiece[] {
  return pieces.map((piece, i) => cutPiece(piece, i + 1, pieces, parameters));
}

function cutPiece(
  piece: Piece,
  number: number,
  pieces: readonly Piece[],
  parameters: ReadonlyMap<string, number>,
): CutPiece {
  const { plan } = piece;
  const allowances = allowancesOf(plan, parameters);
  const net = outlineSegments(piece);
  const { cut, corners } = cutLineOf(piece, net, allowances.size > 0, parameters);
  const widest = plan.cutLine ? WIDEST_ALLOWANCE : Math.max(0, ...allowances.values());
  const cutNear = boxSearch(cut, controlBounds);
  const cutAcross = (way: Segment): readonly Segment[] =>
    cutNear(controlBounds(way)).map((i) => cut[i] as Segment);
  const at = (name: string): Point => corners.get(name) ?? pointOf(piece, name);
  const [from, to] = plan.marks
    .filter(({ name }) => name === 'grainline')
    .flatMap(({ through }) => through.map((name) => pointOf(piece, name)));
  const fold = [...(plan.cutLine ?? []), ...plan.outline].find(({ kind }) => kind === 'fold');
  return {
    piece,
    number,
    net,
    cut,
    corners,
    notches: notchPlaces(piece, pieces, parameters).map((placed) =>
      notchAt(placed, cutAcross, widest),
    ),
    drillHoles: plan.drillHoles.map((rule) => drillHole(piece, rule)),
    grain: from && to ? { from, to } : grainline(net, plan.grain),
    fold: fold && { from: at(fold.from), to: at(fold.to) },
    allowances,
  };
}

function cutLineOf(
  piece: Piece,
  net: readonly Segment[],
  isWidened: boolean,
  parameters: ReadonlyMap<string, number>,
): Pick<CutPiece, 'cut' | 'corners'> {
  const given = cutLineSegments(piece);
  if (given !== undefined || !isWidened) return { cut: given ?? net, corners: new Map() };
  const strips = stripsOf(clockwise(piece), parameters);
  const { segments: cut, corners } = cutLine(strips, parameters.get('corner_style') ?? 0);
  return { cut, corners };
}

/** How far beyond the widest allowance a notch looks for the cut line, as a factor. */
const REACH = 2;

/**
 * The notch from its place on the sewing line straight out to the cut line, of which no allowance is
 * wider than `widest` mm, or from its place on the given cut line in. `cutAcross` gives the stretches
 * of the cut line that a way may cross.
 */
function notchAt(
  { name, at, net, outward, marks }: PlacedNotch,
  cutAcross: (way: Segment) => readonly Segment[],
  widest: number,
): Notch {
  if (net !== undefined) return { name, net, cut: at, inward: scale(outward, -1), marks };
  const way: Segment = { kind: 'line', from: at, to: add(at, scale(outward, REACH * widest)) };
  const found = cutAcross(way).flatMap((segment) => crossings(way, segment).map(({ at: p }) => p));
  const nearest = found.reduce<Point | undefined>(
    (best, p) => (best === undefined || distance(p, at) < distance(best, at) ? p : best),
    undefined,
  );
  return { name, net: at, cut: nearest ?? at, inward: scale(outward, -1), marks };
}
