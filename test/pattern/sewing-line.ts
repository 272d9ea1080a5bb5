/** The sewing line of a piece as a dense polygon, built here from its points and nothing else. */
import type { Point } from '../../src/geometry/point';
import type { Segment } from '../../src/geometry/segment';
import { pointOf } from '../../src/index';
import type { Edge, Piece } from '../../src/index';
import { casteljau } from '../geometry/curves';

/** Chords a curve: on the curves of a skirt within a few hundredths of a millimeter. */
const CHORDS = 60;

/** Places along one edge, its end left out; a dart is crossed over its cap. */
export function edgePlaces(piece: Piece, edge: Edge): readonly Point[] {
  const at = (name: string): Point => pointOf(piece, name);
  if (edge.kind === 'cubic') {
    const curve = {
      kind: 'cubic' as const,
      from: at(edge.from),
      leave: at(edge.leave),
      arrive: at(edge.arrive),
      to: at(edge.to),
    };
    return Array.from({ length: CHORDS }, (_, i) => casteljau(curve, i / CHORDS));
  }
  if (edge.kind === 'dart') return [at(edge.from), cap(piece, edge)];
  return [at(edge.from)];
}

/** On a level waist the edge mirrored in a leg rises by twice the angle of leg and axis. */
function cap(piece: Piece, dart: Edge & { readonly kind: 'dart' }): Point {
  const fold = `${dart.name}_fold`;
  if (piece.plan.index.has(fold)) return pointOf(piece, fold);
  const [from, tip, to] = [dart.from, dart.tip, dart.to].map((name) => pointOf(piece, name));
  const half = ((to?.x ?? NaN) - (from?.x ?? NaN)) / 2;
  const long = (tip?.y ?? NaN) - (from?.y ?? NaN);
  return {
    x: (from?.x ?? NaN) + half,
    y: (from?.y ?? NaN) - half * Math.tan(2 * Math.atan(half / long)),
  };
}

export function sewingPolygon(piece: Piece): readonly Point[] {
  return piece.plan.outline.flatMap((edge) => edgePlaces(piece, edge));
}

/** Places along a line of segments, `count` on each. */
export function densely(segments: readonly Segment[], count: number): readonly Point[] {
  return segments.flatMap((segment) =>
    Array.from({ length: count }, (_, i) =>
      segment.kind === 'cubic' ? casteljau(segment, i / count) : along(segment, i / count),
    ),
  );
}

function along({ from, to }: { readonly from: Point; readonly to: Point }, t: number): Point {
  return { x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t };
}

/** mm from a place to the nearest side of a closed polygon, or of an open chain. */
export function nearest(p: Point, polygon: readonly Point[], closed = true): number {
  let best = Infinity;
  let a = (closed ? polygon.at(-1) : polygon[0]) ?? p;
  for (const b of polygon) {
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const square = dx * dx + dy * dy;
    const t = square === 0 ? 0 : ((p.x - a.x) * dx + (p.y - a.y) * dy) / square;
    const s = Math.min(1, Math.max(0, t));
    const x = a.x + s * dx - p.x;
    const y = a.y + s * dy - p.y;
    best = Math.min(best, x * x + y * y);
    a = b;
  }
  return Math.sqrt(best);
}

/** Whether a place lies inside a closed polygon: a ray from it leaves once more than it enters. */
export function isWithin(p: Point, polygon: readonly Point[]): boolean {
  let within = false;
  let a = polygon.at(-1) ?? p;
  for (const b of polygon) {
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y))
      within = !within;
    a = b;
  }
  return within;
}

/** Corners at which a polygon clearly turns. */
export function turns(polygon: readonly Point[]): readonly Point[] {
  return polygon.filter((b, i) => {
    const a = polygon.at(i - 1) ?? b;
    const c = polygon[(i + 1) % polygon.length] ?? b;
    const before = Math.atan2(b.y - a.y, b.x - a.x);
    const after = Math.atan2(c.y - b.y, c.x - b.x);
    return Math.abs(Math.sin((after - before) / 2)) > 0.02;
  });
}

/** A half piece with its fold along x = 0, opened out. */
export function unfolded(half: readonly Point[]): readonly Point[] {
  const mirror = half.map(({ x, y }) => ({ x: -x, y }));
  return [...half, ...mirror.toReversed()];
}
