/** What belongs to one size of a piece: cut line, net line with darts, marked lines, notches, holes. */
import { cubicPart } from '../geometry/cubic';
import type { Point } from '../geometry/point';
import { add, angleBetween, length, quarterTurn, scale, subtract, unit } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { reversed, segmentAt, segmentTangent } from '../geometry/segment';
import type { MarkedLine, Piece } from '../pattern/piece';
import { edgeSegments, outlineSegments, pointOf } from '../pattern/piece';
import type { LinesShown } from './lines-shown';
import type { PathShape, Stroke } from './scene';
import { polyline } from './scene';
import { markShapes, marksOf } from './piece-marks';
import type { SizedPiece } from './sized-piece';
import type { SizeStyle } from './size-style';

/** degrees. An outline that turns by less runs on smoothly and has no corner. */
export const CORNER = 20;

/** mm of solid line on both sides of a corner. */
const CORNER_ARM = 5;

/** mm between the two strokes of a double line. */
const DOUBLE = 3;

/** A line within a piece. The grainline is drawn as an arrow, for all sizes or for each: see `given-grain.ts`. */
export type DashedMark = MarkedLine & { readonly name: Exclude<MarkedLine['name'], 'grainline'> };

/** Ink and gap in mm of the lines within a piece, and their width. */
const MARKS: Readonly<Record<DashedMark['name'], Omit<Stroke, 'color'>>> = {
  'hip-line': { width: 0.4, dash: [2, 2] },
  'zip-allowance': { width: 0.4, dash: [7, 2] },
  'dart-fold': { width: 0.3, dash: [4, 2] },
  'fold-line': { width: 0.4, dash: [12, 3] },
  tuck: { width: 0.4, dash: [4, 2] },
  'length-line': { width: 0.3 },
  'hip-depth-line': { width: 0.3 },
  'internal-line': { width: 0.4, dash: [4, 2] },
};

/**
 * Paths in the piece's own coordinates, which the outline repeats as they are. The cut line is as
 * strong as the net line is where that is drawn alone; beside it the net line is thin. Darts are
 * sewn, so they are drawn in any case. Marked lines whose names are `shared` are left out.
 */
export function pieceLines(
  sized: SizedPiece,
  lines: LinesShown,
  shared: ReadonlySet<string> = new Set(),
): readonly PathShape[] {
  const { piece, cut, style } = sized;
  const { color } = style.outline;
  const net = outlineSegments(piece);
  const marks = shownMarks(sized, lines)
    .filter(({ name }) => !shared.has(name))
    .flatMap((mark) => markLines(mark.name, markPoints(piece, mark), color, style.base));
  if (cut === undefined || lines === 'net') return [...marks, ...strong('outline', net, style)];
  const { sewing } = style;
  return [
    ...marks,
    ...(lines === 'both'
      ? [{ kind: 'path' as const, part: 'outline', segments: net, closed: true, stroke: sewing }]
      : piece.plan.darts.map((dart) => ({
          kind: 'path' as const,
          part: 'dart',
          segments: edgeSegments(piece, dart),
          closed: false,
          stroke: sewing,
        }))),
    ...strong('cut-line', cut.cut, style),
  ];
}

/** The notches and drill holes of one size in its color. */
export function pieceMarks(sized: SizedPiece, lines: LinesShown): readonly PathShape[] {
  const { color } = sized.style.outline;
  return marksOf(sized, lines).flatMap((mark) => markShapes(mark, { color, width: mark.width }));
}

/** A marked line through its points, a little stronger in the base; double where the piece is cut apart. */
export function markLines(
  name: DashedMark['name'],
  points: readonly Point[],
  color: string,
  base: boolean,
): readonly PathShape[] {
  const { width, dash } = MARKS[name];
  const stroke = { color, width: width + (base ? 0.1 : 0), ...(dash && { dash }) };
  return drawnLines(name, points).map((line) => polyline(name, line, stroke));
}

/**
 * The marked lines that are drawn, dashed: the zip allowance ends at the cut line, and the cut line shows
 * where a dart's fold ends.
 */
export function shownMarks(
  { piece, cut }: Pick<SizedPiece, 'piece' | 'cut'>,
  lines: LinesShown,
): readonly DashedMark[] {
  const dashed = piece.plan.marks.filter((mark): mark is DashedMark => mark.name !== 'grainline');
  if (cut === undefined || lines === 'net') return dashed;
  return dashed.filter(
    ({ name }) => name !== 'zip-allowance' && (lines === 'both' || name !== 'dart-fold'),
  );
}

/** A closed line in a size's own style; a gap between dashes must not hide where it turns. */
function strong(part: string, segments: readonly Segment[], style: SizeStyle): PathShape[] {
  const { color, width, dash } = style.outline;
  const line: PathShape = { kind: 'path', part, segments, closed: true, stroke: style.outline };
  if (dash === undefined) return [line];
  const stroke = { color, width };
  const corners = cornerArms(segments);
  return [line, { kind: 'path', part: 'corners', segments: corners, closed: false, stroke }];
}

/** The strokes of a marked line. Where a piece is cut apart to be made longer or shorter they are two, as is usual. */
export function drawnLines(
  name: DashedMark['name'],
  points: readonly Point[],
): readonly (readonly Point[])[] {
  if (name !== 'length-line' && name !== 'hip-depth-line') return [points];
  const [start, end] = [points[0], points.at(-1)];
  if (start === undefined || end === undefined) return [points];
  const aside = scale(quarterTurn(unit(subtract(end, start))), DOUBLE / 2);
  return [aside, scale(aside, -1)].map((by) => points.map((p) => add(p, by)));
}

/** The places that a marked line of a piece runs through, in its order. */
export function markPoints(piece: Piece, mark: MarkedLine): readonly Point[] {
  return mark.through.map((name) => pointOf(piece, name));
}

/** Degrees by which an outline turns where one segment meets the next. */
export function turn(arriving: Segment, leaving: Segment): number {
  return angleBetween(segmentTangent(arriving, 1), segmentTangent(leaving, 0));
}

/** Both arms of every corner, each corner as one stroke. */
function cornerArms(segments: readonly Segment[]): readonly Segment[] {
  const drawn = segments.filter((segment) => length(segmentTangent(segment, 0)) > 0);
  return drawn.flatMap((leaving, i) => {
    const arriving = drawn.at(i - 1);
    if (arriving === undefined || turn(arriving, leaving) < CORNER) return [];
    return [reversed(arm(reversed(arriving))), arm(leaving)];
  });
}

/** The first few millimeters of a segment, a third of it at most. */
/** Share of a segment that an arm takes at most. No tolerance: a look. */
const MOST_ARM = 1 / 3;

function arm(segment: Segment): Segment {
  const speed = length(segmentTangent(segment, 0));
  const end = Math.min(MOST_ARM, CORNER_ARM / speed);
  const { from } = segment;
  return segment.kind === 'cubic'
    ? { kind: 'cubic', ...cubicPart(segment, 0, end), from }
    : { kind: 'line', from, to: segmentAt(segment, end) };
}
