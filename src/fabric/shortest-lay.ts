/**
 * A short lay on cloth that is open or folded.
 *
 * On folded cloth what is cut from two layers fills the flaps. What is cut once has one layer among
 * them, to be cut last; on a strip that the fold leaves free, which narrows the flaps; or past the
 * flaps, where the cloth is opened out: whichever takes least, the easier first.
 */
import { SAME_PLACE } from '../tolerance';
import type { Cloth } from './cloth';
import type { Placed } from './fill';
import { lengthOf, shortestFill } from './fill';
import { FLAPS, cuttableWidth, foldingOf, stripFor, widestStrip } from './folding';
import type { Lay, NoLay, Placements } from './lay';
import { endOf, layOf, placed, relaid } from './lay';
import { areaBound, fillBound, lengthBound } from './length-bound';
import { OFF_THE_FOLD, offTheFold } from './off-the-fold';
import type { LayShape } from './shapes';

/**
 * Lays out shapes that were made for cloth with this fold and nap. `known` are placements of the
 * same pieces on cloth that is no wider, or open; they are kept if nothing shorter is found. A shape
 * that does not go on the cloth makes it a NoLay.
 */
export function shortestLay(
  shapes: readonly LayShape[],
  cloth: Cloth,
  known: readonly Placements[] = [],
): Lay | NoLay {
  const misfit = shapes.find((shape) => leastWidth(shape) > roomFor(shape, cloth) + SAME_PLACE);
  if (misfit !== undefined) return noLay(misfit, roomFor(misfit, cloth));

  const area = areaBound(shapes, cloth);
  const [shortestKnown] = known
    .map((placements) => relaid(placements, cloth))
    .map((placements) => ({ placements, length: endOf(placements.placements) }))
    .sort((a, b) => a.length - b.length);
  // What is longer than a lay that is known need not be laid to its end.
  const most = shortestKnown?.length ?? Infinity;
  const bounds = { area, best: Math.max(area, lengthBound(shapes, cloth, most)) };
  const found = cloth.fold === 'open' ? onOpen : onFolded;
  const isShortest = most <= bounds.best + SAME_PLACE;
  const shorter = isShortest ? undefined : found(shapes, cloth, bounds.best, most);
  const best = shorter ?? shortestKnown?.placements;
  if (best === undefined) throw new RangeError('shapes that fit were not laid');
  return layOf(best, cloth, bounds);
}

type Search = (
  shapes: readonly LayShape[],
  cloth: Cloth,
  bound: number,
  most: number,
) => Placements | undefined;

const onOpen: Search = (shapes, cloth, bound, most) => {
  const lanes = { width: cuttableWidth(cloth), count: 1 };
  const fill = shortestFill(shapes, lanes, bound, most);
  const folding = foldingOf(cloth, 0);
  return fill && { folding, placements: placed(fill, 'open', cloth, folding) };
};

const onFolded: Search = (shapes, cloth, bound, most) => {
  const doubled = shapes.filter(({ layers }) => layers === 2);
  const single = shapes.filter(({ layers }) => layers === 1);
  let best: Placements | undefined;
  let least = most;
  const searches =
    single.length === 0 ? [amongOthers] : [amongOthers, withStrip, withWideStrip, withOpenedEnd];
  for (const search of searches) {
    if (least <= bound + SAME_PLACE) break;
    const found = search(doubled, single, cloth, bound, least);
    if (found === undefined) continue;
    best = found;
    least = endOf(found.placements);
  }
  return best;
};

type FoldedSearch = (
  doubled: readonly LayShape[],
  single: readonly LayShape[],
  cloth: Cloth,
  bound: number,
  most: number,
) => Placements | undefined;

/** Pieces cut once must keep off the fold, where they would be taken to be cut on it. */
const amongOthers: FoldedSearch = (doubled, single, cloth, bound, most) => {
  const width = cuttableWidth(cloth);
  if (doubled.length === 0 || single.some((shape) => leastWidth(shape) > width)) return undefined;
  const fill = flapFill([...doubled, ...single], cloth, 0, bound, most);
  const isOff = fill?.every(({ shape, x }) => shape.layers === 2 || x >= OFF_THE_FOLD - SAME_PLACE);
  return fill !== undefined && isOff === true ? onFlaps(fill, cloth, 0) : undefined;
};

const withOpenedEnd: FoldedSearch = (doubled, single, cloth, _bound, most) => {
  const flat = { width: cloth.width - 2 * cloth.selvage, count: 1 };
  const end = shortestFill(single, flat, fillBound(single, flat), most);
  if (end === undefined) return undefined;
  const fill = flapFill(doubled, cloth, 0, 0, most - lengthOf(end));
  if (fill === undefined) return undefined;
  const { folding, placements } = onFlaps(fill, cloth, 0);
  const past = placed(end, 'opened-end', cloth, folding, lengthOf(fill));
  return { folding, placements: [...placements, ...past] };
};

/** The strip as wide as the widest of the pieces that are cut once, which lie one after the other. */
const withStrip: FoldedSearch = (doubled, single, cloth, bound, most) =>
  besideStrip(doubled, single, cloth, Math.max(...single.map(leastWidth)), bound, most);

/** The strip as wide as the flaps can leave it, for pieces that are cut once to lie side by side. */
const withWideStrip: FoldedSearch = (doubled, single, cloth, bound, most) => {
  const widest = Math.max(...doubled.map(leastWidth));
  return besideStrip(doubled, single, cloth, widestStrip(cloth, widest), bound, most);
};

/** What is cut twice on the flaps, and what is cut once on a strip with `needed` mm for it. */
function besideStrip(
  doubled: readonly LayShape[],
  single: readonly LayShape[],
  cloth: Cloth,
  needed: number,
  bound: number,
  most: number,
): Placements | undefined {
  if (doubled.length === 0 || single.some((shape) => leastWidth(shape) > needed + SAME_PLACE))
    return undefined;
  const strip = stripFor(cloth, needed);
  const room = cuttableWidth(cloth, strip);
  if (doubled.some((shape) => leastWidth(shape) > room + SAME_PLACE)) return undefined;
  const beside = shortestFill(single, { width: needed, count: 1 }, bound, most);
  if (beside === undefined) return undefined;
  const fill = flapFill(doubled, cloth, strip, Math.max(bound, lengthOf(beside)), most);
  if (fill === undefined) return undefined;
  const { folding, placements } = onFlaps(fill, cloth, strip);
  const onStrip = placed(beside, 'strip', cloth, folding);
  return { folding, placements: [...placements, ...onStrip] };
}

/** A fill of the flaps that are left beside a strip; nothing to fill takes nothing. */
function flapFill(
  doubled: readonly LayShape[],
  cloth: Cloth,
  strip: number,
  bound: number,
  most: number,
): readonly Placed[] | undefined {
  if (doubled.length === 0) return [];
  const width = cuttableWidth(cloth, strip);
  const lanes = { width, count: FLAPS[cloth.fold] };
  const fill = shortestFill(doubled, lanes, Math.max(bound, fillBound(doubled, lanes)), most);
  return (
    fill &&
    [0, 1].flatMap((k) =>
      offTheFold(
        fill.filter(({ lane }) => lane === k),
        width,
      ),
    )
  );
}

function onFlaps(fill: readonly Placed[], cloth: Cloth, strip: number): Placements {
  const folding = foldingOf(cloth, strip);
  return { folding, placements: placed(fill, 'fold', cloth, folding) };
}

/** mm across that a shape may take on the cloth. */
function roomFor({ layers }: LayShape, cloth: Cloth): number {
  return layers === 2 ? cuttableWidth(cloth) : cloth.width - 2 * cloth.selvage;
}

function leastWidth({ positions }: LayShape): number {
  return Math.min(...positions.map(({ profile }) => profile.width));
}

function noLay(shape: LayShape, given: number): NoLay {
  const needed = leastWidth(shape);
  const cause = Number.isFinite(needed) ? 'width' : 'grain';
  return { piece: shape.piece.piece.plan.name, cause, needed, given };
}
