/** One size ready to cut: cut lines with allowances, sewing lines, notches, drill holes, labels. */
import type { Box } from '../geometry/bounds';
import { segmentsBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { add, between, distance, point, scale, subtract, unit } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { outlineSegments } from '../pattern/piece';
import type { CutPiece } from '../pattern/cut-piece';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import { foldBracket } from './arrows';
import { notes, testSquares, titleBlock } from './furniture';
import type { Group, Scene, Shape } from './scene';
import { polyline } from './scene';
import type { Line } from './sketch';
import { block, heightOf, placedAt, widthOf } from './sketch';
import { INK } from './size-style';
import { TOILE, cuttings, spelled } from './wording';

export interface CutDrawing {
  readonly title: string;
  /** Label of the size. */
  readonly size: string;
  readonly pieces: readonly CutPiece[];
  readonly display: LengthDisplay;
}

/** mm around the sheet and between its parts. */
const MARGIN = 40;
const BETWEEN = 30;
/** mm. Beyond this width the pieces go on in a further row. */
const ROW_WIDTH = 1850;

const CUT = { color: INK, width: 0.7 };
const SEWN = { color: INK, width: 0.35, dash: [4, 2] };
const NOTCH = { color: INK, width: 0.6 };
const GRAIN = { color: INK, width: 0.4 };

/** mm that a notch is long at most, so that it never reaches the sewing line. */
const NOTCH_LENGTH = 6;
/** mm between the two strokes of a double notch. */
const NOTCH_PAIR = 3;
const HOLE = 2;
/** mm of type: a piece's name, and the lines below it. */
const NAME = 12;
const BODY = 8;

/**
 * The sheet of one size at true scale. Cut lines are solid, sewing lines dashed; a notch is single
 * on the front and double on the back (home convention, apparelwiki).
 */
export function cutSheet({ title, size, pieces, display }: CutDrawing): Scene {
  const rows = inRows(pieces);
  const width = Math.ceil(Math.max(600, ...rows.map((row) => rowWidth(row))));
  const head = titleBlock(title, `Size ${size}, ready to cut.`, width);
  const squares = testSquares();
  const small = notes([cutNote(), TOILE], width);
  let y = MARGIN + Math.ceil(heightOf(head)) + BETWEEN;
  const placed: Group[] = [];
  for (const row of rows) {
    let x = MARGIN;
    for (const piece of row) {
      const box = boxOf(piece);
      placed.push(pieceGroup(piece, size, display, point(x - box.left, y - box.top)));
      x += Math.ceil(box.right - box.left) + BETWEEN;
    }
    y += Math.ceil(Math.max(...row.map((piece) => boxOf(piece).bottom - boxOf(piece).top)));
    y += BETWEEN;
  }
  const squaresAt = point(MARGIN + width - widthOf(squares), y);
  const smallTop = y + Math.ceil(heightOf(squares)) + BETWEEN;
  return {
    title: `${title}, size ${size}, ready to cut`,
    width: width + 2 * MARGIN,
    height: smallTop + Math.ceil(heightOf(small)) + MARGIN,
    shapes: [
      placedAt(head, point(MARGIN, MARGIN)),
      ...placed,
      placedAt(squares, squaresAt),
      placedAt(small, point(MARGIN, smallTop)),
    ],
  };
}

function cutNote(): string {
  return (
    'Solid lines are cut, dashed lines are sewn: seam allowances are included. ' +
    'Match single notches with single, double with double.'
  );
}

/** Tall pieces first, so that rows waste little. */
function inRows(pieces: readonly CutPiece[]): readonly (readonly CutPiece[])[] {
  const rows: CutPiece[][] = [];
  const height = (piece: CutPiece): number => boxOf(piece).bottom - boxOf(piece).top;
  for (const piece of pieces.toSorted((a, b) => height(b) - height(a))) {
    const last = rows.at(-1);
    if (last !== undefined && rowWidth([...last, piece]) <= ROW_WIDTH) last.push(piece);
    else rows.push([piece]);
  }
  return rows;
}

function rowWidth(row: readonly CutPiece[]): number {
  const widths = row.map((piece) => Math.ceil(boxOf(piece).right - boxOf(piece).left));
  return widths.reduce((sum, width) => sum + width, 0) + BETWEEN * (row.length - 1);
}

function boxOf({ cut }: CutPiece): Box {
  return segmentsBounds(cut);
}

function pieceGroup(piece: CutPiece, size: string, display: LengthDisplay, offset: Point): Group {
  const { plan } = piece.piece;
  return {
    kind: 'group',
    data: { piece: plan.name, size },
    offset,
    children: [
      path('sewing-line', outlineSegments(piece.piece), SEWN),
      path('cut-line', piece.cut, CUT),
      ...piece.notches.flatMap(notchLines),
      ...piece.drillHoles.flatMap(holeLines),
      ...grain(piece),
      ...(piece.fold === undefined ? [] : fold(piece.fold)),
      label(piece, size, display),
    ],
  };
}

function path(part: string, segments: readonly Segment[], stroke: typeof CUT | typeof SEWN): Shape {
  return { kind: 'path', part, segments, closed: true, stroke };
}

/** Strokes from the cut line inward, side by side where the notch is double. */
function notchLines({ cut, net, marks }: CutPiece['notches'][number]): readonly Shape[] {
  const inward = unit(subtract(net, cut));
  const long = Math.min(NOTCH_LENGTH, distance(net, cut) * 0.7);
  const aside = point(-inward.y, inward.x);
  const places = marks === 1 ? [0] : [-NOTCH_PAIR / 2, NOTCH_PAIR / 2];
  return places.map((by) => {
    const from = add(cut, scale(aside, by));
    return polyline('notch', [from, add(from, scale(inward, long))], NOTCH);
  });
}

function holeLines(at: Point): readonly Shape[] {
  return [
    polyline('drill-hole', [point(at.x - HOLE, at.y), point(at.x + HOLE, at.y)], NOTCH),
    polyline('drill-hole', [point(at.x, at.y - HOLE), point(at.x, at.y + HOLE)], NOTCH),
  ];
}

/** Arrow heads, in mm along and across the line. */
const HEAD = { along: 6, across: 2 };

function grain({ grain: { from, to } }: CutPiece): readonly Shape[] {
  const along = unit(subtract(to, from));
  const across = point(-along.y, along.x);
  const head = (tip: Point, way: number): Shape =>
    polyline(
      'grain',
      [-1, 1]
        .map((side) =>
          add(tip, add(scale(along, way * HEAD.along), scale(across, side * HEAD.across))),
        )
        .flatMap((end, i) => (i === 0 ? [end, tip] : [end])),
      GRAIN,
    );
  return [polyline('grain', [from, to], GRAIN), head(from, 1), head(to, -1)];
}

function fold({ from, to }: { readonly from: Point; readonly to: Point }): readonly Shape[] {
  const up = unit(subtract(to, from));
  const start = between(from, to, 0.12);
  const end = between(from, to, 0.88);
  // The outline runs clockwise, so the piece lies on the right of its direction of travel.
  return foldBracket(start, end, point(-up.y, up.x));
}

/** Name, size, how to cut, and the allowances, between the grainline and the side. */
function label(piece: CutPiece, size: string, display: LengthDisplay): Group {
  const { plan } = piece.piece;
  const low = plan.part === 'waistband' || plan.part === 'facing';
  const widths = [...piece.allowances].filter(([, width]) => width > 0);
  const lines: readonly Line[] = low
    ? [{ words: `${piece.number} ${spelled(plan.name)}, size ${size}`, size: BODY, weight: 'bold' }]
    : [
        { words: `${piece.number} ${spelled(plan.name)}`, size: NAME, weight: 'bold' },
        { words: `Size ${size}`, size: NAME, weight: 'bold' },
        ...cuttings(plan).map((words) => ({ words, size: BODY })),
        { words: 'Allowances', size: BODY, weight: 'bold' as const },
        ...widths.map(([seam, width]) => ({
          words: `${seam.replace(/_/g, ' ')} ${showLength(width, display)}`,
          size: BODY,
        })),
      ];
  const words = block(lines);
  const { from, to } = piece.grain;
  const middle = between(from, to, low ? 0.15 : 0.5);
  const left = low ? middle.x : middle.x + BODY;
  const top = low ? middle.y - heightOf(words) - BODY / 2 : middle.y - heightOf(words) / 2;
  return placedAt(words, point(left, top));
}
