/** The garment that a sheet would make: the base size plus the moves of the sheet, measured. */
import type { Point } from '../../geometry/point';
import { add, distance, point } from '../../geometry/point';
import type { Measure } from '../../grade/graded-pattern';
import { finishedMeasures } from '../../measure/finished';
import { skirtPoints } from '../../measure/skirt-points';
import type { Piece } from '../../pattern/piece';
import type { SeamPair } from '../../pattern/seam-pair';
import { meetsItself } from '../../pattern/seam-pair';
import { walkPair } from '../../seams/walk-pair';
import type { Axis } from '../../rule-sheet/rule-sheet';
import type { Reference } from './reference';

/** How far the sheet is from the key at a point, mm, in the axes of the drawing; zero where right. */
export type ErrorAt = (piece: string, point: string, axis: Axis, size: number) => number;

/** Finished measurements of one size by the key and by the sheet, in the same order. */
export interface WornSize {
  readonly label: string;
  /** The pieces as the sheet makes them. */
  readonly made: readonly Piece[];
  readonly right: readonly Measure[];
  readonly sheet: readonly Measure[];
  /** Edges that are sewn together, and mm by which they differ by the key and by the sheet. */
  readonly gaps: readonly {
    readonly words: string;
    readonly right: number;
    readonly sheet: number;
  }[];
}

/** Every size made from the base and the sheet. Cells that the sheet leaves blank count as right. */
export function wornSheet(
  { plans, sizes, grade, onPaper }: Reference,
  errorAt: ErrorAt,
): readonly WornSize[] {
  const points = skirtPoints(plans);
  const seams = grade.seams.filter(({ pair }) => !meetsItself(pair));
  return sizes.map(({ label, pieces, parameters }, size) => {
    const made = pieces.map((piece) => {
      const { name } = piece.plan;
      return moved(piece, (own) =>
        onPaper(name, point(errorAt(name, own, 'x', size), errorAt(name, own, 'y', size))),
      );
    });
    const gapsOf = (pieces: readonly Piece[]) => [
      ...seams.map(({ pair, way }) => ({
        words: seamWords(pair),
        gap: walkPair(pieces, pair, way, parameters).gap,
      })),
      ...pieces.flatMap(legGaps),
    ];
    const onSheet = gapsOf(made);
    return {
      label,
      made,
      right: finishedMeasures(points, pieces),
      sheet: finishedMeasures(points, made),
      gaps: gapsOf(pieces).map(({ words, gap }, i) => ({
        words,
        right: gap,
        sheet: onSheet[i]?.gap ?? NaN,
      })),
    };
  });
}

/** Such as `front and back side seams`, where both sides are one edge of the same name. */
function seamWords({ name, sides: [first, second] }: SeamPair): string {
  const [[a, ...more], [b, ...others]] = [first.edges, second.edges];
  if (a === undefined || b === undefined || more.length + others.length > 0 || a.edge !== b.edge)
    return `sides of the seam ${name}`;
  return `${a.piece} and ${b.piece} ${a.edge} seams`;
}

/** The legs of a dart are sewn to each other. */
function legGaps({ plan, points }: Piece): readonly { words: string; gap: number }[] {
  const at = (name: string): Point => points[plan.index.get(name) ?? -1] ?? point(NaN, NaN);
  return plan.darts.map((dart) => ({
    words: `legs of the ${plan.name} ${dart.name.replaceAll('_', ' ')}`,
    gap: distance(at(dart.from), at(dart.tip)) - distance(at(dart.to), at(dart.tip)),
  }));
}

/** A piece with its points moved; each handle goes with its end of the curve, as it does by hand. */
function moved(piece: Piece, errorOf: (name: string) => Point): Piece {
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
    return add(from, errorOf(own));
  });
  return { plan, points };
}
