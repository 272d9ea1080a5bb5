/** The parameters of the room to walk: the wanted stride, and the opening at center back. */
import type { ParameterDefinition } from '../block';
import { NO_LENGTH, both } from '../market-value';

/** Stature, the stride that is wanted, and the measures of the opening. */
export const VENT_PARAMETERS: readonly ParameterDefinition[] = [
  {
    name: 'stature',
    quantity: 'length',
    value: both('164 cm', '64 1/2 in'),
    least: '120 cm',
    most: '220 cm',
    meaning: 'stature of the wearer, who steps by a share of it and walks on legs half as long',
    source: 'common practice, no source: taken where the chart has no stature',
    fromChart: true,
  },
  {
    name: 'stride_wanted',
    quantity: 'length',
    value: '0.433*stature',
    least: '10 cm',
    most: '150 cm',
    meaning: 'the step that the skirt must allow, heel to heel',
    source: 'PMC2943048 table 2: step length / stature, the upper of 0.422 to 0.433 in two groups',
  },
  {
    name: 'vent_length',
    quantity: 'length',
    value: NO_LENGTH,
    least: '0 cm',
    most: '150 cm',
    meaning:
      'the center back is open from the hem up to here; stride_opening is as high as the neediest ' +
      'size needs for its wanted stride, rounded up to vent_step and never under vent_least, or 0 ' +
      'where no size needs any',
    source: 'common practice, no source: 15 to 30 cm where there is a vent; not graded',
  },
  {
    name: 'vent_step',
    quantity: 'length',
    value: both('0.5 cm', '1/4 in'),
    least: '0.1 cm',
    most: '5 cm',
    meaning: 'stride_opening is a whole number of these, rounded up',
    source: "the engine's own rule: a step that a ruler shows",
  },
  {
    name: 'vent_least',
    quantity: 'length',
    value: both('15 cm', '6 in'),
    least: '0 cm',
    most: '150 cm',
    meaning: 'a stride_opening that is needed is no lower than this',
    source: 'common practice, no source: a lower opening is not worth making',
  },
  {
    name: 'vent_width',
    quantity: 'length',
    value: NO_LENGTH,
    least: '0 cm',
    most: '15 cm',
    meaning: 'width of the extension of a vent beyond the center line; 0 is a slit',
    source: 'common practice, no source: 3 to 7 cm where there is a vent; not graded',
  },
];
