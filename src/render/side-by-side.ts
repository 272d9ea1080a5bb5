/** Boxes packed side by side on a strip of a given width, which is as long as it needs to be. */
import type { Box } from '../geometry/bounds';
import { grownBox, pointBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { add, point } from '../geometry/point';
import { heightOf, widthOf } from './sketch';

/** What has a box, in its own coordinates. */
export interface Boxed {
  readonly box: Box;
}

/** Parts with the places of their zeros, in the order given. */
export interface Arrangement<Part extends Boxed = Boxed> {
  readonly parts: readonly Part[];
  readonly zeros: readonly Point[];
}

/** mm between the boxes of two parts, which keep clear of their lines themselves. */
export const GAP = 2;
/** mm. What is put together or projected stays about as wide as a table. */
export const TABLE = 1300;

/** What a place farther left is worth against one higher up: it leaves no hole beside it. */
const LEFTNESS = 0.05;

/** Parts side by side, about as wide as a table. */
export function onTable<Part extends Boxed>(parts: readonly Part[], gap = GAP): Arrangement<Part> {
  const arrangement = onStrip(parts, Math.max(TABLE, ...parts.map(widthOf)), gap);
  if (arrangement === undefined) throw new RangeError('the strip is as wide as the widest part');
  return arrangement;
}

/** mm. Widths that a picture may have. */
const PICTURE_WIDTHS = Array.from({ length: 16 }, (_, i) => 900 + 100 * i);

/** How parts are packed into a picture, all in mm. */
export interface Packing {
  readonly gap?: number;
  readonly widths?: readonly number[];
  /** What the picture has around its parts, both sides together. */
  readonly around?: { readonly width: number; readonly height: number };
}

/** Parts side by side in the picture that takes least room. */
export function compact<Part extends Boxed>(
  parts: readonly Part[],
  {
    gap = GAP,
    widths = PICTURE_WIDTHS,
    around: { width, height } = { width: 0, height: 0 },
  }: Packing = {},
): Arrangement<Part> {
  const [first = onTable(parts, gap), ...others] = onStrips(parts, widths, gap).flatMap(
    (shortest) => shortest ?? [],
  );
  const areaOf = (arrangement: Arrangement): number => {
    const { right, bottom } = endOf(arrangement);
    return (right + width) * (bottom + height);
  };
  return others.reduce((a, b) => (areaOf(b) < areaOf(a) ? b : a), first);
}

/** How far parts reach to the right and down, in mm from the corner of their strip. */
export function endOf({ parts, zeros }: Arrangement): Pick<Box, 'right' | 'bottom'> {
  return pointBounds(
    parts.map(({ box }, i) => add(zeros[i] ?? point(0, 0), point(box.right, box.bottom))),
  );
}

/** The corner of a part's box laid at `corner`, as the place of its zero. */
export function zeroAt({ box }: Boxed, corner: Point): Point {
  return { x: corner.x - box.left, y: corner.y - box.top };
}

/** Which parts are laid first: the longest, or the largest. */
const ORDERS: readonly ((a: Boxed, b: Boxed) => number)[] = [
  (a, b) => heightOf(b) - heightOf(a),
  (a, b) => heightOf(b) * widthOf(b) - heightOf(a) * widthOf(a),
  (a, b) => widthOf(b) - widthOf(a),
];

/**
 * The parts on a strip of each width, each as high up and as far left as it finds room beside or below
 * those before it, laid in several orders. The strip begins at (0, 0); there is none if a part is wider
 * than it.
 */
export function strips<Part extends Boxed>(
  parts: readonly Part[],
  widths: readonly number[],
  gap = GAP,
): readonly (readonly Arrangement<Part>[])[] {
  const orders = ORDERS.map((order) => inOrder(parts, parts.toSorted(order), widths, gap));
  return widths.map((width) => orders.flatMap((laid) => laid.get(width) ?? []));
}

/** The shortest of the strips; undefined if a part is wider than it. */
export function onStrip<Part extends Boxed>(
  parts: readonly Part[],
  width: number,
  gap = GAP,
): Arrangement<Part> | undefined {
  return onStrips(parts, [width], gap)[0];
}

function onStrips<Part extends Boxed>(
  parts: readonly Part[],
  widths: readonly number[],
  gap: number,
): readonly (Arrangement<Part> | undefined)[] {
  return strips(parts, widths, gap).map(([first, ...others]) =>
    others.reduce<Arrangement<Part> | undefined>(
      (a, b) => (a !== undefined && endOf(b).bottom < endOf(a).bottom ? b : a),
      first,
    ),
  );
}

/** Parts laid in one order, by the width of the strip; a strip that is too narrow for one is left out. */
function inOrder<Part extends Boxed>(
  parts: readonly Part[],
  ordered: readonly Part[],
  widths: readonly number[],
  gap: number,
): ReadonlyMap<number, Arrangement<Part>> {
  const found = new Map<number, Arrangement<Part>>();
  let last: { readonly laid: Arrangement<Part>; readonly right: number } | undefined;
  for (const width of widths.toSorted((a, b) => b - a)) {
    // What has room on a narrower strip as well is laid there alike: the better places were taken.
    if (last === undefined || last.right > width) {
      const boxes = laidBoxes(ordered, width, gap);
      if (boxes === undefined) break;
      const zeros = parts.map((part) => {
        const { left, top } = boxes.get(part) ?? part.box;
        return zeroAt(part, point(left, top));
      });
      last = {
        laid: { parts, zeros },
        right: Math.max(0, ...[...boxes.values()].map(({ right }) => right)),
      };
    }
    found.set(width, last.laid);
  }
  return found;
}

function laidBoxes<Part extends Boxed>(
  ordered: readonly Part[],
  width: number,
  gap: number,
): ReadonlyMap<Part, Box> | undefined {
  const boxes = new Map<Part, Box>();
  const taken: Box[] = [];
  for (const part of ordered) {
    const free = freePlace(part, taken, width);
    if (free === undefined) return undefined;
    boxes.set(part, free);
    taken.push(grownBox(free, gap));
  }
  return boxes;
}

/** The best place for a part beside or below the boxes that are taken; undefined if it is too wide. */
export function freePlace(part: Boxed, taken: readonly Box[], strip: number): Box | undefined {
  const [width, height] = [widthOf(part), heightOf(part)];
  const ascending = (places: number[]): number[] => places.sort((a, b) => a - b);
  const lefts = ascending([0, ...taken.map(({ right }) => right)]);
  let best: Box | undefined;
  let least = Infinity;
  for (const top of ascending([0, ...taken.map(({ bottom }) => bottom)])) {
    for (const left of lefts) {
      const cost = top + LEFTNESS * left;
      if (cost >= least || left + width > strip) break;
      if (!isFree(left, top, left + width, top + height, taken)) continue;
      best = { left, top, right: left + width, bottom: top + height };
      least = cost;
    }
  }
  return best;
}

/** Whether a box, by its sides, has no area in common with any other; so many are tried that none is made. */
function isFree(
  left: number,
  top: number,
  right: number,
  bottom: number,
  taken: readonly Box[],
): boolean {
  for (const other of taken) {
    if (left < other.right && other.left < right && top < other.bottom && other.top < bottom)
      return false;
  }
  return true;
}
