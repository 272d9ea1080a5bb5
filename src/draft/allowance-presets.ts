/** Ready-made widths of all seam allowances that can be asked for by one word. */

/** For sewing at home, as a block has them by itself, or as narrow as in a factory. */
export type AllowancePreset = 'home' | 'industry';

/** The presets that may be asked for, the one taken by default first. */
export const ALLOWANCE_PRESET_NAMES: readonly AllowancePreset[] = ['home', 'industry'];
