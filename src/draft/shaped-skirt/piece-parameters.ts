/** Parameters of the pieces that go with the panels: waist finish, lining, zip. */
import type { ParameterDefinition } from '../block';
import { both } from '../market-value';
import { ZIP_PARAMETERS } from '../zip-parameters';
import { lengthParameter } from './shape-parameters';

const COMMON_PRACTICE = 'common practice, no source';
const WAISTLINES = 'extension bulletin CT-MMB.186, Waistline treatments';
const NOT_GRADED = 'common practice, no source: not graded';

function choice(name: string, value: string, most: string, meaning: string): ParameterDefinition {
  return {
    name,
    quantity: 'number',
    value,
    least: '0',
    most,
    meaning,
    source: COMMON_PRACTICE,
    count: true,
  };
}

/** What is made besides the panels, and how large; each choice at 0 leaves its piece out. */
export const PIECE_PARAMETERS: readonly ParameterDefinition[] = [
  choice('waist_finish', '1', '2', '1: straight waistband; 2: shaped facing; 0: neither'),
  lengthParameter(
    'band_height',
    [both('3 cm', '1 1/4 in'), '1 cm', '10 cm'],
    'finished height of the waistband; stiffeners come in fixed widths, so it is not graded',
    `${COMMON_PRACTICE}: 3 cm`,
  ),
  lengthParameter(
    'band_ease',
    [both('1 cm', '3/8 in'), '0 cm', '5 cm'],
    'the skirt edge is longer than the waistband by this, over the whole waist, and eased into it',
    `${WAISTLINES}, eases the skirt onto the band; ${COMMON_PRACTICE}: 1 to 2 cm`,
  ),
  lengthParameter(
    'underlap',
    [both('3 cm', '1 1/4 in'), '0 cm', '8 cm'],
    'extension of the waistband under its other end; not graded',
    `${WAISTLINES}, has an underlap; ${COMMON_PRACTICE}: 2.5 to 4 cm`,
  ),
  lengthParameter(
    'facing_depth',
    [both('6 cm', '2 1/2 in'), '3 cm', '9 cm'],
    'depth of the shaped facing below the waist',
    `${COMMON_PRACTICE}: 5 to 7 cm; ${NOT_GRADED}`,
  ),
  choice('lining', '1', '1', '1: lined; 0: not lined'),
  lengthParameter(
    'lining_hip_room',
    [both('0.3 cm', '1/8 in'), '0 cm', '2 cm'],
    'each panel of the lining is wider than the shell by this, from the hip down',
    `${COMMON_PRACTICE}: 1/8 in a panel side`,
  ),
  lengthParameter(
    'lining_shorter',
    [both('2 cm', '3/4 in'), '0 cm', '10 cm'],
    'the lining is shorter than the shell by this, net line to net line',
    `${COMMON_PRACTICE}: 2 cm`,
  ),
  lengthParameter(
    'tuck_length',
    [both('5 cm', '2 in'), '2 cm', '10 cm'],
    'length over which the tucks of the lining are sewn; a shorter dart is sewn to its tip',
    `${COMMON_PRACTICE}: about 2 in`,
  ),
  ...ZIP_PARAMETERS,
];
