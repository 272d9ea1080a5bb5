/** The parameters of the room to walk: the wanted stride, and the opening at center back. */
import type { ParameterDefinition } from '../block';

/** Stature, the stride that is wanted, and the measures of the opening. */
export const VENT_PARAMETERS: readonly ParameterDefinition[] = [
  {
    name: 'height',
    quantity: 'length',
    value: '164 cm',
    least: '120 cm',
    most: '220 cm',
    meaning: 'stature of the wearer, who steps by a share of it and walks on legs half as long',
    source: 'common practice, no source: taken where the chart has no height',
    fromChart: true,
  },
  {
    name: 'stride_wanted',
    quantity: 'length',
    value: '0.433*height',
    least: '10 cm',
    most: '150 cm',
    meaning: 'the step that the skirt must allow, heel to heel',
    source: 'PMC2943048 table 2: step length / stature, the upper of 0.422 to 0.433 in two groups',
  },
  {
    name: 'vent_length',
    quantity: 'length',
    value: '0 cm',
    least: '0 cm',
    most: '150 cm',
    meaning:
      'the center back is open from the hem up to here; stride_opening is as high as the neediest ' +
      'size needs for its wanted stride, rounded up to 5 mm and never under 15 cm, or 0 where no ' +
      'size needs any',
    source: 'common practice, no source: 15 to 30 cm where there is a vent; not graded',
  },
  {
    name: 'vent_width',
    quantity: 'length',
    value: '0 cm',
    least: '0 cm',
    most: '15 cm',
    meaning: 'width of the extension of a vent beyond the center line; 0 is a slit',
    source: 'common practice, no source: 3 to 7 cm where there is a vent; not graded',
  },
];
