/**
 * Setting a shape down where others lie, so that together they reach least far.
 *
 * Along the cloth the room is its width, and what is filled is its length; sideways the room is a
 * length, and what is filled is the width. Names are those of the former.
 */
import { SAME_PLACE } from '../tolerance';
import type { Profile, Interval } from './profile';
import type { Blocks } from './remembered-blocks';
import type { LayShape, Position } from './shapes';

/** A position as it is seen from where the filling begins. */
export interface Seen {
  readonly position: Position;
  readonly profile: Profile;
}

/** A shape to be set down. */
export interface Waiting {
  readonly shape: LayShape;
  readonly ways: readonly Seen[];
}

/** A shape in one of its positions, the corner of its box at (x, y). */
export interface SetDown extends Seen {
  readonly shape: LayShape;
  readonly x: number;
  readonly y: number;
}

/** Whether the fill runs along the cloth or across it, which decides where its fold is. */
export type Filling = 'along' | 'sideways';

/** What is wanted of a free place first: that it begins, or that it ends, near the cloth's end. */
export type Wish = 'begins-near' | 'ends-near';

/** Halvings of the way between two stops when a shape is slid aside: below 0.1 mm. */
const HALVINGS = 10;

/**
 * The best place for a shape beside those that were set down in the same lane: the least reach of all
 * first, `reach` included, which others have that lie elsewhere; then as wished, then nearest to x = 0.
 * All its positions are tried; along y the first free place counts, also between and before shapes
 * that lie there. Undefined if no position fits the width.
 */
export function setDown(
  taken: readonly SetDown[],
  { shape, ways }: Waiting,
  width: number,
  { filling, wish, stops: between, reach, most, blocks }: Rules,
): SetDown | undefined {
  const isStacked = shape.onFold && filling === 'along';
  const atFold = shape.onFold && filling === 'sideways';
  let best: SetDown | undefined;
  let before = 0;
  for (const { position, profile } of ways) {
    const room = width - profile.width;
    if (room < -SAME_PLACE) continue;
    const others = othersOf(taken, profile, blocks);
    const alone = isStacked || taken.length === 0;
    const stops = alone ? [0] : stopsOf(taken, profile, Math.max(0, room), between);
    for (const [i, stop] of stops.entries()) {
      const fits = atFold ? 0 : most - profile.height;
      const wanted = best === undefined ? fits : lastBetter(best, profile.height, reach, wish);
      const y = firstFree(others, stop, Math.min(fits + SAME_PLACE, wanted + 2 * SAME_PLACE));
      if (y === undefined) continue;
      const place = { shape, position, profile, x: stop, y };
      if (best !== undefined && !better(place, best, reach, wish)) continue;
      best = place;
      before = stops[i - 1] ?? stop;
    }
  }
  return best && slidAside(othersOf(taken, best.profile, blocks), best, before);
}

/** What a place is chosen by. */
export interface Rules {
  readonly filling: Filling;
  readonly wish: Wish;
  /** Places along x that are tried besides the edges and the sides of what lies there. */
  readonly stops: number;
  /** mm that are reached in any case, and that may be reached. */
  readonly reach: number;
  readonly most: number;
  readonly blocks: Blocks;
}

/** mm from y = 0 to where a shape ends. */
export function end({ y, profile }: SetDown): number {
  return y + profile.height;
}

/** Whether the place `a` is better than `b` where `reach` mm are reached in any case. */
export function better(a: SetDown, b: SetDown, reach: number, wish: Wish): boolean {
  const lengths = Math.max(reach, end(a)) - Math.max(reach, end(b));
  if (Math.abs(lengths) > SAME_PLACE) return lengths < 0;
  const along = wish === 'begins-near' ? a.y - b.y : end(a) - end(b);
  if (Math.abs(along) > SAME_PLACE) return along < 0;
  return a.x + a.profile.width < b.x + b.profile.width - SAME_PLACE;
}

/** The last place along the cloth that could be better than `b` for a position of that height. */
function lastBetter(b: SetDown, height: number, reach: number, wish: Wish): number {
  const ends = end(b) - height;
  if (wish === 'ends-near') return ends;
  return Math.min(Math.max(reach, end(b)) - height, Math.max(b.y, ends));
}

/** Both edges, flush and butted with everything that lies there, and evenly between. */
function stopsOf(
  taken: readonly SetDown[],
  profile: Profile,
  room: number,
  between: number,
): readonly number[] {
  const stops = new Float64Array(between + 1 + 4 * taken.length);
  let count = 0;
  const add = (x: number): void => {
    if (x >= 0 && x <= room) stops[count++] = x;
  };
  for (let i = 0; i <= between; i++) add((i * room) / between);
  for (const { x, profile: other } of taken) {
    const right = x + other.width;
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

function othersOf(taken: readonly SetDown[], profile: Profile, blocks: Blocks): readonly Other[] {
  return taken.map((other) => ({
    x: other.x,
    y: other.y,
    blocks: blocks(other.profile, profile),
  }));
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
function slidAside(others: readonly Other[], place: SetDown, least: number): SetDown {
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
