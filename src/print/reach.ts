/** How far a part's ink reaches, strip by strip, so that parts may lie closer than their boxes. */
import type { Box } from '../geometry/bounds';
import { boxesOverlap, grownBox } from '../geometry/bounds';
import type { Ink } from './ink';

/** mm. Width of a strip. */
const STRIP = 4;

/** The nearest and the farthest ink in each strip, in mm from the side of the part's box. */
interface Profile {
  readonly from: Float64Array;
  readonly to: Float64Array;
}

/** What a part takes up: of the strips along x, and of those along y. */
export interface Reach {
  readonly rows: Profile;
  readonly columns: Profile;
}

/** Of a box, the extent across the strips and along them. */
type Extent = readonly [across: number, acrossEnd: number, along: number, alongEnd: number];

const inRows = ({ left, top, right, bottom }: Box): Extent => [top, bottom, left, right];
const inColumns = ({ left, top, right, bottom }: Box): Extent => [left, right, top, bottom];

/** The reach within the box of a part, whose ink keeps `clear` mm from its sides. */
export function reachOf({ chords, words }: Ink, box: Box, clear: number): Reach {
  const boxes = [...words];
  for (const { from, to } of chords) {
    const longer = Math.max(Math.abs(to.x - from.x), Math.abs(to.y - from.y));
    const steps = Math.max(1, Math.ceil(longer / STRIP));
    let [x1, y1] = [from.x, from.y];
    for (let k = 1; k <= steps; k++) {
      const x2 = from.x + ((to.x - from.x) * k) / steps;
      const y2 = from.y + ((to.y - from.y) * k) / steps;
      boxes.push({
        left: Math.min(x1, x2),
        top: Math.min(y1, y2),
        right: Math.max(x1, x2),
        bottom: Math.max(y1, y2),
      });
      [x1, y1] = [x2, y2];
    }
  }
  const inked = boxes.map((ink) => grownBox(ink, clear));
  return {
    rows: profile(inked.map(inRows), inRows(box)),
    columns: profile(inked.map(inColumns), inColumns(box)),
  };
}

function profile(inked: readonly Extent[], [across, acrossEnd, along]: Extent): Profile {
  const count = Math.max(1, Math.ceil((acrossEnd - across) / STRIP));
  const from = new Float64Array(count).fill(Infinity);
  const to = new Float64Array(count).fill(-Infinity);
  const stripAt = (place: number): number =>
    Math.max(0, Math.min(count - 1, Math.floor((place - across) / STRIP)));
  for (const [first, last, near, far] of inked) {
    const end = stripAt(last);
    for (let i = stripAt(first); i <= end; i++) {
      from[i] = Math.min(from[i] ?? Infinity, near - along);
      to[i] = Math.max(to[i] ?? -Infinity, far - along);
    }
  }
  // What is blank between ink belongs to the part.
  for (let i = 1; i < count; i++) {
    if (from[i] !== Infinity) continue;
    from[i] = from[i - 1] ?? Infinity;
    to[i] = to[i - 1] ?? -Infinity;
  }
  return { from, to };
}

/** A reach at its place. */
export interface Reaching {
  readonly reach: Reach;
  readonly box: Box;
}

/**
 * Whether parts come nearer than `gap` mm to each other. Parts do not where one lies beside the other in
 * every row, or above it in every column; where their boxes are apart, they never do.
 */
export function areNear(a: Reaching, b: Reaching, gap: number): boolean {
  if (!boxesOverlap(grownBox(a.box, gap), b.box)) return false;
  return (
    meet(a.reach.rows, inRows(a.box), b.reach.rows, inRows(b.box), gap) &&
    meet(a.reach.columns, inColumns(a.box), b.reach.columns, inColumns(b.box), gap)
  );
}

function meet(a: Profile, atA: Extent, b: Profile, atB: Extent, gap: number): boolean {
  const first = Math.max(0, Math.floor((atB[0] - gap - atA[0]) / STRIP));
  const last = Math.min(a.from.length - 1, Math.floor((atB[1] + gap - atA[0]) / STRIP));
  const apart = atB[2] - atA[2];
  const meetAt = (i: number): boolean => {
    const start = atA[0] + i * STRIP - gap - atB[0];
    const end = Math.min(b.from.length - 1, Math.floor((start + STRIP + 2 * gap) / STRIP));
    const near = (a.from[i] ?? 0) - gap - apart;
    const far = (a.to[i] ?? 0) + gap - apart;
    for (let k = Math.max(0, Math.floor(start / STRIP)); k <= end; k++) {
      if ((b.from[k] ?? 0) < far && near < (b.to[k] ?? 0)) return true;
    }
    return false;
  };
  // Parts that lie over each other mostly do so at their middle.
  const middle = (first + last) >> 1;
  for (let by = 0; by <= last - first; by++) {
    if (middle + by <= last && meetAt(middle + by)) return true;
    if (middle - by >= first && meetAt(middle - by)) return true;
  }
  return false;
}
