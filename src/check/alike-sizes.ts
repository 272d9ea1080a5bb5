/** Neighboring sizes that all but a point or two have in common: steps that were read as moves. */
import type { GradedPattern, SizedPattern } from '../grade/graded-pattern';
import type { GivenRules } from '../rule-sheet/point-rules';
import { counted } from '../table/counted';
import { SAME_PLACE } from '../tolerance';
import type { Finding } from './finding';
import { ruleFinding } from './finding';

/** Moved points that agree for each that does not; a longer size has other points at a whole edge. */
const AGREEING = 5;

/**
 * A warning for each size of which nearly all moved points lie where those of its neighbor on the base's side
 * do, though not all: what was typed are most likely steps, with a slip or a real growth somewhere.
 */
export function checkAlikeSizes(
  { sizes, plans }: Pick<GradedPattern, 'sizes' | 'plans'>,
  { file, base }: Pick<GivenRules, 'file' | 'base'>,
): Finding[] {
  return sizes.flatMap((size, i) => {
    const neighbor = sizes[i < base ? i + 1 : i - 1];
    const origin = sizes[base];
    if (i === base || neighbor === undefined || origin === undefined) return [];
    const points = plans.flatMap(({ pointNames }, p) =>
      pointNames.map((_, at) => [p, at] as const),
    );
    const isSame = (a: SizedPattern, b: SizedPattern, [p, at]: readonly [number, number]) => {
      const [one, other] = [a.pieces[p]?.points[at], b.pieces[p]?.points[at]];
      const off = Math.hypot(
        (one?.x ?? NaN) - (other?.x ?? NaN),
        (one?.y ?? NaN) - (other?.y ?? NaN),
      );
      return off <= SAME_PLACE;
    };
    const apart = points.filter((one) => !isSame(size, neighbor, one)).length;
    const agreeing = points.filter(
      (one) => isSame(size, neighbor, one) && !isSame(size, origin, one),
    ).length;
    if (apart === 0 || agreeing < AGREEING * apart) return [];
    return {
      ...ruleFinding(
        'warning',
        'alike-sizes',
        { size: size.label },
        `${counted(agreeing, 'moved point lies', 'moved points lie')} where ${neighbor.label} has ` +
          `them, and only ${counted(apart, 'point')} elsewhere; are the rules of ${file} steps from ` +
          'size to size, read as moves from the base?',
      ),
      facts: { rules: file },
    };
  });
}
