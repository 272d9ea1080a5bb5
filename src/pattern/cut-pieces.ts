/** Net pieces in, cut pieces out: allowances and marks, added after grading. */
import { crossings } from '../geometry/crossings';
import type { Point } from '../geometry/point';
import { add, distance, scale } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { allowanceAlong } from './allowance';
import { cutLine } from './cut-line';
import type { CutPiece, Notch } from './cut-piece';
import { grainline } from './grainline';
import type { NotchPlace } from './notch-places';
import { drillHole, notchPlaces } from './notch-places';
import type { Piece } from './piece';
import { outlineSegments, pointOf } from './piece';
import { stripsOf } from './strip';

/**
 * The pieces of one size ready to cut, in the order of `pieces`. `parameters` are the style's in
 * this size. An allowance is as wide in every size, since it is added to the graded net outline:
 * widths are not graded (common practice, no source). Throws a RangeError if a seam's allowance is
 * not among the parameters.
 */
export function cutPieces(
  pieces: readonly Piece[],
  parameters: ReadonlyMap<string, number>,
): readonly CutPiece[] {
  const known = KNOWN.get(pieces);
  if (known?.parameters === parameters) return known.cut;
  const cut = cutAnew(pieces, parameters);
  KNOWN.set(pieces, { parameters, cut });
  return cut;
}

/** Drawings, sheets and lays ask for the same pieces; they are values, so once is enough. */
const KNOWN = new WeakMap<
  readonly Piece[],
  { readonly parameters: ReadonlyMap<string, number>; readonly cut: readonly CutPiece[] }
>();

function cutAnew(
  pieces: readonly Piece[],
  parameters: ReadonlyMap<string, number>,
): readonly CutPiece[] {
  return pieces.map((piece, i) => {
    const { outline, darts, part } = piece.plan;
    const strips = stripsOf(piece, parameters);
    const { segments: cut, corners } = cutLine(strips, parameters.get('corner_style') ?? 0);
    const widest = Math.max(0, ...strips.map(({ width }) => width));
    const net = outlineSegments(piece);
    const fold = outline.find(({ kind }) => kind === 'fold');
    const at = (name: string): Point => corners.get(name) ?? pointOf(piece, name);
    return {
      piece,
      number: i + 1,
      net,
      cut,
      corners,
      notches: notchPlaces(piece, pieces, parameters).map((place) => notch(place, cut, widest)),
      drillHoles: darts.map(({ from, tip, to }) => drillHole(piece, tip, [from, to])),
      grain: grainline(net, part === 'waistband' ? 'across' : 'down'),
      fold: fold && { from: at(fold.from), to: at(fold.to) },
      allowances: new Map(
        outline.map((edge) => [edge.seam, allowanceAlong(piece.plan, edge, parameters)]),
      ),
    };
  });
}

/** How far beyond the widest allowance a notch looks for the cut line, as a factor. */
const REACH = 2;

/** The notch from its place on the sewing line straight out to the cut line. */
function notch(
  { name, at, outward, marks }: NotchPlace,
  cut: readonly Segment[],
  widest: number,
): Notch {
  const way: Segment = { kind: 'line', from: at, to: add(at, scale(outward, REACH * widest)) };
  const found = cut.flatMap((segment) => crossings(way, segment)).map((crossing) => crossing.at);
  const nearest = found.reduce<Point | undefined>(
    (best, p) => (best === undefined || distance(p, at) < distance(best, at) ? p : best),
    undefined,
  );
  return { name, net: at, cut: nearest ?? at, inward: scale(outward, -1), marks };
}
