/** Finished measurements of the pieces that are made from the panels, where a style has them. */
import type { Piece } from '../pattern/piece';
import { seamLength } from '../pattern/piece';
import type { Measure } from '../grade/graded-pattern';
import { hipWidth } from './finished';

/** Each lining panel is half a front or half a back. */
const GIRTH = 2;

/** The closed waistband without its underlap, and the lining at the hip line, in mm. */
export function madePieceMeasures(pieces: readonly Piece[]): readonly Measure[] {
  const bands = pieces.filter(({ plan }) => plan.part === 'waistband');
  const linings = pieces.filter(({ plan }) => plan.part === 'lining');
  return [
    ...bands.map((band) => ({ name: 'waistband', value: seamLength(band, 'waist') })),
    ...(linings.length === 0
      ? []
      : [
          {
            name: 'lining_hip',
            value: GIRTH * linings.reduce((sum, piece) => sum + hipWidth(piece), 0),
          },
        ]),
  ];
}
