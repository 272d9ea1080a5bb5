/** Seam allowances and the shape of their corners: parameters that every block has. */
import type { ParameterDefinition } from './block';
import type { MarketValue } from './market-value';
import { both } from './market-value';
import type { Setting } from './setting';

const COMMON_PRACTICE = 'common practice, no source';
const GENERAL = `${COMMON_PRACTICE}: 5/8 in or 1.5 cm at home, 3/8 in or 1 cm in industry`;
const HOME = both('1.5 cm', '5/8 in');
const NOT_GRADED = 'not graded';

function allowance(
  name: string,
  value: MarketValue,
  most: string,
  meaning: string,
  source: string,
): ParameterDefinition {
  const added = `${meaning}; ${NOT_GRADED}`;
  return { name, quantity: 'length', value, least: '0 cm', most, meaning: added, source };
}

/** The widths for sewing at home; `ALLOWANCE_PRESETS` has the others. */
export const ALLOWANCE_PARAMETERS: readonly ParameterDefinition[] = [
  allowance('side_allowance', HOME, '6 cm', 'allowance of the side seams', GENERAL),
  allowance(
    'waist_allowance',
    HOME,
    '6 cm',
    'allowance of the waist seam, on the skirt, its lining and what is sewn to them',
    GENERAL,
  ),
  allowance(
    'hem_allowance',
    both('5 cm', '2 in'),
    '15 cm',
    'depth of the turn-up at the hem of the shell',
    `${COMMON_PRACTICE}: 4 to 6 cm at home, 2.5 to 4 cm in industry`,
  ),
  allowance('vent_allowance', HOME, '6 cm', 'allowance round the extension of a vent', GENERAL),
  allowance(
    'band_allowance',
    HOME,
    '6 cm',
    'allowance of the ends and the inside edge of a waistband',
    GENERAL,
  ),
  allowance(
    'facing_edge_allowance',
    both('1 cm', '3/8 in'),
    '6 cm',
    'allowance of the lower edge of a facing, for neatening it',
    `${COMMON_PRACTICE}: 3/8 in at home, 1/4 in in industry`,
  ),
  allowance(
    'lining_hem_allowance',
    both('3 cm', '1 1/4 in'),
    '15 cm',
    'depth of the hem of the lining',
    `${COMMON_PRACTICE}: less than the hem of the shell, so that it never shows`,
  ),
  {
    name: 'corner_style',
    quantity: 'number',
    value: '0',
    least: '0',
    most: '2',
    meaning:
      'corners of the cut line: 0 squared off where a seam is pressed open, else mitered; ' +
      '1 all mitered; 2 stepped, so that the wider allowance ends on the seam line. ' +
      'Hems are mirrored, and folds run straight on, in each of them',
    source: `${COMMON_PRACTICE}: mirrored at the hem, squared off elsewhere`,
    count: true,
  },
];

/** Ready-made widths of all allowances: for sewing at home, or as narrow as in a factory. */
export type AllowancePreset = 'home' | 'industry';

/** The presets that may be asked for, the one taken by default first. */
export const ALLOWANCE_PRESET_NAMES: readonly AllowancePreset[] = ['home', 'industry'];

const NARROW = both('1 cm', '3/8 in');
const INDUSTRY = 'common practice in production, no source: 3/8 in for side seams and waists';

/** Settings on top of the block's own widths, which are those for sewing at home. */
export const ALLOWANCE_PRESETS: Readonly<Record<AllowancePreset, readonly Setting[]>> = {
  home: [],
  industry: [
    preset(
      'zip_allowance',
      both('2 cm', '3/4 in'),
      `${COMMON_PRACTICE}: 1/2 to 3/4 in in industry`,
    ),
    preset('side_allowance', NARROW, INDUSTRY),
    preset('waist_allowance', NARROW, INDUSTRY),
    preset(
      'hem_allowance',
      both('3 cm', '1 1/4 in'),
      `${COMMON_PRACTICE}: 2.5 to 4 cm in industry`,
    ),
    preset('vent_allowance', NARROW, INDUSTRY),
    preset('band_allowance', NARROW, INDUSTRY),
    preset(
      'facing_edge_allowance',
      both('6 mm', '1/4 in'),
      `${COMMON_PRACTICE}: 1/4 in on outside edges`,
    ),
    preset('lining_hem_allowance', both('2 cm', '3/4 in'), COMMON_PRACTICE),
  ],
};

function preset(parameter: string, value: MarketValue, note: string): Setting {
  return { parameter, value, note, place: { field: 'allowances' } };
}
