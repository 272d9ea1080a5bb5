/**
 * The search for a short fill of lanes: shapes set down one after the other with no-fit spans.
 *
 * It is done two ways. Along the cloth each shape goes where it lengthens the lay least. Sideways a
 * length is given, and each shape goes where all of them take least of the width; the length is then
 * halved toward the bound for as long as they fit. That finds what nobody finds piece by piece:
 * tapered pieces shifted past each other, or one up and one down beside it. Both are done in several
 * orders. The shapes are the cut lines, not boxes around them. It is a heuristic, and always the same
 * for the same shapes; the bound of a lay says how much shorter it could be at most.
 */
import { LAY_GAIN, LAY_STEP, SAME_PLACE } from '../tolerance';
import type { Lanes } from './folding';
import { orders } from './orders';
import type { Blocks } from './remembered-blocks';
import { rememberedBlocks } from './remembered-blocks';
import type { Filling, Rules, SetDown, Waiting, Wish } from './set-down';
import { better, end, setDown } from './set-down';
import type { LayShape, Position } from './shapes';
import { alike } from './shapes';

/** A shape in one of its positions, the corner of its box at (x, y) of a lane, in mm. */
export interface Placed {
  readonly shape: LayShape;
  readonly position: Position;
  /** Index of the lane. */
  readonly lane: number;
  readonly x: number;
  readonly y: number;
}

/** Orders tried for each wish along the cloth, and for each length sideways. */
const MOST_ORDERS = 6;
/** Places that are tried besides the edges and the sides of what lies there. */
const STOPS = { along: 6, sideways: 3 };
const WISHES: readonly Wish[] = ['ends-near', 'begins-near'];

/** mm from the beginning of the lanes to where the last shape ends. */
export function lengthOf(placed: readonly Placed[]): number {
  return Math.max(0, ...placed.map(({ y, position }) => y + position.profile.height));
}

/**
 * The shortest fill that is found; undefined if all are `most` mm or longer. `bound` is what none can
 * go below: the search ends when it meets it. Every shape must fit in a lane by itself.
 */
export function shortestFill(
  shapes: readonly LayShape[],
  lanes: Lanes,
  bound: number,
  most: number,
): readonly Placed[] | undefined {
  const blocks = rememberedBlocks();
  const byArea = shapes.toSorted((a, b) => b.area - a.area);
  const kinds = byArea.map((shape) => byArea.findIndex((other) => isAlike(shape, other)));
  const along = waiting(byArea, 'along');
  const sideways = waiting(byArea, 'sideways');
  let best: readonly Placed[] | undefined;
  let least = most;
  const isDone = (): boolean => least <= bound + SAME_PLACE;
  const keep = (found: readonly Placed[] | undefined): boolean => {
    if (found === undefined) return false;
    best = found;
    least = lengthOf(found);
    return true;
  };
  const tried = orders(kinds, MOST_ORDERS);
  for (const order of tried) {
    for (const wish of WISHES) {
      keep(lengthwise(pick(along, order), lanes, { wish, most: least, blocks }));
      if (isDone()) return best;
    }
  }
  const fits = (length: number): boolean =>
    tried.some((order) =>
      WISHES.some((wish) => keep(within(pick(sideways, order), lanes, length, wish, blocks))),
    );
  // What does not gain a little gains nothing more.
  if (!fits(Math.max(bound, LAY_GAIN * least))) return best;
  let low = bound;
  while (least - low > LAY_STEP) {
    const length = (low + least) / 2;
    if (!fits(length)) low = length;
  }
  return best;
}

function isAlike(a: LayShape, b: LayShape): boolean {
  return (
    a.onFold === b.onFold &&
    a.positions.length === b.positions.length &&
    a.positions.every(({ profile }, i) => {
      const other = b.positions[i]?.profile;
      return other !== undefined && (profile === other || alike(profile, other));
    })
  );
}

function waiting(shapes: readonly LayShape[], filling: Filling): readonly Waiting[] {
  return shapes.map((shape) => ({
    shape,
    ways: shape.positions.map((position) => ({
      position,
      profile: filling === 'along' ? position.profile : position.sideways,
    })),
  }));
}

function pick(shapes: readonly Waiting[], order: readonly number[]): readonly Waiting[] {
  return order.flatMap((i) => shapes[i] ?? []);
}

/** The shapes set down along the cloth; undefined as soon as that is no shorter than `most`. */
function lengthwise(
  shapes: readonly Waiting[],
  { width, count }: Lanes,
  wanted: Pick<Rules, 'wish' | 'most' | 'blocks'>,
): readonly Placed[] | undefined {
  const { wish, most } = wanted;
  const lanes = Array.from({ length: count }, (): SetDown[] => []);
  let reach = 0;
  for (const shape of shapes) {
    const rules: Rules = { ...wanted, filling: 'along', stops: STOPS.along, reach };
    let best: SetDown | undefined;
    let into: SetDown[] | undefined;
    for (const lane of lanes) {
      const place = setDown(lane, shape, width, rules);
      if (place === undefined || (best !== undefined && !better(place, best, reach, wish)))
        continue;
      [best, into] = [place, lane];
    }
    if (best === undefined || into === undefined) return undefined;
    reach = Math.max(reach, end(best));
    if (reach >= most - SAME_PLACE) return undefined;
    into.push(best);
  }
  return lanes.flatMap((lane, i) =>
    lane.map(({ shape, position, x, y }) => ({ shape, position, lane: i, x, y })),
  );
}

/** The shapes set down across the cloth within that length; undefined if they do not fit. */
function within(
  shapes: readonly Waiting[],
  { width, count }: Lanes,
  length: number,
  wish: Wish,
  blocks: Blocks,
): readonly Placed[] | undefined {
  const lanes = Array.from({ length: count }, () => ({ taken: [] as SetDown[], reach: 0 }));
  for (const shape of shapes) {
    const isIn = lanes.some((lane) => {
      const { taken, reach } = lane;
      const stops = STOPS.sideways;
      const rules: Rules = { filling: 'sideways', wish, stops, reach, most: width, blocks };
      const place = setDown(taken, shape, length, rules);
      if (place === undefined) return false;
      taken.push(place);
      lane.reach = Math.max(reach, end(place));
      return true;
    });
    if (!isIn) return undefined;
  }
  return lanes.flatMap(({ taken }, i) =>
    taken.map(({ shape, position, x, y }) => ({ shape, position, lane: i, x: y, y: x })),
  );
}
