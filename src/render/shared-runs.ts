/** Stretches along which lines of several sizes run in one place. */
import type { Point } from '../geometry/point';
import { add, distance, dot, quarterTurn, scale, subtract, unit } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { segmentAt } from '../geometry/segment';
import { edgeSegments, outlineSegments } from '../pattern/piece';
import { SAME_PLACE } from '../tolerance';
import type { Chord } from './chords';
import type { LinesShown } from './lines-shown';
import type { NestedPiece } from './nested-piece';
import type { SizedPiece } from './sized-piece';

/** A stretch, and which sizes share it: their ranks, rising. */
interface Run {
  readonly run: Segment;
  readonly ranks: readonly number[];
}

/** A stretch as it is drawn: its width in mm, and whether it is sewn beside a cut line. */
export interface SharedRun extends Run {
  readonly width: number;
  readonly isSewn: boolean;
}

/** mm. A shorter stretch in common is not worth telling. */
const LEAST = 30;
/** mm. The line over the dashes of its sizes, which would fill each other's gaps. */
const WIDTH = 0.8;
/** mm. The same over sewing lines, which are thin beside a cut line. */
const SEWING_WIDTH = 0.3;

/** Two cubics that agree at four places are the same; the fifth is for those that run alike by chance. */
const CURVE_SHARES = [0, 0.25, 0.5, 0.75, 1];

/** A line of one size, and its rank. */
interface Ranked {
  readonly line: Segment;
  readonly rank: number;
}

/**
 * The stretches of the outline, the cut line where it is shown, that two sizes or more have in common, and
 * beside a cut line those of the sewing lines: straight ones as far as they lie together, and whole curves.
 */
export function sharedRuns(nested: NestedPiece): readonly SharedRun[] {
  const { sizes, lines } = nested;
  const strong = runsOf(strongLines(nested));
  const sewn = runsOf(sizes.map((size) => (cutOf(size, lines) ? sewingLines(nested, size) : [])));
  return [
    ...strong.map((own) => ({ ...own, width: WIDTH, isSewn: false })),
    ...sewn.map((own) => ({ ...own, width: SEWING_WIDTH, isSewn: true })),
  ];
}

/** What is drawn strong of each size: the cut line where it is shown, else the net line. */
export function strongLines({ sizes, lines }: NestedPiece): readonly (readonly Segment[])[] {
  return sizes.map((size) => cutOf(size, lines) ?? outlineSegments(size.piece));
}

function cutOf({ cut }: SizedPiece, lines: LinesShown): readonly Segment[] | undefined {
  return lines === 'net' ? undefined : cut?.cut;
}

function sewingLines({ lines }: NestedPiece, { piece }: SizedPiece): readonly Segment[] {
  return lines === 'both'
    ? outlineSegments(piece)
    : piece.plan.darts.flatMap((dart) => edgeSegments(piece, dart));
}

/** Lines in one place, straight ones cut wherever one of them ends. */
function runsOf(outlines: readonly (readonly Segment[])[]): readonly Run[] {
  const long = outlines.flatMap((segments, rank) =>
    segments.filter(isLong).map((line): Ranked => ({ line, rank })),
  );
  const left = new Set(long);
  const runs: Run[] = [];
  for (const first of long) {
    if (!left.has(first)) continue;
    const isInLine = inLineWith(first.line);
    const row = long.filter((other) => left.has(other) && isInLine(other.line));
    for (const one of row) left.delete(one);
    if (first.line.kind === 'line') runs.push(...stretches(first.line, row));
    else if (row.length > 1) runs.push({ run: first.line, ranks: row.map(({ rank }) => rank) });
  }
  return runs;
}

/** The stretches of lines that lie in one line, each with its sizes; those of one size are left out. */
function stretches({ from, to }: Chord, row: readonly Ranked[]): readonly Run[] {
  const along = unit(subtract(to, from));
  const spans = row.map(({ line, rank }) => {
    const ends = [line.from, line.to].map((at) => dot(subtract(at, from), along));
    return { start: Math.min(...ends), end: Math.max(...ends), rank };
  });
  const breaks = spans.flatMap(({ start, end }) => [start, end]).toSorted((a, b) => a - b);
  return breaks.slice(1).flatMap((end, i) => {
    const start = breaks[i] ?? end;
    if (end - start < LEAST) return [];
    const middle = (start + end) / 2;
    const own = spans.filter((span) => span.start < middle && middle < span.end);
    const ranks = [...new Set(own.map(({ rank }) => rank))].toSorted((a, b) => a - b);
    if (ranks.length < 2) return [];
    const [begin, finish] = [start, end].map((by) => add(from, scale(along, by)));
    return begin && finish ? [{ run: { kind: 'line', from: begin, to: finish }, ranks }] : [];
  });
}

function isLong({ from, to }: Segment): boolean {
  return distance(from, to) >= LEAST;
}

/** Tells whether a straight line lies on that through this one, or a curve on it from end to end. */
function inLineWith(line: Segment): (other: Segment) => boolean {
  if (line.kind === 'cubic') {
    const places = CURVE_SHARES.map((share) => segmentAt(line, share));
    return (other) =>
      other.kind === 'cubic' &&
      CURVE_SHARES.every(
        (share, i) => distance(places[i] ?? line.from, segmentAt(other, share)) <= SAME_PLACE,
      );
  }
  const across = quarterTurn(unit(subtract(line.to, line.from)));
  const isOn = (at: Point): boolean => Math.abs(dot(subtract(at, line.from), across)) <= SAME_PLACE;
  return (other) => other.kind === 'line' && isOn(other.from) && isOn(other.to);
}
