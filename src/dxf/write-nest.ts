/** A plain DXF of every size nested, one layer a size, for plotters and cutters. */
import { joinBoxes, segmentsBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { add, point } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { segmentAt, segmentLength } from '../geometry/segment';
import type { SizedPieces } from '../grade/graded-range';
import { outlineSegments, pointOf } from '../pattern/piece';
import { distinct, dxfDocument } from './document';
import { dxfName, dxfPoint, dxfPolyline, dxfWords } from './entities';

/** mm of the chords that stand for curves: within 0.02 mm of a side seam. */
const CHORD = 4;
/** mm between pieces, and the type size of their names. */
const APART = 50;
const WORDS = 8;

/** The file in parts. Sizes lie on each other as they were graded; pieces stand side by side. */
export function* writeNest(sizes: readonly SizedPieces[]): Generator<string> {
  const names = distinct(sizes.map(({ label }) => dxfName(`SIZE_${label}`)));
  const layers = names.map((name, i) => ({ name, color: (i % 6) + 1 }));
  yield* dxfDocument(layers, [], nestEntities(sizes, names));
}

function* nestEntities(sizes: readonly SizedPieces[], layers: readonly string[]) {
  const zeros = zerosOf(sizes);
  for (const [i, { label, pieces }] of sizes.entries()) {
    const layer = layers[i] ?? '0';
    for (const [p, piece] of pieces.entries()) {
      const zero = zeros[p] ?? point(0, 0);
      const placed = (points: readonly Point[]): readonly Point[] =>
        points.map((at) => add(at, zero));
      const { marks, notches = [], drillHoles = [], name } = piece.plan;
      yield dxfPolyline(layer, placed(chords(outlineSegments(piece))), true);
      for (const { through } of marks) {
        yield dxfPolyline(layer, placed(through.map((at) => pointOf(piece, at))), false);
      }
      for (const at of placed([...notches, ...drillHoles].map((n) => pointOf(piece, n)))) {
        yield dxfPoint(layer, at);
      }
      yield dxfWords(
        layer,
        add(zero, point(0, -APART / 2 - 1.5 * WORDS * i)),
        WORDS,
        `${name} ${label}`,
      );
    }
  }
}

/** Where the zero of each piece lies, so that no size of one meets a size of the next. */
function zerosOf(sizes: readonly SizedPieces[]): readonly Point[] {
  let x = 0;
  return (sizes[0]?.pieces ?? []).map((_, p) => {
    const box = joinBoxes(
      sizes.flatMap(({ pieces }) => {
        const piece = pieces[p];
        return piece === undefined ? [] : [segmentsBounds(outlineSegments(piece))];
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
