/** Which measurements move a point at all, found by drafting other bodies. */
import type { Draft, Drafter } from '../../draft/compile-block';
import { InputError } from '../../errors';
import { stackOn } from '../../grade/stack';
import type { Axis } from '../../rule-sheet/rule-sheet';
import { COMPUTED_PLACE } from '../../tolerance';

/** mm. A body that differs this much from the base in one measurement is still a likely one. */
const OTHER_BODY = 10;

/** Where a point stands among the pieces of a draft. */
export interface PointPlace {
  /** Index among the plans, and among the points of that plan. */
  readonly piece: number;
  readonly point: number;
  readonly axis: Axis;
}

/**
 * The measurements that move this coordinate, seen from the stack point: for each, the base body is
 * drafted anew with that measurement alone 10 mm larger, 10 mm smaller, and as it is in every other
 * size of the range. `bodies` are the sizes in mm, in the order of `drafter.measurements`.
 */
export function measurementsThatReach(
  drafter: Drafter,
  bodies: readonly (readonly number[])[],
  base: { readonly index: number; readonly draft: Draft; readonly stackPoint: string },
): (place: PointPlace) => readonly string[] {
  const body = bodies[base.index] ?? [];
  const tried = drafter.measurements.map((name, k) => {
    const own = body[k] ?? NaN;
    const lengths = new Set([own - OTHER_BODY, own + OTHER_BODY, ...bodies.map((one) => one[k])]);
    lengths.delete(own);
    const drafts = [...lengths].flatMap((length) =>
      drafted(
        drafter,
        body.map((mm, i) => (i === k ? (length ?? NaN) : mm)),
        base.draft,
      ),
    );
    return { name, drafts };
  });
  const at = ({ pieces }: Draft, { piece, point, axis }: PointPlace): number => {
    const own = pieces[piece];
    return own === undefined ? NaN : (stackOn(own, base.stackPoint).points[point]?.[axis] ?? NaN);
  };
  return (place) => {
    const here = at(base.draft, place);
    const isMoved = (draft: Draft): boolean => Math.abs(at(draft, place) - here) > COMPUTED_PLACE;
    return tried.filter(({ drafts }) => drafts.some(isMoved)).map(({ name }) => name);
  };
}

/** The draft of another body; none where the style does not allow it. */
function drafted(drafter: Drafter, body: readonly number[], base: Draft): readonly Draft[] {
  try {
    return [drafter.draft(body, 'a body beside the base', base)];
  } catch (error) {
    if (error instanceof InputError) return [];
    throw error;
  }
}
