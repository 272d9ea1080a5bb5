/** Drafting a range again with one formula changed, to ask what would follow. */
import { InputError } from '../errors';
import type { GradedPattern } from '../grade/graded-pattern';
import { deriveRules } from '../grade/rules';
import { stackOn } from '../grade/stack';
import type { Redraft } from '../seams/redraft';
import { SAME_PLACE } from '../tolerance';
import type { DraftedRange } from './draft-range';

/** Asks the drafter of a range; `graded` tells its base and how its sizes lie. */
export function redraftOf(
  { drafter, sizes }: Pick<DraftedRange, 'drafter' | 'sizes'>,
  { exactRules, plans, stackPoint }: GradedPattern,
): Redraft {
  const { base, moves: now } = exactRules;
  const ofBase = sizes[base]?.draft;
  const formulas = new Set(drafter.definitions.order.map(({ key }) => key));
  return ({ piece, point }, axis, change) => {
    const plan = plans[piece];
    const key = `${plan?.name ?? ''}/${plan?.pointNames[point] ?? ''}.${axis}`;
    if (ofBase === undefined || !formulas.has(key)) return [];
    try {
      const drafts = sizes.map(({ measured, label }, size) => {
        if (size === base) return ofBase;
        const by = (value: number, atBase: number): number => atBase + change(value - atBase, size);
        return drafter.draft(measured, label, ofBase, { key, by });
      });
      const stacked = drafts.map(({ pieces }) => pieces.map((own) => stackOn(own, stackPoint)));
      const { moves } = deriveRules(stacked, base);
      return plans.flatMap(({ pointNames }, p) =>
        pointNames.flatMap((_, i) => {
          const more = moves.map((of, size) => ({
            x: (of[p]?.[i]?.x ?? NaN) - (now[size]?.[p]?.[i]?.x ?? NaN),
            y: (of[p]?.[i]?.y ?? NaN) - (now[size]?.[p]?.[i]?.y ?? NaN),
          }));
          const moved = more.some(({ x, y }) => Math.abs(x) + Math.abs(y) > SAME_PLACE);
          return moved ? [{ at: { piece: p, point: i }, by: more }] : [];
        }),
      );
    } catch (error) {
      // A change of which no skirt can be drafted is not what was meant.
      if (error instanceof InputError) return [];
      throw error;
    }
  };
}
