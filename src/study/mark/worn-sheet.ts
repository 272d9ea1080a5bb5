/** The skirt that a sheet would make: the base size plus the moves of the sheet, measured. */
import type { Point } from '../../geometry/point';
import { add, point } from '../../geometry/point';
import type { Measure } from '../../measure/finished';
import { finishedMeasures } from '../../measure/finished';
import { skirtPoints } from '../../measure/skirt-points';
import type { Piece } from '../../pattern/piece';
import type { GradeResult } from '../../jobs/grade-chart';
import type { Axis } from '../../rule-sheet/rule-sheet';

/** How far the sheet is from the key at a point, mm, in the axes of the drawing; zero where right. */
export type ErrorAt = (piece: string, point: string, axis: Axis, size: number) => number;

/** Finished measurements of one size by the key and by the sheet, in the same order. */
export interface WornSize {
  readonly label: string;
  readonly right: readonly Measure[];
  readonly sheet: readonly Measure[];
}

/** Every size made from the base and the sheet. Cells that the sheet leaves blank count as right. */
export function wornSheet({ range }: GradeResult, errorAt: ErrorAt): readonly WornSize[] {
  const points = skirtPoints(range.plans);
  return range.sizes.map(({ label, draft }, size) => ({
    label,
    right: finishedMeasures(points, draft),
    sheet: finishedMeasures(
      points,
      draft.map((piece) =>
        moved(piece, (name, axis) => errorAt(piece.plan.name, name, axis, size)),
      ),
    ),
  }));
}

/** A piece with its points moved; each handle goes with its end of the curve, as it does by hand. */
function moved(piece: Piece, errorOf: (name: string, axis: Axis) => number): Piece {
  const { plan } = piece;
  const ends = new Map<string, string>();
  for (const edge of plan.outline)
    if (edge.kind === 'cubic') {
      ends.set(edge.leave, edge.from);
      ends.set(edge.arrive, edge.to);
    }
  const points = plan.pointNames.map((name, i): Point => {
    const own = plan.handles.has(name) ? (ends.get(name) ?? name) : name;
    const from = piece.points[i] ?? point(NaN, NaN);
    return add(from, point(errorOf(own, 'x'), errorOf(own, 'y')));
  });
  return { plan, points };
}
