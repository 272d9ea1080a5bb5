/** The zip as lengths that a size states: it is bought, so no piece shows it. */
import type { Piece } from '../pattern/piece';
import { zipOf } from '../pattern/zip';
import type { StatedLengths } from './point-of-measure';
import { NO_LENGTHS } from './point-of-measure';

/** `zip_opening` and `zip_length` in mm; empty for a style that does not step its zips. */
export function zipLengths(
  pieces: readonly Piece[],
  parameters: ReadonlyMap<string, number>,
): StatedLengths {
  const zip = zipOf(pieces, parameters);
  if (zip?.length === undefined) return NO_LENGTHS;
  return new Map([
    ['zip_opening', zip.opening],
    ['zip_length', zip.length],
  ]);
}
