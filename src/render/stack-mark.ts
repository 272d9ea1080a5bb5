/** The mark of the point on which all sizes are stacked. */
import { pointOf } from '../pattern/piece';
import type { NestedPiece } from './nested-piece';
import type { Shape } from './scene';
import { circle } from './scene';
import { INK } from './size-style';

/** mm. */
const RADIUS = 4;

/** A ring round the stack point, for laying sheets of single sizes over each other. */
export function stackMark({ reference }: NestedPiece, name: string): readonly Shape[] {
  if (!reference.plan.pointNames.includes(name)) return [];
  return [circle('stack-point', pointOf(reference, name), RADIUS, { color: INK, width: 0.4 })];
}
