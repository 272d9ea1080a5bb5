/** All finished measurements of a skirt, in the order in which they are told. */
import type { Measure } from '../grade/graded-pattern';
import type { Piece } from '../pattern/piece';
import { finishedMeasures } from './finished';
import { madePieceMeasures } from './made-pieces';
import { zipMeasures } from './zip';

/** Those of the panels, of the pieces made from them, and of the zip. */
export function skirtMeasures(
  pieces: readonly Piece[],
  parameters: ReadonlyMap<string, number>,
): readonly Measure[] {
  return [
    ...finishedMeasures(pieces),
    ...madePieceMeasures(pieces),
    ...zipMeasures(pieces, parameters),
  ];
}
