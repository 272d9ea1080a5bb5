/** The allowance for a zip that a net drawing shows: a strip beside the seam that holds the zip. */
import type { Point } from '../geometry/point';
import { between, distance, dot, subtract } from '../geometry/point';
import type { Line } from '../geometry/segment';
import { segmentLength } from '../geometry/segment';
import type { Edge, MarkedLine, Piece } from '../pattern/piece';
import { outlineSegments, pointOf } from '../pattern/piece';
import { SAME_PLACE } from '../tolerance';
import { flattened } from './chords';

/** The strip in the coordinates of its piece, lengths in mm. */
export interface ZipStrip {
  /** The longest straight part of its outer line. */
  readonly border: Line;
  /** The middle of the border, and the point of the seam that is nearest to it. */
  readonly middle: Point;
  readonly seam: Point;
  readonly width: number;
  /** The seams along which it lies, in the order of the outline. */
  readonly seams: readonly string[];
}

/** The strip of a piece, or undefined where there is no allowance to speak of. */
export function zipStrip(piece: Piece): ZipStrip | undefined {
  const mark = piece.plan.marks.find(({ name }) => name === 'zip-allowance');
  const border = mark && longestChord(mark.through.map((name) => pointOf(piece, name)));
  if (mark === undefined || border === undefined) return undefined;
  const middle = between(border.from, border.to, 0.5);
  const seam = nearestOn(flattened(outlineSegments(piece)), middle);
  const width = distance(middle, seam);
  return width <= SAME_PLACE
    ? undefined
    : { border, middle, seam, width, seams: seamsAlong(mark, piece.plan.outline) };
}

/** The seams that the outline runs through from one end of a mark to the other, the shorter way. */
function seamsAlong({ through }: MarkedLine, outline: readonly Edge[]): readonly string[] {
  const ways = [run(through[0], through.at(-1), outline), run(through.at(-1), through[0], outline)];
  return ways.reduce((a, b) => (b.length < a.length ? b : a)).map(({ seam }) => seam);
}

function run(
  from: string | undefined,
  to: string | undefined,
  outline: readonly Edge[],
): readonly Edge[] {
  const first = outline.findIndex((edge) => edge.from === from);
  const turned = [...outline.slice(first), ...outline.slice(0, first)];
  return turned.slice(0, turned.findIndex((edge) => edge.to === to) + 1);
}

function longestChord(chain: readonly Point[]): Line | undefined {
  return chain.slice(1).reduce<Line | undefined>((longest, to, i) => {
    const chord: Line = { kind: 'line', from: chain[i] ?? to, to };
    return longest === undefined || segmentLength(chord) > segmentLength(longest) ? chord : longest;
  }, undefined);
}

/** The point of a chain of points that is nearest to `p`. */
function nearestOn(chain: readonly Point[], p: Point): Point {
  const feet = chain.slice(1).map((to, i) => {
    const from = chain[i] ?? to;
    const along = subtract(to, from);
    const square = dot(along, along);
    const t = square === 0 ? 0 : dot(subtract(p, from), along) / square;
    return between(from, to, Math.min(1, Math.max(0, t)));
  });
  return feet.reduce((best, foot) => (distance(foot, p) < distance(best, p) ? foot : best));
}
