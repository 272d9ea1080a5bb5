/** A row of labels beside a nest, seen from the piece: along its side, and out of it. */
import type { Box } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import type { Chord } from './chords';
import type { TextShape } from './scene';
import type { TypeOptions } from './type';
import { CAP_MIDDLE, text } from './type';

/** The side of a nest on which a row stands. */
export type RowSide = 'up' | 'down' | 'left' | 'right';

/** Coordinates of one side in mm; `out` grows away from the piece. */
export interface RowFrame {
  readonly along: (at: Point) => number;
  readonly out: (at: Point) => number;
  readonly at: (along: number, out: number) => Point;
  /** Words that begin at `out` and read away from the piece, their middle at `along`. */
  readonly words: (words: string, along: number, out: number, style: RowType) => TextShape;
  /** Words that end before `along`, or begin after it, on the level `out`. */
  readonly beside: (
    words: string,
    along: number,
    out: number,
    style: RowType & { readonly anchor: 'start' | 'end' },
  ) => TextShape;
  /** Where the box ends on this side. */
  readonly edge: (box: Box) => number;
}

/** How words of a row are set; `size` in mm. */
export type RowType = Pick<TypeOptions, 'weight' | 'color'> & { readonly size: number };

/** The side toward which a mark points out of its piece. */
export function sideOf({ x, y }: Point): RowSide {
  if (Math.abs(x) > Math.abs(y)) return x > 0 ? 'right' : 'left';
  return y > 0 ? 'down' : 'up';
}

/** The coordinates of a side. */
export function rowFrame(side: RowSide): RowFrame {
  const sign = side === 'down' || side === 'right' ? 1 : -1;
  const isUpright = side === 'up' || side === 'down';
  const at = (along: number, out: number): Point =>
    isUpright ? point(along, sign * out) : point(sign * out, along);
  return {
    along: ({ x, y }) => (isUpright ? x : y),
    out: ({ x, y }) => sign * (isUpright ? y : x),
    at,
    words: (words, along, out, { size, ...style }) =>
      text(words, at(along + CAP_MIDDLE * size, out), size, {
        ...style,
        // Words of an upright row run upward: away from the piece above it, toward it below.
        anchor: side === 'up' || side === 'right' ? 'start' : 'end',
        rotation: isUpright ? -90 : 0,
      }),
    beside: (words, along, out, { size, anchor, ...style }) => {
      const { x, y } = at(along, out);
      const place = isUpright ? point(x, y + CAP_MIDDLE * size) : point(x + CAP_MIDDLE * size, y);
      // Turned words run upward, against the way in which the row is counted.
      const turned = anchor === 'start' ? 'end' : 'start';
      return text(words, place, size, {
        ...style,
        anchor: isUpright ? anchor : turned,
        rotation: isUpright ? 0 : -90,
      });
    },
    edge: ({ left, top, right, bottom }) =>
      side === 'up' ? -top : side === 'down' ? bottom : side === 'left' ? -left : right,
  };
}

/** How far out lines reach within a stretch of a side; -Infinity where there is none. */
export function edgeBetween(
  chords: readonly Chord[],
  { along, out }: RowFrame,
  from: number,
  to: number,
): number {
  let edge = -Infinity;
  for (const chord of chords) {
    const [a, b] = [along(chord.from), along(chord.to)];
    if (Math.max(a, b) < from || Math.min(a, b) > to) continue;
    const [outA, outB] = [out(chord.from), out(chord.to)];
    for (const place of [from, to, a, b]) {
      if (place < Math.max(from, Math.min(a, b)) || place > Math.min(to, Math.max(a, b))) continue;
      edge = Math.max(
        edge,
        a === b ? Math.max(outA, outB) : outA + ((outB - outA) * (place - a)) / (b - a),
      );
    }
  }
  return edge;
}
