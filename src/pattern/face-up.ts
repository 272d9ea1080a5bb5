/**
 * Which side of the cloth is up where a piece is cut as it is drawn. A drafted piece is drawn as seen from outside
 * the garment; how a given one is seen only whoever drew it knows.
 */
import type { Cutting, PiecePlan } from './piece';

/** A side of the cloth. */
export const FACES = ['right', 'wrong'] as const;
/** One of them. */
export type Face = (typeof FACES)[number];

/**
 * The side that is up, where it matters and is known: what is made for one side of the wearer is no pair, and a
 * lining has its right side to the body, so that from outside its wrong side is seen.
 */
export function faceUp({ name, part }: PiecePlan, { cloth, up }: Cutting): Face | undefined {
  if (part === 'piece') return up;
  if (part === 'waistband') return cloth === 'shell' ? 'right' : undefined;
  if (!/^(?:left|right)_/u.test(name)) return undefined;
  return part === 'lining' ? 'wrong' : 'right';
}
