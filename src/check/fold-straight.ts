/** Folds that stay folds: graded, they run as they do in the base. */
import { cross, subtract, unit } from '../geometry/point';
import type { GradedPattern } from '../grade/graded-pattern';
import type { Edge, Piece } from '../pattern/piece';
import { pointOf } from '../pattern/piece';
import type { GivenRules } from '../rule-sheet/point-rules';
import { FOLD_LINE, SEAM_MATCH } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';
import { found } from './finding';

const ON_FOLD = 'common practice, no source: a piece is cut on a straight fold along the grain';

/**
 * A failure for each fold of each size whose points part from the line that they have in the base: an
 * edge that leans is not along the fold of the cloth, and opened out the piece is a dart wider at one
 * end. Small parts are warned of. Points that have no rule are named.
 */
export function checkFolds(
  range: GradedPattern,
  rules: GivenRules,
  display: LengthDisplay,
): Finding[] {
  const base = range.sizes[range.rules.base]?.pieces ?? [];
  return base.flatMap((inBase, p) =>
    foldsOf(inBase).flatMap((points) =>
      range.sizes.flatMap(({ label, pieces }) => {
        const piece = pieces[p];
        const off = piece === undefined ? 0 : parted(piece, inBase, points);
        if (off <= SEAM_MATCH) return [];
        const { name, index } = inBase.plan;
        const bare = points.filter((point) => rules.ruled[p]?.has(index.get(point) ?? -1) !== true);
        return found({
          severity: off > FOLD_LINE ? ('fail' as const) : ('warning' as const),
          check: 'fold-straight',
          size: label,
          piece: name,
          subject: `${points[0] ?? ''} to ${points.at(-1) ?? ''}`,
          measured: off,
          expected: 0,
          tolerance: SEAM_MATCH,
          source: ON_FOLD,
          message:
            `the fold leaves its line by ${showLength(off, display)}, so the piece cannot be cut on ` +
            'the fold: square to it its points must move alike' +
            (bare.length === 0 || bare.length === points.length
              ? ''
              : `, and ${bare.join(', ')} ${bare.length === 1 ? 'has' : 'have'} no rule`),
        });
      }),
    ),
  );
}

/** The names of the points of each fold; edges on one line in the base are one fold. */
function foldsOf(base: Piece): readonly (readonly string[])[] {
  const folds: { first: Edge; points: string[] }[] = [];
  for (const edge of base.plan.outline) {
    if (edge.kind !== 'fold') continue;
    const same = folds.find(({ first }) =>
      [edge.from, edge.to].every((end) => Math.abs(beside(base, first, base, end)) <= SEAM_MATCH),
    );
    if (same === undefined) folds.push({ first: edge, points: [edge.from, edge.to] });
    else same.points.push(...[edge.from, edge.to].filter((end) => !same.points.includes(end)));
  }
  return folds.map(({ points }) => points);
}

/** mm by which the points of a fold move apart from each other, square to the fold of the base. */
function parted(piece: Piece, base: Piece, points: readonly string[]): number {
  const [from = '', to = ''] = points;
  const moves = points.map(
    (name) => beside(base, { from, to }, piece, name) - beside(base, { from, to }, base, name),
  );
  return Math.max(...moves) - Math.min(...moves);
}

/** mm by which a point of a piece lies beside a line of the base. */
function beside(
  base: Piece,
  { from, to }: Pick<Edge, 'from' | 'to'>,
  piece: Piece,
  name: string,
): number {
  const start = pointOf(base, from);
  return cross(unit(subtract(pointOf(base, to), start)), subtract(pointOf(piece, name), start));
}
