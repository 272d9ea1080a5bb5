/** Tolerances of the finished measurements: parameters that every block has, for its spec. */
import type { ParameterDefinition } from './block';
import { GIRTH_TOLERANCE_WORDS } from './girth-tolerance';
import type { MarketValue } from './market-value';
import { NO_LENGTH, both } from './market-value';

/** Proposals, since no table for skirts was found. */
const SOURCE = 'common practice, no source: by analogy with charts for other garments';

function tolerance(name: string, value: MarketValue, meaning: string): ParameterDefinition {
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

/** Named `<group>_tolerance`, in mm; zero leaves a girth to its grade step. */
export const TOLERANCE_PARAMETERS: readonly ParameterDefinition[] = [
  tolerance(
    'girth_tolerance',
    NO_LENGTH,
    `tolerance of waist and hip; 0 for ${GIRTH_TOLERANCE_WORDS}`,
  ),
  tolerance('hem_tolerance', both('1.2 cm', '1/2 in'), 'tolerance of the hem girth'),
  tolerance('length_tolerance', both('1 cm', '3/8 in'), 'tolerance of lengths'),
  tolerance('band_tolerance', both('0.3 cm', '1/8 in'), 'tolerance of the depth of a band'),
  tolerance('opening_tolerance', both('0.6 cm', '1/4 in'), 'tolerance of zip and vent'),
];
