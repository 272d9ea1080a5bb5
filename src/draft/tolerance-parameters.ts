/** Tolerances of the finished measurements: parameters that every block has, for its spec. */
import type { ParameterDefinition } from './block';

const SOURCE = 'common practice, no source: by analogy with charts for other garments';

function tolerance(name: string, value: string, meaning: string): ParameterDefinition {
  return {
    name,
    quantity: 'length',
    value,
    least: '0 cm',
    most: '5 cm',
    meaning: `${meaning}, above and below`,
    source: SOURCE,
  };
}

/** How far a sewn skirt may be off, by kind of measurement; either way, in the spec. */
export const TOLERANCE_PARAMETERS: readonly ParameterDefinition[] = [
  tolerance(
    'girth_tolerance',
    '0 in',
    'tolerance of waist and hip; 0 for 1/4 in below a step of 1 in, 3/8 in at 1 in, 1/2 in from 1 1/2 in',
  ),
  tolerance('hem_tolerance', '1/2 in', 'tolerance of the hem girth'),
  tolerance('length_tolerance', '3/8 in', 'tolerance of lengths'),
  tolerance('band_tolerance', '1/8 in', 'tolerance of the depth of a band'),
  tolerance('opening_tolerance', '1/4 in', 'tolerance of zip and vent'),
];
