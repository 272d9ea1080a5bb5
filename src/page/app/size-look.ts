/** How sizes are told apart on the screen: the colors and dashes of the printed nest. */
import { sizeStyle } from '../../render/size-style';

/** Pixels of a dash that is a millimeter on paper. No tolerance: a scale. */
const SCALE = 0.7;
const COLORS = 4;

/** The class that colors a size of that rank, and its dashes in pixels. */
export function sizeLook(
  rank: number,
  isBase: boolean,
): { readonly className: string; readonly dash: string | undefined } {
  const { dash } = sizeStyle(rank, isBase).outline;
  return {
    className: isBase ? 'size base' : `size color-${rank % COLORS}`,
    dash: dash?.map((length) => length * SCALE).join(' '),
  };
}
