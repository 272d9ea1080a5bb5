/** A rule missing: a corner without one, where the seams want one. */
import type { Point } from '../../geometry/point';
import type { SlipFamily } from './suspected-slip';

/** Nats for the only corner of a piece without a rule, where all others have one. */
const ONLY_BARE = 6;

/**
 * The rule is that of a point of its name on another piece, or what closes the seams in every size.
 * That a corner has no rule can be seen, so little else is needed to believe it. Where several have
 * none, a rule made up to close a seam would fit each of them and is not tried.
 */
export const missingSlips: SlipFamily = (subject) => {
  const { at, name, moves, base, following, namesakes, closing } = subject;
  if (moves !== undefined) return [];
  const closed = (['x', 'y'] as const).flatMap((axis) => {
    const rule = following.map((move, size): Point | undefined => {
      if (size === base) return { x: 0, y: 0 };
      const value = closing(axis, size);
      return value === undefined ? undefined : { ...move, [axis]: value };
    });
    return rule.every((move) => move !== undefined) ? [rule] : [];
  });
  const alone = ONLY_BARE / Math.max(1, subject.bareCorners);
  const rules = [
    ...namesakes.map((rule) => ({ rule, cost: 0.5 - alone })),
    ...(subject.bareCorners > 1 ? [] : closed.map((rule) => ({ rule, cost: 2 - alone / 2 }))),
  ];
  return rules.map(({ rule, cost }) => ({
    kind: 'rule missing' as const,
    at,
    id: 'missing',
    words: () =>
      `the rule of ${name} is probably missing: the point only moves with those beside it`,
    repairs: [{ at, moves: rule }],
    cost,
  }));
};
