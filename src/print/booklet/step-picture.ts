/** The small drawing beside a step of sewing: its pieces, with the edges that it sews strong. */
import { segmentsBounds } from '../../geometry/bounds';
import { point } from '../../geometry/point';
import type { Segment } from '../../geometry/segment';
import { movedSegment, segmentPart } from '../../geometry/segment';
import type { Edge, Piece } from '../../pattern/piece';
import { edgeSegments, outlineSegments, pointOf } from '../../pattern/piece';
import type { Shape, Stroke } from '../../render/scene';
import { paragraph } from '../../render/furniture';
import { INK, SOFT_INK } from '../../render/size-style';
import type { Sketch } from '../../render/sketch';
import { heightOf, moved, sketchOf } from '../../render/sketch';
import { fitted, text } from '../../render/type';
import type { SewingStep, SewnEdge } from '../../sewing/step';
import { ventSection } from './vent-section';

/** mm. */
const OUTLINE: Stroke = { color: SOFT_INK, width: 0.2 };
const SEWN: Stroke = { color: INK, width: 0.7 };
const WIDTH = 52;
const HEIGHT = 27;
/** Pieces side by side at most, and the height of a row where they take several. */
const MOST_BESIDE = 4;
const LOW_HEIGHT = 19;
const BAND_HEIGHT = 5;
const BETWEEN = 3;
const NAME = 2.2;
const EDGES = 2.2;
/** No tolerance: the smallest type in mm that is read with ease. */
const LEAST_NAME = 1.7;
/** A piece this many times as wide as it is high lies below the others, across the picture. */
const LONG = 3;

/** What the drawing is made from. */
export interface PicturedGarment {
  /** Of one size. */
  readonly pieces: readonly Piece[];
  /** mm from the top of the center back to the end of the zip. */
  readonly zipEnd: number;
}

/** The drawing of a step, at most 52 mm wide; undefined for a step that shows no piece. */
export function stepPicture(step: SewingStep, garment: PicturedGarment): Sketch | undefined {
  const shown = garment.pieces.filter(
    ({ plan: { name } }) =>
      step.sews.some(({ piece }) => piece === name) || step.beside?.includes(name) === true,
  );
  if (shown.length === 0) return undefined;
  const isLong = (piece: Piece): boolean => {
    const { left, right, top, bottom } = segmentsBounds(outlineSegments(piece));
    return right - left > LONG * (bottom - top);
  };
  const upright = shown.filter((piece) => !isLong(piece));
  const besides = evenly(upright, Math.ceil(upright.length / MOST_BESIDE));
  const rows = [...besides, ...shown.filter(isLong).map((p) => [p])];
  const height = besides.length > 1 ? LOW_HEIGHT : HEIGHT;
  let y = 0;
  const sketches = rows.map((row) => {
    const placed = moved(
      rowOf(row, step.sews, garment, besides.includes(row) ? height : BAND_HEIGHT),
      point(0, y),
    );
    y += heightOf(placed) + BETWEEN;
    return placed;
  });
  const words = edgeWords(step, shown);
  const named = words === '' ? undefined : paragraph(words, EDGES, WIDTH, y - BETWEEN + 1);
  const section = step.section && ventSection(step.section === 'lined-vent');
  const below = (named?.bottom ?? y) + BETWEEN;
  return sketchOf([
    ...sketches.flatMap(({ shapes }) => shapes),
    ...(named?.shapes ?? []),
    ...(section === undefined ? [] : moved(section, point(0, below)).shapes),
  ]);
}

/** The pieces in so many rows, as many in each but for the last. */
function evenly(pieces: readonly Piece[], rows: number): readonly (readonly Piece[])[] {
  const count = Math.ceil(pieces.length / rows);
  return Array.from({ length: rows }, (_, i) => pieces.slice(i * count, (i + 1) * count));
}

/** `Strong lines: waist, side.`; empty where the step sews nothing. */
function edgeWords({ sews }: SewingStep, shown: readonly Piece[]): string {
  const names = sews
    .filter(({ piece }) => shown.some(({ plan }) => plan.name === piece))
    .map(({ edge, stretch }) => {
      const name = edge.replace(/_/gu, ' ');
      return stretch === undefined ? name : `${name} ${stretch} the zip end`;
    });
  return names.length === 0 ? '' : `Strong lines: ${[...new Set(names)].join(', ')}.`;
}

/** Pieces side by side at one scale, their names below. */
function rowOf(
  pieces: readonly Piece[],
  sews: readonly SewnEdge[],
  garment: PicturedGarment,
  height: number,
): Sketch {
  const boxes = pieces.map((piece) => segmentsBounds(outlineSegments(piece)));
  const across = boxes.reduce((sum, { left, right }) => sum + right - left, 0);
  const down = Math.max(...boxes.map(({ top, bottom }) => bottom - top));
  const scale = Math.min((WIDTH - BETWEEN * pieces.length) / across, height / down);
  let x = 0;
  const shapes = pieces.flatMap((piece, i): readonly Shape[] => {
    const box = boxes[i] ?? { left: 0, right: 0, top: 0, bottom: 0 };
    const drawn = (part: string, segments: readonly Segment[], stroke: Stroke): Shape => ({
      kind: 'path',
      part,
      segments: segments.map((segment) =>
        movedSegment(segment, (p) =>
          point(left + scale * (p.x - box.left), scale * (p.y - box.top)),
        ),
      ),
      closed: false,
      stroke,
    });
    const left = x;
    const width = scale * (box.right - box.left);
    x += width + BETWEEN;
    const name = labelOf(piece, garment, width + BETWEEN - 0.5);
    const sewn = sews
      .filter((sewnEdge) => sewnEdge.piece === piece.plan.name)
      .flatMap((sewnEdge) => segmentsOf(piece, sewnEdge, garment.zipEnd));
    return [
      drawn('outline', outlineSegments(piece), OUTLINE),
      ...(sewn.length > 0 ? [drawn('sewn', sewn, SEWN)] : []),
      text(
        name,
        point(left + width / 2, scale * down + NAME + 1),
        fitted(name, NAME, width + BETWEEN - 0.5),
        { anchor: 'middle', color: SOFT_INK },
      ),
    ];
  });
  return sketchOf(shapes);
}

/** Its number in the list of pieces, with its name where there is room for it. */
function labelOf(piece: Piece, { pieces }: PicturedGarment, width: number): string {
  const number = `${pieces.indexOf(piece) + 1}`;
  const both = `${number} ${piece.plan.name.replace(/_/g, ' ')}`;
  return fitted(both, NAME, width) >= LEAST_NAME ? both : number;
}

function segmentsOf(piece: Piece, { edge, stretch }: SewnEdge, zipEnd: number): readonly Segment[] {
  const named = (one: Edge): boolean =>
    one.kind === 'dart' ? one.name === edge : one.seam === edge;
  // A tuck is sewn along the lines marked for it, not along its mouth at the waist.
  if (edge === 'tuck') return tuckLines(piece);
  const segments = piece.plan.outline.filter(named).flatMap((one) => edgeSegments(piece, one));
  if (stretch === undefined) return segments;
  const end = pointOf(piece, 'center_waist').y + zipEnd;
  return segments.flatMap((segment) => cutAt(segment, end, stretch));
}

function tuckLines(piece: Piece): readonly Segment[] {
  return piece.plan.marks
    .filter(({ name }) => name === 'tuck')
    .flatMap(({ through }) =>
      through.slice(1).map((to, i): Segment => ({
        kind: 'line',
        from: pointOf(piece, through[i] ?? to),
        to: pointOf(piece, to),
      })),
    );
}

/** The part of an upright edge that lies above or below a level. */
function cutAt(segment: Segment, level: number, keep: 'above' | 'below'): readonly Segment[] {
  const { from, to } = segment;
  const share = Math.min(1, Math.max(0, (level - from.y) / (to.y - from.y)));
  const isUpper = from.y < to.y === (keep === 'above');
  const [start, end] = isUpper ? [0, share] : [share, 1];
  return end > start ? [segmentPart(segment, start, end)] : [];
}
