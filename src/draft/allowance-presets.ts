/** Seam allowances that can be asked for by one word. */
import type { MarketValue } from './market-value';
import { both } from './market-value';
import type { Setting } from './setting';

const COMMON_PRACTICE = 'common practice, no source';

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
