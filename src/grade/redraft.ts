/** What a changed formula of a drafted block would do to the rules that are derived from it. */
import type { Draft, Drafter } from '../draft/compile-block';
import { InputError } from '../errors';
import type { Point } from '../geometry/point';
import type { RuledPoint } from '../rule-sheet/point-rules';
import type { Axis } from '../rule-sheet/rule-sheet';
import { SAME_PLACE } from '../tolerance';
import type { GradedPattern } from './graded-pattern';
import { deriveRules } from './rules';
import { stackOn } from './stack';

/** A point that moves otherwise, and by how much in mm, one a size. */
export interface FollowingPoint {
  readonly at: RuledPoint;
  readonly by: readonly Point[];
}

/**
 * The points that would move otherwise if one coordinate's formula moved by `change` of what it does, in
 * mm from the base: the point itself and all that are drawn from it. None where the point has no formula of its own, or
 * nothing could be drafted then.
 */
export type Redraft = (
  at: RuledPoint,
  axis: Axis,
  change: (move: number, size: number) => number,
) => readonly FollowingPoint[];

/** A size that can be drafted again: what was measured for it, and its draft. */
interface RedraftedSize {
  readonly label: string;
  readonly measured: readonly number[];
  readonly draft: Draft;
}

/** Asks the drafter of a range; `graded` tells its base and how its sizes lie. */
export function redraftOf(
  drafter: Drafter,
  sizes: readonly RedraftedSize[],
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
