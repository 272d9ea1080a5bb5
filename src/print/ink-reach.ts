/** How far a part's ink reaches, strip by strip, so that parts may lie closer than their boxes. */
import type { Box } from '../geometry/bounds';
import type { Ink } from './ink';
import { inParts } from './ink';

/** mm. Width of a strip. */
const STRIP = 4;

/** Strips of which a profile also knows the nearest and the farthest ink together. */
const BLOCK = 8;

/** The nearest and the farthest ink in each strip, in mm from the side of the part's box. */
interface Strips {
  readonly from: Float64Array;
  readonly to: Float64Array;
}

interface Profile extends Strips {
  readonly blocks: Strips;
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
    inParts({ from, to }, steps, mark);
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
      return { from, to, blocks: blocksOf(from, to) };
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

function blocksOf(from: Float64Array, to: Float64Array): Strips {
  const count = Math.ceil(from.length / BLOCK);
  const starts = Array.from({ length: count }, (_, block) => block * BLOCK);
  return {
    from: Float64Array.from(starts, (at) => Math.min(...from.subarray(at, at + BLOCK))),
    to: Float64Array.from(starts, (at) => Math.max(...to.subarray(at, at + BLOCK))),
  };
}

function meet(a: Profile, atA: Extent, b: Profile, atB: Extent, gap: number): boolean {
  const first = Math.max(0, Math.floor((atB.across - gap - atA.across) / STRIP));
  const last = Math.min(a.from.length - 1, Math.floor((atB.acrossEnd + gap - atA.across) / STRIP));
  if (first > last) return false;
  const along = atB.along - atA.along;
  // mm from the first strip of b to that of a.
  const across = atA.across - atB.across;
  // Parts that lie over each other mostly do so at their middle.
  const middle = (first + last) >> 1;
  if (meetAlong(a, middle, middle, b, across, along, gap, STRIP)) return true;
  for (let block = Math.floor(first / BLOCK); block * BLOCK <= last; block++) {
    if (!meetAlong(a.blocks, block, block, b.blocks, across, along, gap, STRIP * BLOCK)) continue;
    const from = Math.max(first, block * BLOCK);
    const to = Math.min(last, block * BLOCK + BLOCK - 1);
    if (meetAlong(a, from, to, b, across, along, gap, STRIP)) return true;
  }
  return false;
}

/** Whether any of the strips `first` to `last` of a, each `width` mm wide, comes nearer than `gap` to one of b. */
function meetAlong(
  a: Strips,
  first: number,
  last: number,
  b: Strips,
  across: number,
  along: number,
  gap: number,
  width: number,
): boolean {
  const { from, to } = b;
  for (let i = first; i <= last; i++) {
    const start = across + i * width - gap;
    const end = Math.min(from.length - 1, Math.floor((start + width + 2 * gap) / width));
    const near = (a.from[i] ?? 0) - gap - along;
    const far = (a.to[i] ?? 0) + gap - along;
    for (let k = Math.max(0, Math.floor(start / width)); k <= end; k++) {
      if ((from[k] ?? 0) < far && near < (to[k] ?? 0)) return true;
    }
  }
  return false;
}
