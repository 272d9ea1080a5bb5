/** Parts packed on a strip of a given width, which is as long as it needs to be. */
import type { Box } from '../geometry/bounds';
import { boxesOverlap, grownBox, pointBounds } from '../geometry/bounds';
import { add, point } from '../geometry/point';
import { heightOf, widthOf } from '../render/sketch';
import type { Arrangement, PlanePart } from './plane';
import { zeroAt } from './plane';

/** mm between the boxes of two parts, which keep clear of their lines themselves. */
export const GAP = 2;
/** mm. What is put together or projected stays about as wide as a table. */
export const TABLE = 1300;

/** What a place farther left is worth against one higher up: it leaves no hole beside it. */
const LEFTNESS = 0.05;

/** Parts side by side, about as wide as a table. */
export function onTable(parts: readonly PlanePart[]): Arrangement {
  const arrangement = onStrip(parts, Math.max(TABLE, ...parts.map(widthOf)));
  if (arrangement === undefined) throw new RangeError('the strip is as wide as the widest part');
  return arrangement;
}

/** mm. Widths that a picture may have. */
const PICTURE_WIDTHS = Array.from({ length: 16 }, (_, i) => 900 + 100 * i);

/** Parts side by side in the picture that takes least room. */
export function compact(parts: readonly PlanePart[]): Arrangement {
  const choices = PICTURE_WIDTHS.flatMap((width) => onStrip(parts, width) ?? []);
  return choices.reduce((a, b) => (areaOf(b) < areaOf(a) ? b : a), onTable(parts));
}

function areaOf({ parts, zeros }: Arrangement): number {
  const ends = parts.map(({ box }, i) =>
    add(zeros[i] ?? point(0, 0), point(box.right, box.bottom)),
  );
  const { right, bottom } = pointBounds(ends);
  return right * bottom;
}

/**
 * The parts, the longest first, each as high up and as far left as it finds room beside or below
 * those before it. The strip begins at (0, 0); undefined if a part is wider than it.
 */
export function onStrip(parts: readonly PlanePart[], width: number): Arrangement | undefined {
  const longest = parts.toSorted((a, b) => heightOf(b) - heightOf(a));
  const taken = new Map<PlanePart, Box>();
  for (const part of longest) {
    const spread = [...taken.values()].map((box) => grownBox(box, GAP));
    const lefts = [0, ...spread.map(({ right }) => right)];
    const tops = [0, ...spread.map(({ bottom }) => bottom)];
    const boxes = tops
      .flatMap((top) =>
        lefts.map((left) => ({
          left,
          top,
          right: left + widthOf(part),
          bottom: top + heightOf(part),
        })),
      )
      .toSorted((a, b) => a.top - b.top + LEFTNESS * (a.left - b.left));
    const free = boxes.find(
      (box) => box.right <= width && !spread.some((other) => boxesOverlap(box, other)),
    );
    if (free === undefined) return undefined;
    taken.set(part, free);
  }
  const zeros = parts.map((part) => {
    const { left, top } = taken.get(part) ?? part.box;
    return zeroAt(part, point(left, top));
  });
  return { parts, zeros };
}
