/** The zip among the finished measurements. */
import type { Piece } from '../pattern/piece';
import { zipOf } from '../pattern/zip';
import type { Measure } from '../grade/graded-pattern';

/** The opening and the zip in mm; nothing for a style that does not step its zips. */
export function zipMeasures(
  pieces: readonly Piece[],
  parameters: ReadonlyMap<string, number>,
): readonly Measure[] {
  const zip = zipOf(pieces, parameters);
  if (zip?.length === undefined) return [];
  return [
    { name: 'zip_opening', value: zip.opening },
    { name: 'zip_length', value: zip.length },
  ];
}
