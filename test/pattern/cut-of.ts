import type { CutPiece, GradedSize } from '../../src/index';
import { cutPieces } from '../../src/index';

/** The pieces of a graded size, ready to cut. */
export function cutOf({ pieces, parameters }: GradedSize): readonly CutPiece[] {
  return cutPieces(pieces, parameters);
}
