/** The pieces of a given pattern must not shrink from a smaller size to a larger. */
import { segmentsBounds } from '../geometry/bounds';
import { loopArea, loopLength } from '../geometry/loop';
import type { GradedPattern } from '../grade/graded-pattern';
import type { Piece } from '../pattern/piece';
import { edgeSegments, outlineSegments, seamLength } from '../pattern/piece';
import { SEAM_MATCH, SEAM_WARNING } from '../tolerance';
import type { LengthDisplay } from '../units';
import { fromMillimeters, showLength, trimmed } from '../units';
import type { Finding } from './finding';
import type { GrowingMeasure } from './larger';
import { checkLarger } from './larger';

/**
 * For every piece its area, or if that holds its width across (along x), and the first edge that
 * lies across, such as a waist or a hem, which may shrink while the piece grows. In net lines.
 */
export function checkLargerPieces(
  { plans, sizes, roundingStep = 0 }: Pick<GradedPattern, 'plans' | 'sizes' | 'roundingStep'>,
  display: LengthDisplay,
): Finding[] {
  const labels = sizes.map(({ label }) => label);
  const firstToFall = (measures: readonly GrowingMeasure[]) =>
    measures.map((one) => checkLarger(labels, [one])).find((told) => told.length > 0) ?? [];
  return plans.flatMap(({ name: piece }, p) => {
    const made = sizes.flatMap(({ pieces }) => pieces[p] ?? []);
    const length = (subject: string, name: string, measure: (one: Piece) => number) => ({
      ...{ piece, subject, name, quantity: 'length' as const, values: made.map(measure) },
      // Either end may be rounded by half a step in either size.
      slack: SEAM_WARNING + 2 * roundingStep,
      show: (mm: number) => showLength(mm, display),
    });
    const whole: readonly GrowingMeasure[] = [
      {
        ...{ piece, subject: 'area', name: 'its area', quantity: 'number' },
        values: made.map((one) => Math.abs(loopArea(outlineSegments(one)))),
        // A strip along the whole outline, as wide as what is not seen of a seam.
        slack:
          (SEAM_MATCH + roundingStep) *
          Math.max(...made.map((one: Piece) => loopLength(outlineSegments(one)))),
        show: (squareMillimeters) => showArea(squareMillimeters, display),
      },
      length('width', 'its width', (one) => {
        const { left, right } = segmentsBounds(outlineSegments(one));
        return right - left;
      }),
    ];
    const edges = acrossEdges(made[0]).map((edge) =>
      length(edge, `its edge ${edge}`, (one) => seamLength(one, edge)),
    );
    return [...firstToFall(whole), ...firstToFall(edges)];
  });
}

/**
 * Share of a piece's width from which an edge tells how wide it is; the mouth of a tuck does not.
 * No tolerance: it says which edges are looked at.
 */
const TELLS_WIDTH = 0.5;

/**
 * The edges that lie more across than along over half of the piece, in the order of the outline; no
 * folds.
 */
function acrossEdges(piece: Piece | undefined): string[] {
  if (piece === undefined) return [];
  const { left, right } = segmentsBounds(outlineSegments(piece));
  const sewn = piece.plan.outline.filter(({ kind }) => kind !== 'dart' && kind !== 'fold');
  return [...new Set(sewn.map(({ seam }) => seam))].filter((seam) => {
    const box = segmentsBounds(
      sewn.filter((edge) => edge.seam === seam).flatMap((edge) => edgeSegments(piece, edge)),
    );
    const isWide = seamLength(piece, seam) >= TELLS_WIDTH * (right - left);
    return isWide && box.right - box.left > box.bottom - box.top;
  });
}

function showArea(squareMillimeters: number, { unit }: LengthDisplay): string {
  const side = fromMillimeters(1, unit);
  return `${trimmed(squareMillimeters * side * side, 1)} sq ${unit}`;
}
