/**
 * Lays parts on a grid of tiles so that few tiles are printed. It begins with several arrangements:
 * parts packed side by side under a grid that is moved to where it cuts them into the fewest tiles,
 * and parts laid one by one, each where it opens the fewest new tiles. In each of them every part is
 * then taken up and laid again as long as that helps; the best is kept.
 */
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import type { Arrangement } from '../render/side-by-side';
import { GAP, TABLE, strips, zeroAt } from '../render/side-by-side';
import { widthOf } from '../render/sketch';
import type { Laid, MappedPart, TileSize } from './laid-part';
import { boxAt, closedUp, laidAt, mappedPart, shifted, tileCount, tileNumber } from './laid-part';
import type { PlanePart } from './plane';
import { areNear } from './ink-reach';

/** mm between the places that are tried within a tile, and how many there are along it at most. */
const STEP = 10;
const MOST_STEPS = 30;
/** mm between them for a whole arrangement, which is improved part by part afterwards. */
const COARSE = 20;
/** Tiles more than the fewest that a part may touch by itself. */
const SPARE_TILES = 2;
/** How often every part is laid again at most. */
const ROUNDS = 3;
/** Packed arrangements that are worked on; the others already begin with more tiles. */
const PACKED = 2;

/**
 * The best arrangement found. Its tiles are counted generously: one that is touched counts. `mapped`
 * are the parts with their ink, for those who ask for more than one size of tile.
 */
export function onFewestTiles(
  parts: readonly PlanePart[],
  tile: TileSize,
  mapped: readonly MappedPart[] = parts.map(mappedPart),
): Arrangement<PlanePart> & { readonly tiles: number } {
  const places = new Map(mapped.map((part) => [part, placesOf(part, tile)]));
  const starts = [
    ...packed(parts, mapped, tile),
    ...nested(mapped, tile),
    ...ORDERS.map((order) => {
      const laid: Laid[] = [];
      for (const part of mapped.toSorted(order)) {
        laid.push(lay(part, places.get(part) ?? [], laid, tile));
      }
      return laid;
    }),
  ];
  const best = distinct(starts)
    .map((start) => closedUp(improved(start, places, tile), tile))
    .reduce((a, b) => (scoreOf(b) < scoreOf(a) ? b : a));
  const zeros = mapped.map((part) => {
    const { left, top } = best.find((laid) => laid.mapped === part)?.box ?? part.part.box;
    return zeroAt(part.part, point(left, top));
  });
  return { parts, zeros, tiles: tileCount(best) };
}

/** Without those that have the same parts at the same places, in the same order. */
function distinct(starts: readonly (readonly Laid[])[]): readonly (readonly Laid[])[] {
  return starts.filter(
    (start, i) =>
      !starts
        .slice(0, i)
        .some((other) =>
          other.every(
            ({ mapped, box }, k) =>
              start[k]?.mapped === mapped &&
              start[k].box.left === box.left &&
              start[k].box.top === box.top,
          ),
        ),
  );
}

/** No test square over a join; then fewer tiles; then fewer seams through pieces; then what is shorter on the floor. */
function scoreOf(laid: readonly Laid[]): number {
  const touched = laid.reduce((sum, { tiles }) => sum + tiles.length, 0);
  const cuts = laid.reduce((sum, one) => sum + one.cuts, 0);
  return (
    cuts * 1e12 +
    tileCount(laid) * 1e9 +
    touched * 1e5 +
    Math.max(...laid.map(({ box }) => box.bottom))
  );
}

const ORDERS: readonly ((a: MappedPart, b: MappedPart) => number)[] = [
  (a, b) => b.width * b.height - a.width * a.height,
  (a, b) => b.width - a.width,
];

/** Parts side by side on strips of so many tiles, the grid moved to where it serves best. */
function packed(
  parts: readonly PlanePart[],
  mapped: readonly MappedPart[],
  tile: TileSize,
): readonly (readonly Laid[])[] {
  const places = offsets(tile, COARSE);
  // Strips of several widths are often laid alike.
  const starts = new Map<Arrangement, readonly Laid[]>();
  const table = Math.max(TABLE, ...parts.map(widthOf));
  const columns = Math.ceil(table / tile.width);
  const widths = Array.from({ length: columns }, (_, i) => Math.min((i + 1) * tile.width, table));
  const laid = strips(parts, widths).flat();
  for (const strip of new Set(laid)) {
    const movedBy = ({ x, y }: Point): readonly Laid[] =>
      mapped.map((part, i) => {
        const zero = strip.zeros[i] ?? point(0, 0);
        const { left, top } = part.part.box;
        return laidAt(part, point(zero.x + left + x, zero.y + top + y), tile);
      });
    starts.set(strip, fewest(places, movedBy));
  }
  return fewestFirst(laid.map((strip) => starts.get(strip) ?? []));
}

function fewestFirst(starts: readonly (readonly Laid[])[]): readonly (readonly Laid[])[] {
  return starts.toSorted((a, b) => tileCount(a) - tileCount(b)).slice(0, PACKED);
}

/** mm between levels on which a part is tried in a strip, and from there upward. */
const LEVELS = 12;
const FINE = 2;

/** Parts one by one on strips of so many tiles, each as high up as what others reach lets it lie. */
function nested(mapped: readonly MappedPart[], tile: TileSize): readonly (readonly Laid[])[] {
  const table = Math.max(TABLE, ...mapped.map(({ width }) => width));
  const columns = Math.ceil(table / tile.width);
  const widths = Array.from({ length: columns }, (_, i) => (i + 1) * tile.width);
  return fewestFirst(
    widths.flatMap((width) =>
      NESTED_ORDERS.flatMap((order) => {
        const laid: Laid[] = [];
        for (const part of mapped.toSorted(order)) {
          const place = highest(part, laid, width, tile);
          if (place === undefined) return [];
          laid.push(place);
        }
        return [laid];
      }),
    ),
  );
}

function highest(
  part: MappedPart,
  others: readonly Laid[],
  width: number,
  tile: TileSize,
): Laid | undefined {
  const lefts = [0, width - part.width, ...others.map(({ box }) => box.right + GAP)];
  let best: Point | undefined;
  let least = Infinity;
  for (const left of lefts) {
    if (left < 0 || left + part.width > width) continue;
    const isFree = (top: number): boolean =>
      !isTaken(others, { mapped: part, box: boxAt(part, point(left, top)) }, 0, 0);
    const most = least - LEFTNESS * left;
    let top = 0;
    while (top < most && !isFree(top)) top += LEVELS;
    while (top > 0 && isFree(top - FINE)) top -= FINE;
    if (top >= most) continue;
    [best, least] = [point(left, top), top + LEFTNESS * left];
  }
  return best && laidAt(part, best, tile);
}

/** What a place farther left is worth against one higher up. */
const LEFTNESS = 0.05;

const NESTED_ORDERS: readonly ((a: MappedPart, b: MappedPart) => number)[] = [
  (a, b) => b.height - a.height,
  (a, b) => b.width - a.width,
  (a, b) => b.width * b.height - a.width * a.height,
];

function fewest(
  places: readonly Point[],
  movedBy: (place: Point) => readonly Laid[],
): readonly Laid[] {
  let best: readonly Laid[] = [];
  let least = Infinity;
  for (const place of places) {
    const moved = movedBy(place);
    const count = tileCount(moved);
    if (count < least) [best, least] = [moved, count];
  }
  return best;
}

/** Every place within a tile. */
function offsets({ width, height }: TileSize, least = STEP): readonly Point[] {
  const steps = (length: number): number[] => {
    const step = Math.max(least, length / MOST_STEPS);
    return Array.from({ length: Math.ceil(length / step) }, (_, i) => i * step);
  };
  return steps(height).flatMap((y) => steps(width).map((x) => point(x, y)));
}

/**
 * The part at every place within the first tile where it touches few, the fewest first. Places that
 * touch the same tiles share one list of them.
 */
function placesOf(part: MappedPart, tile: TileSize): readonly Laid[] {
  const all = offsets(tile).map(({ x, y }) => laidAt(part, point(x, y), tile));
  // A test square that two sheets share measures their join too.
  const fewestCuts = Math.min(...all.map(({ cuts }) => cuts));
  const places = all.filter(({ cuts }) => cuts === fewestCuts);
  const least = Math.min(...places.map(({ tiles }) => tiles.length));
  const lists = new Map<string, readonly number[]>();
  return places
    .filter(({ tiles }) => tiles.length <= least + SPARE_TILES)
    .toSorted((a, b) => a.tiles.length - b.tiles.length)
    .map((place) => {
      const key = place.tiles.join();
      const tiles = lists.get(key) ?? place.tiles;
      lists.set(key, tiles);
      return { ...place, tiles };
    });
}

type Places = ReadonlyMap<MappedPart, readonly Laid[]>;

function improved(start: readonly Laid[], places: Places, tile: TileSize): readonly Laid[] {
  let best = start;
  for (let round = 0; round < ROUNDS; round++) {
    let next = best;
    for (const { mapped } of start) {
      const others = next.filter((laid) => laid.mapped !== mapped);
      next = [...others, lay(mapped, places.get(mapped) ?? [], others, tile)];
    }
    if (scoreOf(next) >= scoreOf(best)) break;
    best = next;
  }
  return best;
}

/** What it costs to move a part by so many tiles. */
interface Cost {
  readonly row: number;
  readonly column: number;
  readonly cost: number;
}

/** Where a part opens the fewest tiles; then where it touches the fewest, highest and leftmost. */
function lay(
  { width }: MappedPart,
  places: readonly Laid[],
  others: readonly Laid[],
  tile: TileSize,
): Laid {
  const open = new Set(others.flatMap(({ tiles }) => tiles));
  const columns = Math.max(1, Math.floor(Math.max(TABLE, width + tile.width) / tile.width));
  // One row further than the others and the gap below them reach, where every place is free.
  const bottom = Math.max(0, ...others.map(({ box }) => box.bottom + GAP));
  const rows = Math.ceil(bottom / tile.height) + 1;
  // Places that touch the same tiles cost the same wherever they are moved to.
  const costs = new Map<readonly number[], readonly Cost[]>();
  const costsOf = (tiles: readonly number[]): readonly Cost[] => {
    const known = costs.get(tiles);
    if (known !== undefined) return known;
    const found: Cost[] = [];
    for (let row = 0; row < rows; row++) {
      for (let column = 0; column < columns; column++) {
        const by = tileNumber(column, row);
        let cost = tiles.length * 1e4 + row * 100 + column;
        for (const number of tiles) if (!open.has(number + by)) cost += 1e6;
        found.push({ row, column, cost });
      }
    }
    found.sort((a, b) => a.cost - b.cost);
    costs.set(tiles, found);
    return found;
  };
  let best: { readonly place: Laid; readonly at: Cost } | undefined;
  let least = Infinity;
  for (const place of places) {
    if (place.tiles.length * 1e4 >= least) break;
    for (const at of costsOf(place.tiles)) {
      if (at.cost >= least) break;
      if (at.column > 0 && place.box.right + at.column * tile.width > columns * tile.width)
        continue;
      if (isTaken(others, place, at.column * tile.width, at.row * tile.height)) continue;
      best = { place, at };
      least = at.cost;
      break;
    }
  }
  if (best === undefined) throw new RangeError('a further row of tiles always has room');
  return shifted(best.place, best.at.column, best.at.row, tile);
}

/** Whether a part moved by (x, y) comes too near to any of the others. */
function isTaken(
  others: readonly Laid[],
  { mapped, box }: Pick<Laid, 'mapped' | 'box'>,
  x: number,
  y: number,
): boolean {
  const moved = {
    left: box.left + x,
    top: box.top + y,
    right: box.right + x,
    bottom: box.bottom + y,
  };
  for (const other of others) {
    if (areNear(mapped.reach, moved, other.mapped.reach, other.box, GAP)) return true;
  }
  return false;
}
