/**
 * How short a lay could be at most, proved without laying anything out.
 *
 * At any place along the cloth the widths of the pieces that lie there add up to the cuttable width
 * at most. That gives the area bound. It holds as well if widths above a share `1 - e` count as the
 * whole cloth and those below `e` as nothing, because nothing wider than `e` goes beside the former:
 * a dual feasible function (Fekete and Schepers, New classes of lower bounds for bin packing
 * problems, 2001). So two pieces wider than half the cloth count with both their lengths.
 */
import { SAME_PLACE } from '../tolerance';
import type { Cloth } from './cloth';
import { cuttableWidth } from './cloth';
import type { LayShape } from './shapes';
import type { Trapezoid } from './trapezoids';

/** The shares `e` that are tried; 0 is the area bound. */
const SHARES = [0, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 1 / 3, 0.35, 0.4, 0.45, 0.5];

/**
 * mm. The greatest of the bounds that no lay of the shapes can go below: the widths at every place,
 * the longest shape, and the edges on the fold one after the other.
 */
export function lengthBound(shapes: readonly LayShape[], cloth: Cloth): number {
  const width = cuttableWidth(cloth);
  const first = shapes.flatMap(({ positions, onFold }) =>
    positions.slice(0, 1).map(({ profile }) => ({ profile, onFold })),
  );
  const trapezoids = shapes.flatMap((shape) => shape.trapezoids);
  const edges = first.map(({ onFold, profile: { slices } }) => {
    const [atFold] = slices;
    return onFold && atFold !== undefined ? atFold.far - atFold.near : 0;
  });
  return Math.max(
    ...SHARES.map((share) => sum(trapezoids.map((part) => counted(part, width, share)))),
    ...first.map(({ profile }) => profile.height),
    sum(edges),
  );
}

/** mm. The area of the shapes over the cuttable width. */
export function areaBound(shapes: readonly LayShape[], cloth: Cloth): number {
  return sum(shapes.map(({ area }) => area)) / cuttableWidth(cloth);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** mm of cloth that a part takes for itself, its width counted as the share says. */
function counted({ length, from, to }: Trapezoid, width: number, share: number): number {
  const [narrow, wide] = from < to ? [from, to] : [to, from];
  const least = share * width;
  const most = (1 - share) * width + SAME_PLACE;
  const rise = wide - narrow;
  if (rise <= SAME_PLACE) return length * shareOf((narrow + wide) / 2, least, most, width);
  // The widths of the part between `least` and `most` count as they are, those above as 1.
  const low = Math.min(Math.max(narrow, least), wide);
  const high = Math.min(Math.max(narrow, most), wide);
  const between = Math.max(0, high - low) * ((low + high) / 2 / width);
  return (length / rise) * (between + wide - Math.max(high, low));
}

function shareOf(value: number, least: number, most: number, width: number): number {
  if (value > most) return 1;
  return value < least ? 0 : value / width;
}
