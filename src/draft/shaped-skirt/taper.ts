/** Where a side tapers, as values that both panels share. */
import type { ValueDefinition } from '../block';
import { lengthValue } from './values';

/** From `taper_start`, `taper_blend` and `hem_taper`. */
export const TAPER_VALUES: readonly ValueDefinition[] = [
  // Where the straight taper would leave the vertical, halfway down the curve that blends it in.
  lengthValue('taper_level', 'waist_to_hip + taper_start + taper_blend/2'),
  // Depth from there to the side end of a hem that is level at the center, square to the side, and
  // a parabola between: the larger root of d^2 - d*fall = hem width * taper / 2.
  lengthValue('taper_fall', 'skirt_length - taper_level'),
  lengthValue(
    'taper_depth',
    '(taper_fall + sqrt(taper_fall^2 + 2*hem_taper*(hip_girth/4 + hip_ease/4 - hem_taper)))/2',
  ),
];
