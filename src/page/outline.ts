/** Outlines of pieces as the page draws them: between sizes, folded out, and side by side. */
import type { Box } from '../geometry/bounds';
import { joinBoxes, pointBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { pathData } from '../render/svg';
import { endOf, onStrip } from '../render/side-by-side';
import type { EdgeView, PieceView, SizedView } from './wish';

/** The point at a place of the list of coordinates, in mm. */
export function pointAt(coordinates: readonly number[], place: number): Point {
  return { x: coordinates[2 * place] ?? 0, y: coordinates[2 * place + 1] ?? 0 };
}

/** The segments of an edge: two of a dart, otherwise one. */
function edgeLines({ at }: EdgeView, coordinates: readonly number[]): readonly Segment[] {
  const points = at.map((place) => pointAt(coordinates, place));
  const [a, b, c, d] = points;
  if (a === undefined || b === undefined) return [];
  if (c === undefined) return [{ kind: 'line', from: a, to: b }];
  if (d === undefined)
    return [
      { kind: 'line', from: a, to: b },
      { kind: 'line', from: b, to: c },
    ];
  return [{ kind: 'cubic', from: a, leave: b, arrive: c, to: d }];
}

/** Path data of the sewing line. */
export function netPath({ edges }: PieceView, coordinates: readonly number[]): string {
  return pathData(
    edges.flatMap((edge) => edgeLines(edge, coordinates)),
    true,
  );
}

/** Path data of one edge. */
export function edgePath(edge: EdgeView, coordinates: readonly number[]): string {
  return pathData(edgeLines(edge, coordinates), false);
}

/** Path data of the lines inside: level lines, folds of darts and the like. */
export function marksPath({ marks }: PieceView, coordinates: readonly number[]): string {
  const lines = marks.flatMap(({ at }) =>
    at.slice(1).map((to, i): Segment => {
      const [from, end] = [at[i] ?? to, to].map((place) => pointAt(coordinates, place));
      return { kind: 'line', from: from as Point, to: end as Point };
    }),
  );
  return pathData(lines, false);
}

/**
 * Coordinates at a place between the sizes, 0 for the smallest: each point on the straight way from the
 * size before to the size behind.
 */
export function coordinatesBetween(sizes: readonly SizedView[], place: number): readonly number[] {
  const low = Math.min(Math.max(0, Math.floor(place)), Math.max(0, sizes.length - 1));
  const from = sizes[low]?.coordinates ?? [];
  const to = sizes[low + 1]?.coordinates ?? from;
  const share = place - low;
  return from.map((value, i) => value + ((to[i] ?? value) - value) * share);
}

/** The mirror at the fold of a piece, as the six numbers of an SVG matrix; undefined without a fold. */
export function foldMirror(
  { edges }: PieceView,
  coordinates: readonly number[],
): readonly number[] | undefined {
  const fold = edges.find(({ kind }) => kind === 'fold');
  if (fold === undefined) return undefined;
  const [a, b] = fold.at.map((place) => pointAt(coordinates, place));
  if (a === undefined || b === undefined) return undefined;
  const angle = 2 * Math.atan2(b.y - a.y, b.x - a.x);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [c, s, s, -c, a.x - c * a.x - s * a.y, a.y - s * a.x + c * a.y];
}

/** Where each piece lies on the table, and how large the table is, in mm. */
export interface TableLayout {
  readonly zeros: readonly Point[];
  readonly width: number;
  readonly height: number;
}

/** mm. Room around a piece, and the steps in which it grows, so that nothing jumps. */
const AROUND = 6;
const STEP = 10;
const BETWEEN = 8;
/** Ways to lay the pieces, from one below the other to all in a row. */
const TRIED = 12;

/** Pieces laid on a table of the proportions `aspect`, width by height, so that they are shown largest. */
export function tableLayout(
  pieces: readonly PieceView[],
  unfolded: boolean,
  aspect: number,
): TableLayout {
  const parts = pieces.map((piece) => ({ box: steadyBox(boxOf(piece, unfolded)) }));
  const widths = parts.map(({ box }) => box.right - box.left);
  const [least, most] = [
    Math.max(1, ...widths),
    widths.reduce((sum, width) => sum + width + BETWEEN, 1),
  ];
  let best: TableLayout = { zeros: [], width: 1, height: 1 };
  let largest = 0;
  for (let i = 0; i <= TRIED; i++) {
    const strip = onStrip(parts, least + ((most - least) * i) / TRIED, BETWEEN);
    if (strip === undefined) continue;
    const { right: width, bottom: height } = endOf(strip);
    const scale = Math.min(aspect / width, 1 / height);
    if (scale > largest) {
      largest = scale;
      best = { zeros: strip.zeros, width, height };
    }
  }
  return best;
}

function boxOf(piece: PieceView, unfolded: boolean): Box {
  return joinBoxes(
    piece.sizes.map(({ coordinates, box: [left = 0, top = 0, right = 0, bottom = 0] = [] }) => {
      const corners = [
        { x: left, y: top },
        { x: right, y: top },
        { x: right, y: bottom },
        { x: left, y: bottom },
      ];
      const isCut = right > left;
      const points = isCut ? corners : piece.points.map((_, i) => pointAt(coordinates, i));
      const mirror = unfolded ? foldMirror(piece, coordinates) : undefined;
      return pointBounds(
        mirror === undefined ? points : [...points, ...points.map((p) => imageBy(mirror, p))],
      );
    }),
  );
}

function imageBy(matrix: readonly number[], { x, y }: Point): Point {
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = matrix;
  return { x: a * x + c * y + e, y: b * x + d * y + f };
}

function steadyBox({ left, top, right, bottom }: Box): Box {
  return {
    left: Math.floor((left - AROUND) / STEP) * STEP,
    top: Math.floor((top - AROUND) / STEP) * STEP,
    right: Math.ceil((right + AROUND) / STEP) * STEP,
    bottom: Math.ceil((bottom + AROUND) / STEP) * STEP,
  };
}
