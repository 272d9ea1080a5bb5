/** A graded piece as an exchange file holds it: every line as points that know all their sizes. */
import type { Edge, Piece, PiecePlan } from '../pattern/piece';
import { edgeSegments, pointOf } from '../pattern/piece';
import type { GradedPoint } from './graded-line';
import { gradedLine } from './graded-line';

export interface ExchangePiece {
  readonly name: string;
  /** The outline that is cut, closed. */
  readonly boundary: readonly GradedPoint[];
  /** The seam line, where the outline has allowances; closed. */
  readonly sewLine: readonly GradedPoint[] | undefined;
  readonly notches: readonly GradedPoint[];
  readonly drillHoles: readonly GradedPoint[];
  /** From end to end, like the fold. */
  readonly grain: readonly GradedPoint[];
  readonly fold: readonly GradedPoint[];
  readonly internalLines: readonly (readonly GradedPoint[])[];
  /** How often it is cut, and whatever else is written on it. */
  readonly words: readonly string[];
}

/**
 * A piece from its plan, one value a size. `smooth` are the points of the outline at which it does
 * not turn; `base` is the place of the base among the sizes.
 */
export function exchangePiece(
  sizes: readonly Piece[],
  base: number,
  smooth: ReadonlySet<string>,
): ExchangePiece {
  const { plan } = sizes[base] ?? { plan: undefined };
  if (plan === undefined) throw new RangeError('a piece is exchanged with its base');
  const named = (name: string): GradedPoint => ({
    kind: smooth.has(name) ? 'curve' : 'turn',
    at: sizes.map((piece) => pointOf(piece, name)),
  });
  const fold = plan.outline.find(({ kind }) => kind === 'fold');
  const grain = plan.marks.find(({ name }) => name === 'grainline');
  return {
    name: plan.name,
    boundary: plan.outline.flatMap((edge) => edgePoints(edge, sizes, base, named)),
    sewLine: undefined,
    notches: (plan.notches ?? []).map(named),
    drillHoles: (plan.drillHoles ?? []).map(named),
    grain: (grain?.through ?? []).map(named),
    fold: fold === undefined ? [] : [named(fold.from), named(fold.to)],
    internalLines: plan.marks
      .filter(({ name }) => name !== 'grainline')
      .map(({ through }) => through.map(named)),
    words: cuttingWords(plan),
  };
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
  const between = gradedLine(
    sizes.map((piece) => edgeSegments(piece, edge)),
    base,
  );
  return [named(edge.from), ...(between ?? []).slice(1)];
}

function cuttingWords({ cuttings }: PiecePlan): readonly string[] {
  return cuttings.map(
    ({ cloth, count, onFold }) =>
      `QUANTITY: ${count}${onFold ? ' ON FOLD' : ''}${cloth === 'shell' ? '' : ` OF ${cloth.toUpperCase()}`}`,
  );
}
