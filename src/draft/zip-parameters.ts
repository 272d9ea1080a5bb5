/** Parameters of the zip, which every block has: it is bought, and comes in lengths of its market. */
import type { ParameterDefinition } from './block';
import { both } from './market-value';

const COMMON_PRACTICE = 'common practice, no source';

/** In what steps zips are sold, and where the opening ends. */
export const ZIP_PARAMETERS: readonly ParameterDefinition[] = [
  {
    name: 'zip_step',
    quantity: 'length',
    value: both('2 cm', '1 in'),
    least: '0.5 cm',
    most: '5 cm',
    meaning:
      'zips are bought in steps: the zip of each size is a whole number of these, rounded up',
    source: `${COMMON_PRACTICE}: zips of 18, 20, 22 cm and of 7, 8, 9 in; they do not grade continuously`,
  },
  {
    name: 'zip_above_hip',
    quantity: 'length',
    value: both('2 cm', '3/4 in'),
    least: '0 cm',
    most: '5 cm',
    meaning:
      'the opening that is needed ends this far above the hip line, so that the waist passes the hip',
    source: `${COMMON_PRACTICE}: 1 to 2 cm`,
  },
];
