/**
 * The closed waist by rotation of dense polylines: darts folded one after another, the back laid
 * beside the front. Nothing of the engine's own closing, joining or measuring is used.
 */
import type { Point } from '../../src/geometry/point';
import { pointOf } from '../../src/index';
import type { Edge, Piece } from '../../src/index';
import { casteljau } from '../geometry/curves';
import { curveOf } from './shaped-pieces';

const CHORDS = 300;
const DEGREES = 180 / Math.PI;

export type Polyline = readonly Point[];

/** Points along one edge of an outline. */
export function flattened(piece: Piece, edge: Edge, chords = CHORDS): Polyline {
  const [from, to] = [pointOf(piece, edge.from), pointOf(piece, edge.to)];
  return Array.from({ length: chords + 1 }, (_, i) => {
    const t = i / chords;
    return edge.kind === 'cubic'
      ? casteljau(curveOf(piece, edge.from, edge.to), t)
      : { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) };
  });
}

/** `p` turned about `pivot` by an angle in radians, from +x to +y. */
function turned(p: Point, pivot: Point, angle: number): Point {
  const [x, y] = [p.x - pivot.x, p.y - pivot.y];
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { x: pivot.x + cos * x - sin * y, y: pivot.y + sin * x + cos * y };
}

const heading = (from: Point, to: Point): number => Math.atan2(to.y - from.y, to.x - from.x);

/** Waist and side of a panel, its darts folded from the side to the center. */
function folded(piece: Piece): { readonly waist: readonly Polyline[]; readonly side: Polyline } {
  const { outline } = piece.plan;
  const first = outline.findIndex(({ seam }) => seam === 'side');
  let lines: readonly Polyline[] = [flattened(piece, outline[first] as Edge)];
  for (const edge of outline.slice(0, first).toReversed()) {
    if (edge.kind !== 'dart') {
      lines = [flattened(piece, edge), ...lines];
      continue;
    }
    const tip = pointOf(piece, edge.tip);
    const angle = heading(tip, pointOf(piece, edge.from)) - heading(tip, pointOf(piece, edge.to));
    lines = lines.map((line) => line.map((p) => turned(p, tip, angle)));
  }
  return { waist: lines.slice(0, -1), side: lines.at(-1) ?? [] };
}

/** The stretches of the closed waist from center front over the side to center back. */
export function closedWaist(front: Piece, back: Piece): readonly Polyline[] {
  const { waist, side } = folded(front);
  const other = folded(back);
  const mirror = (line: Polyline): Polyline => line.map(({ x, y }) => ({ x: -x, y }));
  const otherSide = mirror(other.side);
  const [a, b] = [side.slice(0, 2), otherSide.slice(0, 2)] as unknown as [Point, Point][];
  if (a === undefined || b === undefined) throw new RangeError('a side without points');
  const angle = heading(...a) - heading(...b);
  const laid = other.waist.toReversed().map((line) =>
    mirror(line)
      .toReversed()
      .map((p) => {
        const { x, y } = turned(p, b[0], angle);
        return { x: x - b[0].x + a[0].x, y: y - b[0].y + a[0].y };
      }),
  );
  return [...waist, ...laid];
}

/** What a ruler would find on it: degrees and mm. */
export interface Figures {
  readonly corner: number;
  readonly turnBack: number;
  readonly wave: number;
}

/** A skirt's waist rises from center front, so its direction rises all the way round. */
export function figures(waist: readonly Polyline[]): Figures {
  const rises = waist.map((line) =>
    line.slice(1).map((p, i) => -heading(line[i] as Point, p) * DEGREES),
  );
  const corners = rises
    .slice(1)
    .map((rise, i) => Math.abs((rise[0] ?? NaN) - (rises[i]?.at(-1) ?? NaN)));
  let highest = -Infinity;
  const backs = rises.flat().map((rise) => (highest = Math.max(highest, rise)) - rise);
  return {
    corner: Math.max(...corners),
    turnBack: Math.max(...backs),
    wave: wave(waist.flatMap((line) => line.filter((_, i) => i % 15 === 0))),
  };
}

/**
 * How far a place lies above the chord between a place before and one after, at the most; y runs down,
 * and the string that is drawn tight lies below the waist, toward the hem.
 */
function wave(places: Polyline): number {
  let most = 0;
  places.forEach((a, i) =>
    places.slice(i + 2).forEach((b, k) => {
      const [x, y] = [b.x - a.x, b.y - a.y];
      const long = Math.hypot(x, y);
      for (const m of places.slice(i + 1, i + 2 + k))
        most = Math.max(most, (x * (a.y - m.y) - y * (a.x - m.x)) / long);
    }),
  );
  return most;
}
