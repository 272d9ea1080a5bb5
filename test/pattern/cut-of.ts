import type { CutPiece, SizedPattern } from '../../src/index';
import { cutPieces } from '../../src/index';

/** The pieces of a graded size, ready to cut. */
export function cutOf({
  pieces,
  parameters,
}: Pick<SizedPattern, 'pieces' | 'parameters'>): readonly CutPiece[] {
  return cutPieces(pieces, parameters) ?? [];
}
