/** How far a part's ink reaches, strip by strip, so that parts may lie closer than their boxes. */
import type { Box } from '../geometry/bounds';
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

/** Of a box, the extent across the strips, and where it begins along them. */
interface Extent {
  readonly across: number;
  readonly acrossEnd: number;
  readonly along: number;
}

const inRows = ({ left, top, bottom }: Box): Extent => ({
  across: top,
  acrossEnd: bottom,
  along: left,
});
const inColumns = ({ left, top, right }: Box): Extent => ({
  across: left,
  acrossEnd: right,
  along: top,
});

/** The reach within the box of a part, whose ink keeps `clear` mm from its sides. */
export function reachOf({ chords, words }: Ink, box: Box, clear: number): Reach {
  const [rows, columns] = [blankProfile(inRows(box)), blankProfile(inColumns(box))];
  const mark = (left: number, top: number, right: number, bottom: number): void => {
    rows.mark(top - clear, bottom + clear, left - clear, right + clear);
    columns.mark(left - clear, right + clear, top - clear, bottom + clear);
  };
  for (const { left, top, right, bottom } of words) mark(left, top, right, bottom);
  for (const { from, to } of chords) {
    const longer = Math.max(Math.abs(to.x - from.x), Math.abs(to.y - from.y));
    const steps = Math.max(1, Math.ceil(longer / STRIP));
    let { x: x1, y: y1 } = from;
    for (let k = 1; k <= steps; k++) {
      const x2 = from.x + ((to.x - from.x) * k) / steps;
      const y2 = from.y + ((to.y - from.y) * k) / steps;
      mark(Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2));
      x1 = x2;
      y1 = y2;
    }
  }
  return { rows: rows.filled(), columns: columns.filled() };
}

/** A profile without ink, in which a box of it can be marked by its sides. */
function blankProfile({ across, acrossEnd, along }: Extent): {
  readonly mark: (first: number, last: number, near: number, far: number) => void;
  /** What is blank between ink belongs to the part. */
  readonly filled: () => Profile;
} {
  const count = Math.max(1, Math.ceil((acrossEnd - across) / STRIP));
  const from = new Float64Array(count).fill(Infinity);
  const to = new Float64Array(count).fill(-Infinity);
  const stripAt = (place: number): number =>
    Math.max(0, Math.min(count - 1, Math.floor((place - across) / STRIP)));
  return {
    mark: (first, last, near, far) => {
      const end = stripAt(last);
      for (let i = stripAt(first); i <= end; i++) {
        from[i] = Math.min(from[i] ?? Infinity, near - along);
        to[i] = Math.max(to[i] ?? -Infinity, far - along);
      }
    },
    filled: () => {
      for (let i = 1; i < count; i++) {
        if (from[i] !== Infinity) continue;
        from[i] = from[i - 1] ?? Infinity;
        to[i] = to[i - 1] ?? -Infinity;
      }
      return { from, to };
    },
  };
}

/**
 * Whether parts of these reaches, in these boxes, come nearer than `gap` mm to each other. Parts do not
 * where one lies beside the other in every row, or above it in every column; where their boxes are
 * apart, they never do.
 */
export function areNear(a: Reach, atA: Box, b: Reach, atB: Box, gap: number): boolean {
  const areApart =
    atA.left - gap >= atB.right ||
    atA.right + gap <= atB.left ||
    atA.top - gap >= atB.bottom ||
    atA.bottom + gap <= atB.top;
  return (
    !areApart &&
    meet(a.rows, inRows(atA), b.rows, inRows(atB), gap) &&
    meet(a.columns, inColumns(atA), b.columns, inColumns(atB), gap)
  );
}

function meet(a: Profile, atA: Extent, b: Profile, atB: Extent, gap: number): boolean {
  const { from, to } = b;
  const first = Math.max(0, Math.floor((atB.across - gap - atA.across) / STRIP));
  const last = Math.min(a.from.length - 1, Math.floor((atB.acrossEnd + gap - atA.across) / STRIP));
  const apart = atB.along - atA.along;
  const meetAt = (i: number): boolean => {
    const start = atA.across + i * STRIP - gap - atB.across;
    const end = Math.min(from.length - 1, Math.floor((start + STRIP + 2 * gap) / STRIP));
    const near = (a.from[i] ?? 0) - gap - apart;
    const far = (a.to[i] ?? 0) + gap - apart;
    for (let k = Math.max(0, Math.floor(start / STRIP)); k <= end; k++) {
      if ((from[k] ?? 0) < far && near < (to[k] ?? 0)) return true;
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
