/** Points that stand farther than half a step from where they belong, so that what is sewn holds. */
import type { GradedPattern } from '../grade/graded-pattern';
import { ruledPattern } from '../seams/ruled-points';
import { HALF_STEP } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';
import { found } from './finding';

/** One note for each piece of each size that has such points. */
export function noteRoundedPoints(range: GradedPattern, display: LengthDisplay): Finding[] {
  const step = range.roundingStep;
  const base = range.sizes[range.rules.base];
  if (step === undefined || base === undefined) return [];
  const { coordinates } = ruledPattern(base.pieces);
  return range.sizes.flatMap((size, i) =>
    range.plans.flatMap((plan, p): Finding | [] => {
      const far = coordinates.flatMap(({ piece, point, axis }) => {
        if (piece !== p) return [];
        const [to, exact] = [range.rules, range.exactRules].map(
          ({ moves }) => moves[i]?.[p]?.[point]?.[axis] ?? NaN,
        );
        const off = (to ?? NaN) - (exact ?? NaN);
        if (Math.abs(off) <= (1 / 2 + HALF_STEP) * step) return [];
        return [{ name: plan.pointNames[point] ?? '', axis, off }];
      });
      const worst = far.reduce(
        (most, one) => (Math.abs(one.off) > Math.abs(most?.off ?? 0) ? one : most),
        far[0],
      );
      if (worst === undefined) return [];
      const names = [...new Set(far.map(({ name }) => name))];
      return found({
        severity: 'note',
        check: 'rounded-points',
        size: size.label,
        piece: plan.name,
        subject: worst.name,
        measured: worst.off,
        expected: 0,
        tolerance: step / 2,
        source: 'arithmetic: nearest steps by themselves do not add up to what is sewn',
        message:
          `so that what is sewn holds, ${names.join(', ')} ${names.length === 1 ? 'takes' : 'take'} ` +
          `the second nearest step, d${worst.axis} of ${worst.name} up to ` +
          `${showLength(Math.abs(worst.off), display)} off`,
      });
    }),
  );
}
