/** What a sample room should know of the pattern and the rule sheet that it gave. */
import { present } from '../lists/present';
import { counted } from '../table/counted';
import type { Pattern } from '../pattern/pattern';
import type { GivenRules } from '../rule-sheet/point-rules';
import type { GradedPattern } from '../grade/graded-pattern';
import { stepsOf } from '../grade/rules';
import type { WalkedSeam } from '../seams/walked-seam';
import { SAME_PLACE, SEAM_MATCH } from '../tolerance';
import type { Finding } from './finding';
import { ruleFinding } from './finding';
import { notReadFindings } from './not-read';
import { checkShiftedPieces, checkUnruledPoints } from './unruled-points';

/**
 * What is to be said of points without rules, of seam names that pair nothing and of what stands beside tables; what
 * is to be said of a drawing, of which a shape or rule that is lost fails. Of a drafted pattern only that nothing grows can be told.
 */
export function checkGivenPattern(
  pattern: Pattern,
  rules: GivenRules,
  seams: readonly WalkedSeam[],
  range: GradedPattern,
): Finding[] {
  return present([
    ...unruledPieces(pattern, rules),
    nothingGrows(pattern, rules, range),
    ...checkShiftedPieces(pattern, rules, seams),
    ...checkUnruledPoints(pattern, rules, seams),
    ...unpairedSeams(pattern),
    ...notReadFindings([...pattern.unread, ...rules.unread]),
    ...pattern.leftOut.map(({ severity, check, piece, what }) =>
      ruleFinding(
        severity,
        check,
        { piece, subject: pattern.file },
        check === 'left-out' ? `not taken over from the drawing: ${what}` : what,
      ),
    ),
  ]);
}

/** Sizes that are all alike are rarely meant; one body is, and a blend may be the base over again. */
function nothingGrows(
  { pieces }: Pattern,
  { ruled }: GivenRules,
  { sizes, blend }: GradedPattern,
): Finding | undefined {
  if (sizes.length === 1 || blend !== undefined) return undefined;
  const rules = ruled.flatMap((own) => [...own.values()]);
  const isStill = rules.every(({ moves }) =>
    moves.every(({ x, y }) => Math.abs(x) <= SAME_PLACE && Math.abs(y) <= SAME_PLACE),
  );
  if (rules.length === 0 || !isStill) return undefined;
  return ruleFinding(
    'fail',
    'nothing-grows',
    { piece: pieces.map(({ base }) => base.plan.name).join(', ') },
    'every rule is zero, so all sizes are the same',
  );
}

function unruledPieces({ pieces }: Pattern, { ruled }: GivenRules): Finding[] {
  return pieces.flatMap(({ base }, p) =>
    (ruled[p]?.size ?? 0) > 0
      ? []
      : [
          ruleFinding(
            'warning',
            'piece-unruled',
            { piece: base.plan.name },
            'no point of the piece has a rule, so it is the same in every size',
          ),
        ],
  );
}

function unpairedSeams({ unpaired }: Pattern): Finding[] {
  return unpaired.map(({ name, edges }) =>
    ruleFinding(
      'note',
      'seam-unpaired',
      { subject: name },
      `${counted(edges, 'edge has', 'edges have')} this seam name, so it pairs nothing; ` +
        'two edges make a pair, or a list of seams says what is sewn to what',
    ),
  );
}

/**
 * A point of an outline or a cut line that turns back from one size to the next: rarely meant, often a
 * slip of the pen. What lies beside these lines follows the widths and lengths of pieces, and may.
 */
export function checkTurningSteps(
  { pieces }: Pattern,
  { ruled, sizes, base }: GivenRules,
  range: GradedPattern,
): Finding[] {
  const steps = stepsOf(range.exactRules);
  return pieces.flatMap(({ base: { plan }, path, cutPath }, p) => {
    const stops = [...path.stops, ...(cutPath?.stops ?? [])].map(({ point }) => point);
    const shaping = new Set([...stops, ...[...plan.handles].map((name) => plan.index.get(name))]);
    const own = [...(ruled[p]?.keys() ?? [])].filter((i) => shaping.has(i));
    return own.flatMap((i) =>
      (['x', 'y'] as const).flatMap((axis) => {
        // Seen from the smallest size to the largest, since steps are counted from the base.
        const growths = sizes.flatMap((_, size) => {
          const step = steps[size]?.[p]?.[i]?.[axis] ?? 0;
          if (size === base || Math.abs(step) <= SEAM_MATCH) return [];
          return [{ size, growth: size < base ? -step : step }];
        });
        const shrinking = growths.filter(({ growth }) => growth < 0);
        const growing = growths.filter(({ growth }) => growth > 0);
        const odd = shrinking.length <= growing.length ? shrinking : growing;
        const [first] = odd;
        if (first === undefined || shrinking.length === 0 || growing.length === 0) return [];
        return ruleFinding(
          'warning',
          'step-turns',
          { size: sizes[first.size] ?? '', piece: plan.name, subject: plan.pointNames[i] ?? '' },
          `d${axis} goes the other way in the step to ${odd
            .map(({ size }) => sizes[size] ?? '')
            .join(', ')} than in the others`,
        );
      }),
    );
  });
}
