/** Setting a shape down on cloth that is partly taken, where it lengthens the lay least. */
import { SAME_PLACE } from '../tolerance';
import type { Interval } from './profile';
import type { Blocks } from './remembered-blocks';
import type { LayShape, Position } from './shapes';

/** A shape in one of its positions, the corner of its box at (x, y); x from the cuttable edge. */
export interface Placed {
  readonly shape: LayShape;
  readonly position: Position;
  readonly x: number;
  readonly y: number;
}

/** What is wanted of a free place first: that it begins, or that it ends, near the cloth's end. */
export type Wish = 'begins-near' | 'ends-near';

/** Places across the cloth that are tried besides the edges and the sides of what lies there. */
const STOPS = 24;
/** Halvings of the way between two stops when a shape is slid aside: below 0.1 mm. */
const HALVINGS = 10;

/**
 * The best place for a shape: the shortest lay first, then as wished, then nearest to x = 0. All
 * its positions are tried; along the cloth the first free place counts, also between and before
 * shapes that lie there. Undefined if no position fits the width.
 */
export function setDown(
  taken: readonly Placed[],
  shape: LayShape,
  width: number,
  wish: Wish,
  blocks: Blocks,
): Placed | undefined {
  const length = layLength(taken);
  let best: Placed | undefined;
  let before = 0;
  for (const position of shape.positions) {
    const room = width - position.profile.width;
    if (room < -SAME_PLACE) continue;
    const alone = shape.onFold || taken.length === 0;
    const others = othersOf(taken, position, blocks);
    const stops = alone ? [0] : stopsOf(taken, position, Math.max(0, room));
    for (const [i, stop] of stops.entries()) {
      const { height } = position.profile;
      const last = best === undefined ? Infinity : lastBetter(best, height, length, wish);
      const y = firstFree(others, stop, last + 2 * SAME_PLACE);
      if (y === undefined) continue;
      const place = { shape, position, x: stop, y };
      if (best !== undefined && !better(place, best, length, wish)) continue;
      best = place;
      before = stops[i - 1] ?? stop;
    }
  }
  return best && slidAside(othersOf(taken, best.position, blocks), best, before);
}

/** mm from the end of the cloth to where the last shape ends. */
export function layLength(placed: readonly Placed[]): number {
  return Math.max(0, ...placed.map(end));
}

function end({ y, position }: Placed): number {
  return y + position.profile.height;
}

function better(a: Placed, b: Placed, length: number, wish: Wish): boolean {
  const lengths = Math.max(length, end(a)) - Math.max(length, end(b));
  if (Math.abs(lengths) > SAME_PLACE) return lengths < 0;
  const along = wish === 'begins-near' ? a.y - b.y : end(a) - end(b);
  if (Math.abs(along) > SAME_PLACE) return along < 0;
  return a.x + a.position.profile.width < b.x + b.position.profile.width - SAME_PLACE;
}

/** The last place along the cloth that could be better than `b` for a position of that height. */
function lastBetter(b: Placed, height: number, length: number, wish: Wish): number {
  const ends = end(b) - height;
  if (wish === 'ends-near') return ends;
  return Math.min(Math.max(length, end(b)) - height, Math.max(b.y, ends));
}

/** Both edges, flush and butted with everything that lies there, and evenly between. */
function stopsOf(taken: readonly Placed[], { profile }: Position, room: number): readonly number[] {
  const stops = new Float64Array(STOPS + 1 + 4 * taken.length);
  let count = 0;
  const add = (x: number): void => {
    if (x >= 0 && x <= room) stops[count++] = x;
  };
  for (let i = 0; i <= STOPS; i++) add((i * room) / STOPS);
  for (const { x, position } of taken) {
    const right = x + position.profile.width;
    add(x);
    add(right);
    add(x - profile.width);
    add(right - profile.width);
  }
  const found: number[] = [];
  let before = -Infinity;
  for (const x of stops.subarray(0, count).sort()) {
    if (x - before > SAME_PLACE) found.push(x);
    before = x;
  }
  return found;
}

/** What lies on the cloth, for a shape that is set down in one of its positions. */
interface Other {
  readonly x: number;
  readonly y: number;
  /** What it blocks along the cloth, by how far the shape lies to the right of it. */
  readonly blocks: (shift: number) => Interval | undefined;
}

function othersOf(
  taken: readonly Placed[],
  { profile }: Position,
  blocks: Blocks,
): readonly Other[] {
  return taken.map(({ x, y, position }) => ({ x, y, blocks: blocks(position.profile, profile) }));
}

/** The first place along the cloth that none of the others blocks; undefined beyond `last`. */
function firstFree(others: readonly Other[], x: number, last: number): number | undefined {
  const spans: Interval[] = [];
  let y = 0;
  const moved = ({ from, to }: Interval): boolean => {
    if (y <= from + SAME_PLACE || y >= to - SAME_PLACE) return false;
    y = to;
    return true;
  };
  for (const other of others) {
    const span = other.blocks(x - other.x);
    if (span === undefined) continue;
    const placed = { from: other.y + span.from, to: other.y + span.to };
    spans.push(placed);
    if (moved(placed) && y > last) return undefined;
  }
  for (let again = true; again;) {
    again = false;
    for (const span of spans) if (moved(span)) again = true;
  }
  return y > last ? undefined : y;
}

/** The place moved toward x = `least` for as long as it does not move along the cloth. */
function slidAside(others: readonly Other[], place: Placed, least: number): Placed {
  let { x, y } = place;
  let low = least;
  for (let i = 0; i < HALVINGS && x - low > SAME_PLACE; i++) {
    const middle = (low + x) / 2;
    const free = firstFree(others, middle, y + SAME_PLACE);
    if (free !== undefined) {
      x = middle;
      y = free;
    } else low = middle;
  }
  return { ...place, x, y };
}
