/** A graded piece as an exchange file holds it: every line as points that know all their sizes. */
import type { Point } from '../geometry/point';
import type { CutPiece } from '../pattern/cut-piece';
import { faceUp } from '../pattern/face-up';
import type { Edge, Piece, PiecePlan } from '../pattern/piece';
import { edgeSegments, pointOf } from '../pattern/piece';
import { gradedLoop } from './graded-loop';
import type { GradedPoint } from './graded-stretch';
import { gradedStretch } from './graded-stretch';

/** A piece as an exchange file holds it; places in mm, y down, one a size. */
export interface ExchangePiece {
  readonly name: string;
  /** The outline that is cut, closed. */
  readonly boundary: readonly GradedPoint[];
  /** The seam line, where the outline has allowances; closed. */
  readonly sewLine: readonly GradedPoint[] | undefined;
  /** On the boundary, and where they meet the seam line if that is another line; `marks` is 2 for a
   * double one. */
  readonly notches: readonly (GradedPoint & {
    readonly marks: 1 | 2;
    readonly sewn: GradedPoint | undefined;
  })[];
  readonly drillHoles: readonly GradedPoint[];
  /** From end to end, like the fold. */
  readonly grain: readonly GradedPoint[];
  readonly fold: readonly GradedPoint[];
  /** Each from end to end. */
  readonly internalLines: readonly (readonly GradedPoint[])[];
  /** The unit vector in which rules count x, y down. */
  readonly ruleX: Point;
  /** Where each edge of the seam line begins, and the tips of its darts, in the base. */
  readonly names: readonly { readonly kind: 'EDGE' | 'DART'; readonly name: string; at: Point }[];
  /** Whether its allowances are left out, because its cut line has other corners in some sizes. */
  readonly lacksCutLine: boolean;
  /** How often it is cut, and whatever else is written on it. */
  readonly words: readonly string[];
}

/** A piece in every size, and what exchange needs to know of it. */
export interface PieceInSizes {
  readonly sizes: readonly Piece[];
  /** The same pieces ready to cut; empty where they have no cut line. */
  readonly cut: readonly CutPiece[];
  /** Place of the base among the sizes. */
  readonly base: number;
  /** The points of the outlines at which these do not turn. */
  readonly smooth: ReadonlySet<string>;
  readonly ruleX: Point;
}

/**
 * The piece, its cut line as the boundary and its net line as the sew line. A piece without a cut
 * line, or whose cut line has other corners in one size than in another, has its net line as
 * boundary, and says so.
 */
export function exchangePiece({ sizes, cut, base, smooth, ruleX }: PieceInSizes): ExchangePiece {
  const [piece, model] = [sizes[base], cut[base]];
  if (piece === undefined) throw new RangeError('a piece is exchanged with its base');
  const { plan } = piece;
  const named = (name: string): GradedPoint => ({
    kind: smooth.has(name) ? 'curve' : 'turn',
    at: sizes.map((own) => pointOf(own, name)),
  });
  const along = (edges: readonly Edge[]): readonly GradedPoint[] =>
    edges.flatMap((edge) => edgePoints(edge, sizes, base, named));
  const net = along(plan.outline);
  const line = cutPoints(plan, cut, base, along);
  const spots = (of: (piece: CutPiece) => readonly Point[]): readonly GradedPoint[] =>
    (model === undefined ? [] : of(model)).flatMap((_, i): GradedPoint[] => {
      const at = cut.flatMap((own) => of(own)[i] ?? []);
      return at.length === cut.length ? [{ kind: 'turn', at }] : [];
    });
  const grain = plan.marks.find(({ name }) => name === 'grainline');
  const fold = plan.outline.find(({ kind }) => kind === 'fold');
  const netNotches = spots((own) => own.notches.map(({ net }) => net));
  const cutNotches = spots((own) => own.notches.map((notch) => notch.cut));
  return {
    name: plan.name,
    boundary: line ?? net,
    sewLine: line === undefined ? undefined : net,
    notches:
      model === undefined
        ? markedNotches(plan, named)
        : (line === undefined ? netNotches : cutNotches).map((notch, i) => ({
            ...notch,
            marks: model.notches[i]?.marks ?? 1,
            sewn: line === undefined ? undefined : netNotches[i],
          })),
    drillHoles:
      model === undefined
        ? plan.drillHoles.flatMap((rule) => ('point' in rule ? [named(rule.point)] : []))
        : spots((own) => own.drillHoles),
    grain:
      model === undefined
        ? (grain?.through ?? []).map(named)
        : spots((own) => [own.grain.from, own.grain.to]),
    fold:
      line !== undefined
        ? spots((own) => (own.fold === undefined ? [] : [own.fold.from, own.fold.to]))
        : fold === undefined
          ? []
          : [named(fold.from), named(fold.to)],
    internalLines: plan.marks
      .filter(({ name }) => name !== 'grainline')
      .map(({ through }) => through.map(named)),
    ruleX,
    names: namesOf(piece),
    lacksCutLine: line === undefined && cut.some((own) => own.cut !== own.net),
    words: [
      ...cuttingWords(plan),
      ...(model !== undefined && line === undefined ? ['NET LINE, WITHOUT ALLOWANCES'] : []),
    ],
  };
}

/** The notches of a piece that nobody cuts: those that are points of it. */
function markedNotches(
  { notches }: PiecePlan,
  named: (name: string) => GradedPoint,
): ExchangePiece['notches'] {
  return notches.flatMap(({ place, marks }) =>
    'point' in place ? [{ ...named(place.point), marks, sewn: undefined }] : [],
  );
}

/** The cut line; undefined where there is none, where it is the net line, or sizes are not alike. */
function cutPoints(
  { cutLine }: PiecePlan,
  cut: readonly CutPiece[],
  base: number,
  along: (edges: readonly Edge[]) => readonly GradedPoint[],
): readonly GradedPoint[] | undefined {
  if (cutLine !== undefined) return along(cutLine);
  if (cut.length === 0 || cut.every((own) => own.cut === own.net)) return undefined;
  return gradedLoop(
    cut.map((own) => ({ segments: own.cut, landmarks: own.corners })),
    base,
  );
}

/** The points of an edge without its last one. */
function edgePoints(
  edge: Edge,
  sizes: readonly Piece[],
  base: number,
  named: (name: string) => GradedPoint,
): readonly GradedPoint[] {
  if (edge.kind === 'dart') return [named(edge.from), named(edge.tip)];
  // A spline through points is its points; only a curve by handles needs more of them.
  if (edge.kind !== 'cubic' || edge.leave.includes('.')) return [named(edge.from)];
  const stretch = gradedStretch(
    sizes.map((piece) => edgeSegments(piece, edge)),
    base,
  );
  return [named(edge.from), ...stretch.slice(1)];
}

/** An edge begins where its name is another than that of the edge before. */
function namesOf(piece: Piece): ExchangePiece['names'] {
  const { outline } = piece.plan;
  return outline.flatMap((edge, i) => {
    const begins = i === 0 || outline[i - 1]?.seam !== edge.seam;
    return [
      ...(begins
        ? [{ kind: 'EDGE' as const, name: edge.seam, at: pointOf(piece, edge.from) }]
        : []),
      ...(edge.kind === 'dart'
        ? [{ kind: 'DART' as const, name: edge.name, at: pointOf(piece, edge.tip) }]
        : []),
    ];
  });
}

function cuttingWords(plan: PiecePlan): readonly string[] {
  return plan.cuttings.flatMap((cutting) => {
    const { cloth, count, onFold } = cutting;
    const of = cloth.toUpperCase();
    const face = faceUp(plan, cutting)?.toUpperCase();
    return [
      `QUANTITY: ${count}${onFold ? ' ON FOLD' : ''}${cloth === 'shell' ? '' : ` OF ${of}`}`,
      ...(face === undefined ? [] : [`${face} SIDE UP: ${of}`]),
    ];
  });
}
