/** The closed lines of a layer, put together where a drawing has them in parts. */
import { InputError } from '../errors';
import { distance } from '../geometry/point';
import { EXCHANGED, JOIN_GAP, SAME_PLACE } from '../tolerance';
import type { DxfEntity } from './entity';
import type { LinePoint } from './line-point';
import { enclosesRoom, reversedLine } from './line-point';

/** A closed line, its last point not the first once more, and the entities that it is made of. */
export interface ClosedLine {
  readonly line: DxfEntity;
  readonly parts: readonly DxfEntity[];
  /** mm; the widest gap that was closed. */
  readonly gap: number;
}

/** Ends that do not meet. */
export interface OpenLine {
  readonly parts: readonly DxfEntity[];
  readonly points: readonly LinePoint[];
}

/**
 * Joins lines and open polylines end to end, in whichever direction they were drawn, over gaps up to
 * JOIN_GAP; all in mm. Throws InputError `dxf-malformed` where more than two ends meet, since it is
 * open then which line goes on.
 */
export function closedLines(
  lines: readonly DxfEntity[],
  file: string,
): { readonly loops: readonly ClosedLine[]; readonly open: readonly OpenLine[] } {
  const loops: ClosedLine[] = [];
  const open: OpenLine[] = [];
  const left: DxfEntity[] = [];
  for (const line of lines) {
    const gap = line.closed ? 0 : gapOf(line.points);
    if (gap <= JOIN_GAP) loops.push(looped(line.points, [line], line.closed, gap));
    else left.push(line);
  }
  while (left.length > 0) {
    const seed = left.shift() as DxfEntity;
    let points: readonly LinePoint[] = seed.points;
    const parts = [seed];
    let gap = 0;
    let isTurned = false;
    while (gapOf(points) > EXCHANGED / 2) {
      const next = nextOf(points, left, file);
      // The last gap may be a short line of its own; but then it meets both ends.
      if (gapOf(points) <= JOIN_GAP && !(next && next.gap <= EXCHANGED / 2)) break;
      if (next !== undefined) {
        left.splice(left.indexOf(next.line), 1);
        parts.push(next.line);
        gap = Math.max(gap, next.gap);
        points = joined(points, next.points);
      } else if (!isTurned) {
        // Nothing goes on at this end, but something may at the other.
        isTurned = true;
        points = reversedLine(points);
      } else break;
    }
    const last = gapOf(points);
    if (last <= JOIN_GAP) loops.push(looped(points, parts, false, Math.max(gap, last)));
    else open.push({ parts, points });
  }
  return { loops: loops.filter(({ line }) => enclosesRoom(line.points)), open };
}

/** mm between the ends of a line; of one that cannot be closed endless. */
function gapOf(points: readonly LinePoint[]): number {
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return Infinity;
  return enclosesRoom(points.slice(0, -1)) ? distance(first, last) : Infinity;
}

function looped(
  points: readonly LinePoint[],
  parts: readonly DxfEntity[],
  closed: boolean,
  gap: number,
): ClosedLine {
  const first = parts.reduce((a, b) => (b.row < a.row ? b : a));
  // A polyline may be closed and have its first point once more besides.
  const repeats = !closed || (gapOf(points) <= EXCHANGED / 2 && points.at(-1)?.bend === undefined);
  const whole = repeats ? points.slice(0, -1) : points;
  // A point twice in a row would be an edge of no length.
  const own = whole.filter((at, i) => {
    const next = whole[(i + 1) % whole.length] ?? at;
    return at.bend !== undefined || whole.length === 1 || distance(at, next) > SAME_PLACE;
  });
  return { line: { ...first, type: 'POLYLINE', closed: true, points: own }, parts, gap };
}

function nextOf(points: readonly LinePoint[], left: readonly DxfEntity[], file: string) {
  const end = points.at(-1);
  if (end === undefined) return undefined;
  const found = left.flatMap((line) =>
    [line.points[0], line.points.at(-1)].flatMap((start, k) => {
      const gap = start === undefined ? Infinity : distance(end, start);
      return gap <= JOIN_GAP ? [{ line, gap, isTurned: k === 1 }] : [];
    }),
  );
  const [nearest] = found.toSorted((a, b) => a.gap - b.gap);
  if (nearest === undefined) return undefined;
  const reach = nearest.gap <= EXCHANGED / 2 ? EXCHANGED / 2 : JOIN_GAP;
  const other = found.find(({ line, gap }) => line !== nearest.line && gap <= reach);
  if (other === undefined) {
    const { line, gap, isTurned } = nearest;
    return { line, gap, points: isTurned ? reversedLine(line.points) : line.points };
  }
  throw new InputError('dxf-malformed', {
    what: `more than two lines of an outline meet at ${placeText(end)} mm`,
    allowed: `lines of which two ends meet, on layer ${other.line.layer}`,
    got: `lines of rows ${nearest.line.row} and ${other.line.row}`,
    place: { file, row: nearest.line.row },
  });
}

/** One line after the other; where they meet the end of the first one counts. */
function joined(points: readonly LinePoint[], next: readonly LinePoint[]): LinePoint[] {
  const [start, ...rest] = next;
  const end = points.at(-1);
  if (end === undefined || start === undefined) return [...points, ...next];
  const { x, y } = end;
  return [...points.slice(0, -1), { x, y, ...(start.bend && { bend: start.bend }) }, ...rest];
}

/** Where an outline is not closed, in words, for a refusal. */
export function gapText(open: readonly OpenLine[]): string {
  const ends = open.flatMap(({ points }, line) =>
    [points[0], points.at(-1)].flatMap((at, end) => (at ? [{ at, line, end }] : [])),
  );
  const [first] = ends;
  if (first === undefined) return 'no line';
  const others = ends.slice(1);
  const nearest = others.reduce<(typeof ends)[number] | undefined>(
    (a, b) => (a && distance(a.at, first.at) <= distance(b.at, first.at) ? a : b),
    undefined,
  );
  const to = nearest?.at ?? first.at;
  const wide = Math.round(distance(first.at, to) * 1000) / 1000;
  return `a gap of ${wide} mm from ${placeText(first.at)} to ${placeText(to)} mm`;
}

/** x and y as the drawing counts them, y up. */
function placeText({ x, y }: LinePoint): string {
  const shown = (value: number): number => Math.round(value * 1000) / 1000 + 0;
  return `(${shown(x)}, ${shown(-y)})`;
}
