/**
 * The search for a short lay: bottom-left fill with no-fit spans.
 *
 * Shapes are set down one after the other, each where it lengthens the lay least (set-down.ts).
 * That is done in several orders, and the shortest lay is kept. The shapes are the cut lines, not
 * boxes around them, so tapered pieces lie into each other. It is a heuristic, and always the same
 * for the same pieces; the bound of a lay says how much shorter it could be at most.
 */
import { SAME_PLACE } from '../tolerance';
import type { Cloth } from './cloth';
import { cuttableWidth } from './cloth';
import type { Lay, NoLay, Placement } from './lay';
import { layOf, placement } from './lay';
import { areaBound, lengthBound } from './length-bound';
import { offTheFold } from './off-the-fold';
import { orders } from './orders';
import type { Blocks } from './remembered-blocks';
import { rememberedBlocks } from './remembered-blocks';
import type { Placed, Wish } from './set-down';
import { layLength, setDown } from './set-down';
import type { LayShape } from './shapes';

/** Orders tried for each wish. */
const MOST_ORDERS = 24;
const WISHES: readonly Wish[] = ['ends-near', 'begins-near'];

/**
 * Lays out shapes that were made for cloth with this fold and nap. `known` are placements of the
 * same pieces that fit on this cloth as well; they are kept if nothing shorter is found. A shape
 * that does not go on the cloth makes it a NoLay.
 */
export function shortestLay(
  shapes: readonly LayShape[],
  cloth: Cloth,
  known: readonly (readonly Placement[])[] = [],
): Lay | NoLay {
  const width = cuttableWidth(cloth);
  const misfit = shapes.find((shape) => leastWidth(shape) > width + SAME_PLACE);
  if (misfit !== undefined) return noLay(misfit, width);

  const bounds = { area: areaBound(shapes, cloth), best: lengthBound(shapes, cloth) };
  const [shortestKnown] = known
    .map((placements) => layOf(placements, cloth, bounds))
    .sort((a, b) => a.length - b.length);
  if (shortestKnown !== undefined && shortestKnown.length <= bounds.best + SAME_PLACE)
    return shortestKnown;
  // What is longer than a lay that is known need not be laid to its end.
  const most = shortestKnown === undefined ? Infinity : shortestKnown.length + SAME_PLACE;
  const placed = searched(shapes, width, bounds.best, most);
  if (placed.length < shapes.length && shortestKnown !== undefined) return shortestKnown;
  const found = layOf(
    (cloth.fold === 'folded' ? offTheFold(placed, width) : placed).map((one) =>
      placement(one, cloth),
    ),
    cloth,
    bounds,
  );
  return shortestKnown !== undefined && shortestKnown.length <= found.length
    ? shortestKnown
    : found;
}

function leastWidth({ positions }: LayShape): number {
  return Math.min(...positions.map(({ profile }) => profile.width));
}

function noLay(shape: LayShape, given: number): NoLay {
  const needed = leastWidth(shape);
  const cause = Number.isFinite(needed) ? 'width' : 'grain';
  return { piece: shape.piece.piece.plan.name, cause, needed, given };
}

/**
 * The shortest lay of all orders, nothing if all are longer than `most` mm; the search ends when it
 * meets the bound.
 */
function searched(
  shapes: readonly LayShape[],
  width: number,
  bound: number,
  most: number,
): readonly Placed[] {
  const byArea = shapes.toSorted((a, b) => b.area - a.area);
  let best: readonly Placed[] = [];
  let least = most;
  const blocks = rememberedBlocks();
  for (const order of orders(byArea.length, MOST_ORDERS)) {
    const ordered = order.flatMap((i) => byArea[i] ?? []);
    for (const wish of WISHES) {
      const lay = inOrder(ordered, width, wish, least, blocks);
      if (lay === undefined) continue;
      best = lay;
      least = layLength(lay);
      if (least <= bound + SAME_PLACE) return best;
    }
  }
  return best;
}

/** The shapes set down in that order; undefined as soon as the lay is no shorter than `least`. */
function inOrder(
  shapes: readonly LayShape[],
  width: number,
  wish: Wish,
  least: number,
  blocks: Blocks,
): readonly Placed[] | undefined {
  const placed: Placed[] = [];
  for (const shape of shapes) {
    const next = setDown(placed, shape, width, wish, blocks);
    if (next === undefined) return undefined;
    placed.push(next);
    if (layLength(placed) >= least - SAME_PLACE) return undefined;
  }
  return placed;
}
