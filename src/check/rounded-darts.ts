/** Darts of a given pattern whose legs rounding has made unequal. */
import type { GradedPattern } from '../grade/graded-pattern';
import { applyRules } from '../grade/rules';
import type { Piece } from '../pattern/piece';
import { DART_LEGS } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import { dartLegs, legSeverity } from './dart-legs';
import type { Finding } from './finding';

/** One finding for each dart of each size that rounding changes; how a pattern drew it is its own affair. */
export function checkRoundedDarts(range: GradedPattern, display: LengthDisplay): Finding[] {
  if (range.roundingStep === undefined) return [];
  const base = range.sizes[range.rules.base]?.pieces ?? [];
  const exact = applyRules(base, range.exactRules);
  return range.sizes.flatMap((size, i) =>
    size.pieces.flatMap((piece, p) =>
      piece.plan.darts.flatMap((dart): Finding[] => {
        const [first, second] = dartLegs(piece, dart);
        const [exactFirst, exactSecond] = dartLegs(exact[i]?.[p] as Piece, dart);
        const apart = first - second - (exactFirst - exactSecond);
        const severity = legSeverity(apart, 0);
        if (severity === 'ok') return [];
        return [
          {
            severity,
            check: 'dart-legs',
            size: size.label,
            piece: piece.plan.name,
            subject: dart.name,
            quantity: 'length',
            measured: first,
            expected: second,
            tolerance: DART_LEGS,
            source: "the engine's own rule: rounding leaves the legs as they are",
            message:
              `the legs are ${showLength(first, display)} and ${showLength(second, display)} long, ` +
              `of which rounding makes ${showLength(apart, display)}`,
          },
        ];
      }),
    ),
  );
}
