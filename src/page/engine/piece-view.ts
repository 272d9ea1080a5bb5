/** Pieces in every size as the page draws them. */
import type { CutPiece } from '../../pattern/cut-piece';
import type { Edge, Piece } from '../../pattern/piece';
import type { GradedPattern, SizedPattern } from '../../grade/graded-pattern';
import { pathData } from '../../render/svg';
import { segmentsBounds } from '../../geometry/bounds';
import { add, scale } from '../../geometry/point';
import type { EdgeView, PieceView, SizedView } from '../wish';

/** mm that a notch reaches into a piece on the screen; common practice, no source. */
const NOTCH = 6;

/** Every piece of a range; pieces and sizes in the order of the range. */
export function pieceViews({
  plans,
  sizes,
}: Pick<GradedPattern, 'plans'> & {
  readonly sizes: readonly Pick<SizedPattern, 'pieces' | 'cutPieces'>[];
}): PieceView[] {
  return plans.map((plan, p) => {
    const placeOf = (name: string): number => plan.index.get(name) ?? 0;
    return {
      name: plan.name,
      points: plan.pointNames.map((name) => ({ name, handle: plan.handles.has(name) })),
      edges: plan.outline.map((edge) => edgeView(edge, placeOf)),
      marks: plan.marks.map(({ name, through }) => ({ name, at: through.map(placeOf) })),
      sizes: sizes.flatMap(({ pieces, cutPieces }) => {
        const piece = pieces[p];
        return piece === undefined ? [] : [sizedView(piece, cutPieces?.[p])];
      }),
    };
  });
}

function edgeView(edge: Edge, placeOf: (name: string) => number): EdgeView {
  return { kind: edge.kind, seam: edge.seam, at: pointNames(edge).map(placeOf) };
}

function pointNames(edge: Edge): readonly string[] {
  switch (edge.kind) {
    case 'line':
    case 'fold':
      return [edge.from, edge.to];
    case 'cubic':
      return [edge.from, edge.leave, edge.arrive, edge.to];
    case 'dart':
      return [edge.from, edge.tip, edge.to];
  }
}

function sizedView({ points }: Piece, cutPiece: CutPiece | undefined): SizedView {
  const coordinates = points.flatMap(({ x, y }) => [x, y]);
  if (cutPiece === undefined) return { coordinates, drillHoles: [] };
  const { cut, notches, grain, drillHoles } = cutPiece;
  const { left, top, right, bottom } = segmentsBounds(cut);
  const notchLines = notches.map((notch) => ({
    kind: 'line' as const,
    from: notch.cut,
    to: add(notch.cut, scale(notch.inward, NOTCH)),
  }));
  return {
    coordinates,
    cut: pathData(cut, true),
    box: [left, top, right, bottom],
    notches: pathData(notchLines, false),
    grain: pathData([{ kind: 'line', ...grain }], false),
    drillHoles: drillHoles.map(({ x, y }) => [x, y]),
  };
}
