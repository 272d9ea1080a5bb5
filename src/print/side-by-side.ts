/** Parts packed on a strip of a given width, which is as long as it needs to be. */
import type { Box } from '../geometry/bounds';
import { boxesOverlap, grownBox } from '../geometry/bounds';
import { point } from '../geometry/point';
import type { Arrangement, PlanePart } from './plane';
import { zeroAt } from './plane';

/** mm between two parts. */
export const GAP = 10;
/** mm. What is put together or projected stays about as wide as a table. */
export const TABLE = 1300;

/** Parts side by side, about as wide as a table. */
export function onTable(parts: readonly PlanePart[]): Arrangement {
  const arrangement = onStrip(parts, Math.max(TABLE, ...parts.map(widthOf)));
  if (arrangement === undefined) throw new RangeError('the strip is as wide as the widest part');
  return arrangement;
}

/**
 * The parts, the longest first, each as high up and then as far left as it finds room beside or
 * below those before it. The strip begins at (0, 0); undefined if a part is wider than it.
 */
export function onStrip(parts: readonly PlanePart[], width: number): Arrangement | undefined {
  const longest = parts.toSorted((a, b) => heightOf(b) - heightOf(a));
  const taken = new Map<PlanePart, Box>();
  for (const part of longest) {
    const spread = [...taken.values()].map((box) => grownBox(box, GAP));
    const lefts = [0, ...spread.map(({ right }) => right)].toSorted((a, b) => a - b);
    const tops = [0, ...spread.map(({ bottom }) => bottom)].toSorted((a, b) => a - b);
    const boxes = tops.flatMap((top) =>
      lefts.map((left) => ({
        left,
        top,
        right: left + widthOf(part),
        bottom: top + heightOf(part),
      })),
    );
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

/** mm. */
export function widthOf({ box }: PlanePart): number {
  return box.right - box.left;
}

function heightOf({ box }: PlanePart): number {
  return box.bottom - box.top;
}
