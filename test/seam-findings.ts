/** What the walk of the seams says of a range that is not what was drafted. */
import { checkSewnSeams } from '../src/check/sewn-seams';
import { derivedRules } from '../src/grade/derived-rules';
import type { GradeResult, Finding, GradedPattern, Piece } from '../src/index';
import { regrader } from '../src/seams/regrade';
import { IN_TYPED_RULES } from '../src/seams/slip-search';
import { walkedSeams } from '../src/seams/walked-seam';

/** The findings of all seams of a result with its sizes changed to those of `range`. */
export function seamFindings(
  { pattern }: Pick<GradeResult, 'pattern'>,
  range: GradedPattern,
): readonly Finding[] {
  const rules = derivedRules(range, pattern.file);
  const graded = { pattern, rules, regrade: regrader(pattern, rules), search: IN_TYPED_RULES };
  const seams = walkedSeams(range, pattern.seams);
  return checkSewnSeams(range, seams, seams, graded, { unit: 'cm', fractions: false });
}

/** The range with one point of one piece moved alike in every size, by mm. */
export function withMoved<Range extends GradedPattern>(
  range: Range,
  piece: string,
  point: string,
  by: { readonly x: number; readonly y: number },
): Range {
  const moved = ({ plan, points }: Piece): Piece => ({
    plan,
    points: points.map((p, i) =>
      plan.name === piece && plan.pointNames[i] === point ? { x: p.x + by.x, y: p.y + by.y } : p,
    ),
  });
  const sizes = range.sizes.map((size) => ({ ...size, pieces: size.pieces.map(moved) }));
  return { ...range, sizes };
}
