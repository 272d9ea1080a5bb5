/** Cut lines as polygons: what is laid on the cloth. */
import { distanceToSegment } from '../geometry/nearest';
import type { Point, StraightLine } from '../geometry/point';
import { add, cross, distance, length, mirroredIn, scale, subtract, unit } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { segmentAt } from '../geometry/segment';
import { COMPUTED_PLACE, LAY_FLATNESS, SAME_PLACE } from '../tolerance';

/** Corners in order; the last is joined to the first. */
export type Polygon = readonly Point[];

/** A closed outline as a polygon from which it stays within LAY_FLATNESS. */
export function flatOutline(segments: readonly Segment[]): Polygon {
  const corners = segments.flatMap((segment) => {
    const chords = chordCount(segment);
    return Array.from({ length: chords }, (_, k) => segmentAt(segment, k / chords));
  });
  return thinned(
    corners.filter((corner, i) => distance(corner, corners.at(i - 1) ?? corner) > SAME_PLACE),
  );
}

/** mm. Chords may leave their curve by this, and as much goes when corners are left out. */
const HALF_FLATNESS = LAY_FLATNESS / 2;

/**
 * Chords of equal parameter: a curve leaves such a chord by at most an eighth of its greatest
 * second derivative over the square of their number.
 */
function chordCount(segment: Segment): number {
  if (segment.kind === 'line') return 1;
  const { from, leave, arrive, to } = segment;
  const bend = (a: Point, b: Point, c: Point): number => length(add(subtract(a, scale(b, 2)), c));
  const second = 6 * Math.max(bend(from, leave, arrive), bend(leave, arrive, to));
  return Math.max(1, Math.ceil(Math.sqrt(second / (8 * HALF_FLATNESS))));
}

/**
 * The polygon without the corners that are not needed to stay near it (Douglas and Peucker 1973):
 * a cut line is fitted by many short curves, and each corner costs time when pieces are laid.
 */
function thinned(corners: Polygon): Polygon {
  const [first] = corners;
  if (first === undefined) return corners;
  const away = corners.map((corner) => distance(corner, first));
  const farthest = away.indexOf(Math.max(...away));
  const halves = [corners.slice(0, farthest + 1), [...corners.slice(farthest), first]];
  return halves.flatMap((chain) => thinnedChain(chain).slice(0, -1));
}

function thinnedChain(chain: Polygon): Polygon {
  const [from, to] = [chain[0], chain.at(-1)];
  if (from === undefined || to === undefined || chain.length < 3) return chain;
  // From the chord and not its line, beyond whose end a curve may swing.
  const chord: Segment = { kind: 'line', from, to };
  const off = chain.map((corner) => distanceToSegment(chord, corner));
  const most = Math.max(...off);
  if (most <= HALF_FLATNESS) return [from, to];
  const split = off.indexOf(most);
  return [
    ...thinnedChain(chain.slice(0, split + 1)).slice(0, -1),
    ...thinnedChain(chain.slice(split)),
  ];
}

/** Area in square mm, whichever way the corners run. */
export function polygonArea(corners: Polygon): number {
  const twice = corners.reduce(
    (sum, corner, i) => sum + cross(corners.at(i - 1) ?? corner, corner),
    0,
  );
  return Math.abs(twice) / 2;
}

/** The image of a point in an axis. */
export function imageIn(p: Point, { from, to }: StraightLine): Point {
  return mirroredIn(p, from, unit(subtract(to, from)));
}

/** Half a piece and its image in the fold, as one polygon. */
export function unfolded(half: Polygon, fold: StraightLine): Polygon {
  const along = unit(subtract(fold.to, fold.from));
  const onFold = (p: Point): boolean =>
    Math.abs(cross(along, subtract(p, fold.from))) <= COMPUTED_PLACE;
  // Begin where the outline leaves the fold, so that it ends where it comes back.
  const start = half.findIndex((p, i) => onFold(p) && !onFold(half[(i + 1) % half.length] ?? p));
  if (start < 0) return half;
  const ring = [...half.slice(start), ...half.slice(0, start)];
  const end = ring.findIndex((p, i) => i > 0 && onFold(p));
  const side = ring.slice(0, end < 0 ? ring.length : end + 1);
  const image = side.slice(1, -1).map((p) => imageIn(p, fold));
  return [...side, ...image.toReversed()];
}
