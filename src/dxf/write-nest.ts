/** A plain DXF of every size nested, one layer a size, for plotters and cutters. */
import { imageIn } from '../fabric/flat-outline';
import { joinBoxes, segmentsBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { add, point, quarterTurn, scale } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { movedSegment, segmentAt, segmentLength } from '../geometry/segment';
import type { SizedPattern } from '../grade/graded-pattern';
import type { CutPiece } from '../pattern/cut-piece';
import { drillHole } from '../pattern/notch-places';
import type { Piece } from '../pattern/piece';
import { edgeSegments, outlineSegments, pointOf } from '../pattern/piece';
import { distinct, dxfDocument } from './document';
import type { LineType } from './entities';
import { dxfLine, dxfName, dxfPoint, dxfPolyline, dxfWords } from './entities';
import type { Unfolding } from './unfolding';
import { unfoldingOf } from './unfolding';

/** Lines to draw of pieces that are ready to cut; others have net lines only. */
export type NestLines = 'net' | 'cut' | 'both';

/** mm of the chords that stand for curves: within 0.02 mm of a side seam. */
const CHORD = 4;
/** mm between pieces, and the type size of their names. */
const APART = 50;
const WORDS = 8;
/** mm that a notch reaches in from the cut line, and between the strokes of a double one. */
const NOTCH = 6;
const DOUBLE = 4;

/** How a nest is drawn. */
export interface NestLook {
  /** Both if absent. */
  readonly lines?: NestLines | undefined;
  /** Draws pieces on the fold whole, as far as they can be opened. */
  readonly unfold?: boolean | undefined;
}

/**
 * The file in parts. Sizes lie on each other as they were graded; pieces stand side by side. All of a
 * size is on its layer; what is not cut is dashed.
 */
export function* writeNest(sizes: readonly SizedPattern[], look: NestLook = {}): Generator<string> {
  const names = distinct(sizes.map(({ label }) => dxfName(`SIZE_${label}`)));
  const layers = names.map((name, i) => ({ name, color: (i % 6) + 1 }));
  yield* dxfDocument(layers, [], nestEntities(sizes, names, look));
}

function* nestEntities(
  sizes: readonly SizedPattern[],
  layers: readonly string[],
  { lines = 'both', unfold = false }: NestLook,
): Generator<string> {
  const zeros = zerosOf(sizes, unfold);
  for (const [i, { label, pieces, cutPieces }] of sizes.entries()) {
    const layer = layers[i] ?? '0';
    for (const [p, piece] of pieces.entries()) {
      const zero = zeros[p] ?? point(0, 0);
      const cut = lines === 'net' ? undefined : cutPieces?.[p];
      const opened = unfold ? unfoldingOf(piece, cutPieces?.[p]) : undefined;
      const pen = penOn(layer, zero, opened);
      yield* cut === undefined ? netPiece(piece, pen) : cutPiece(cut, lines === 'both', pen);
      for (const { through, name } of piece.plan.marks) {
        if (cut !== undefined && name === 'grainline') continue;
        const points = through.map((at) => pointOf(piece, at));
        // Each half has its lines, and the whole has one grain.
        yield name === 'grainline' ? pen.once(points) : pen.line(points, false, 'DASHED');
      }
      const at = add(zero, point(0, -APART / 2 - 1.5 * WORDS * i));
      if (opened !== undefined) yield pen.once([opened.fold.from, opened.fold.to]);
      const words = `${piece.plan.name} ${label}${opened === undefined ? '' : ', unfolded'}`;
      yield dxfWords(layer, at, WORDS, words);
    }
  }
}

interface Pen {
  readonly line: (points: readonly Point[], closed: boolean, type?: LineType) => string;
  /** A dashed line that has no image in the fold. */
  readonly once: (points: readonly Point[]) => string;
  readonly stroke: (from: Point, to: Point) => string;
  readonly spot: (at: Point) => string;
}

/** A pen on a layer; of a piece that is opened it draws both halves. */
function penOn(layer: string, zero: Point, opened: Unfolding | undefined): Pen {
  const polyline = (points: readonly Point[], closed: boolean, type?: LineType): string =>
    dxfPolyline(
      layer,
      points.map((at) => add(at, zero)),
      closed,
      type,
    );
  const both = (points: readonly Point[], draw: (points: readonly Point[]) => string): string => {
    const image = opened?.image(points);
    return draw(points) + (image === undefined ? '' : draw(image));
  };
  return {
    line: (points, closed, type) =>
      closed
        ? polyline(opened?.whole(points) ?? points, true, type)
        : both(points, (own) => polyline(own, false, type)),
    once: (points) => polyline(points, false, 'DASHED'),
    stroke: (from, to) =>
      both([from, to], (own) => {
        const [start = from, end = to] = own.map((at) => add(at, zero));
        return dxfLine(layer, start, end);
      }),
    spot: (at) => both([at], (own) => own.map((p) => dxfPoint(layer, add(p, zero))).join('')),
  };
}

function* netPiece(piece: Piece, pen: Pen): Generator<string> {
  const { notches, drillHoles } = piece.plan;
  yield pen.line(chords(outlineSegments(piece)), true);
  for (const { place } of notches)
    if ('point' in place) yield pen.spot(pointOf(piece, place.point));
  for (const rule of drillHoles) yield pen.spot(drillHole(piece, rule));
}

function* cutPiece(cut: CutPiece, withNet: boolean, pen: Pen): Generator<string> {
  const { piece, notches, drillHoles, grain } = cut;
  yield pen.line(chords(cut.cut), true);
  if (withNet) yield pen.line(chords(cut.net), true, 'DASHED');
  else {
    for (const dart of piece.plan.darts) {
      const legs = edgeSegments(piece, dart).map(({ from }) => from);
      yield pen.line([...legs, pointOf(piece, dart.to)], false, 'DASHED');
    }
  }
  for (const { cut: at, inward, marks } of notches) {
    const aside = scale(quarterTurn(inward), DOUBLE / 2);
    const starts = marks === 1 ? [at] : [add(at, aside), add(at, scale(aside, -1))];
    for (const from of starts) yield pen.stroke(from, add(from, scale(inward, NOTCH)));
  }
  for (const at of drillHoles) yield pen.spot(at);
  yield pen.once([grain.from, grain.to]);
}

/** Where the zero of each piece lies, so that no size of one meets a size of the next. */
function zerosOf(sizes: readonly SizedPattern[], unfold: boolean): readonly Point[] {
  let x = 0;
  return (sizes[0]?.pieces ?? []).map((_, p) => {
    const box = joinBoxes(
      sizes.flatMap(({ pieces, cutPieces }) => {
        const [piece, cut] = [pieces[p], cutPieces?.[p]];
        if (piece === undefined) return [];
        const half = [...outlineSegments(piece), ...(cut === undefined ? [] : cut.cut)];
        const fold = unfold ? unfoldingOf(piece, cut)?.fold : undefined;
        const image =
          fold === undefined
            ? []
            : half.map((segment) => movedSegment(segment, (at) => imageIn(at, fold)));
        return [segmentsBounds([...half, ...image])];
      }),
    );
    const zero = point(x - box.left, -box.top);
    x += box.right - box.left + APART;
    return zero;
  });
}

function chords(segments: readonly Segment[]): readonly Point[] {
  return segments.flatMap((segment) => {
    if (segment.kind === 'line') return [segment.from];
    const count = Math.max(4, Math.ceil(segmentLength(segment) / CHORD));
    return Array.from({ length: count }, (_, k) => segmentAt(segment, k / count));
  });
}
