/** Lines that all sizes of a nest have in one place: drawn once, in ink, and named so. */
import type { Point } from '../geometry/point';
import { add, between, distance, dot, quarterTurn, scale, subtract, unit } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { outlineSegments } from '../pattern/piece';
import { SAME_PLACE } from '../tolerance';
import type { Chord } from './chords';
import { isClear } from './chords';
import type { NestedPiece } from './nested-piece';
import { markLines, markPoints, shownMarks } from './piece-lines';
import type { Shape, TextShape } from './scene';
import { polyline } from './scene';
import { readingAngle } from './sketch';
import { INK } from './size-style';
import { CAP_MIDDLE, text, textBox } from './type';

/** What a nest shows once for all sizes. */
export interface SharedLines {
  /** Names of the marked lines that are left out of the sizes. */
  readonly marks: ReadonlySet<string>;
  readonly shapes: readonly Shape[];
}

/** mm. A shorter stretch in common is not worth telling. */
const LEAST = 30;
/** mm. The line over the dashes of all sizes, which would fill each other's gaps. */
const WIDTH = 0.8;
/** Places along a line that are tried, aside of the middle and of the ends of fold brackets. */
const SHARES = [0.3, 0.7, 0.24, 0.76, 0.36, 0.64];
/** From the line to the middle of its words, in type sizes. */
const OFF = 1.1;
const WORDS = 'all sizes';
/** mm. A line that is named is as long as this at least. */
const NAMED = 90;

/** The shared lines of a piece in two sizes or more; `type` is in mm. */
export function sharedLines(nested: NestedPiece, type: number): SharedLines {
  if (nested.sizes.length < 2) return { marks: new Set(), shapes: [] };
  const marked = sharedMarks(nested);
  const runs = sharedRuns(nested);
  const { left, right, top, bottom } = nested.box;
  const middle = { x: (left + right) / 2, y: (top + bottom) / 2 };
  return {
    marks: new Set(marked.map(({ name }) => name)),
    shapes: [
      ...marked.flatMap(({ points, name }): readonly Shape[] => {
        const strokes = markLines(name, points, INK, false);
        const line = { from: points[0] as Point, to: points[1] as Point };
        // Words say on a double line what it is for, and ink that it is for all sizes.
        return strokes.length > 1
          ? strokes
          : [...strokes, ...named(line, middle, type, nested.chords)];
      }),
      ...runs.flatMap((run) => [
        polyline('shared-line', [run.from, run.to], { color: INK, width: WIDTH }),
        ...named(run, middle, type, nested.chords),
      ]),
    ],
  };
}

/** The words beside a line, toward the middle of the piece, where no other line runs. */
function named(
  { from, to }: Chord,
  middle: Point,
  type: number,
  chords: readonly Chord[],
): readonly Shape[] {
  if (distance(from, to) < NAMED) return [];
  const along = unit(subtract(to, from));
  const angle = readingAngle(along);
  const down = { x: -Math.sin((angle * Math.PI) / 180), y: Math.cos((angle * Math.PI) / 180) };
  const wordsAt = (share: number): TextShape => {
    const place = between(from, to, share);
    const side = dot(subtract(middle, place), down) < 0 ? -1 : 1;
    const at = add(place, scale(down, (side * OFF + CAP_MIDDLE) * type));
    return text(WORDS, at, type, { anchor: 'middle', rotation: angle });
  };
  for (const share of SHARES) {
    const words = wordsAt(share);
    if (isClear(textBox(words), chords)) return [words];
  }
  return [];
}

/** Marked lines of one name that lie in one straight line in all sizes, each as long as the longest. */
function sharedMarks({ sizes, lines }: NestedPiece): readonly {
  readonly name: ReturnType<typeof shownMarks>[number]['name'];
  readonly points: readonly Point[];
}[] {
  const [first] = sizes;
  if (first === undefined) return [];
  const all = shownMarks(first, lines);
  return all
    .filter(({ name }) => all.filter((other) => other.name === name).length === 1)
    .flatMap((mark) => {
      const paths = sizes.map(({ piece }) => markPoints(piece, mark));
      const longest = paths.reduce((a, b) => (lengthOf(b) > lengthOf(a) ? b : a));
      const [from, to] = longest;
      if (from === undefined || to === undefined) return [];
      const isSame = (path: readonly Point[]): boolean =>
        path.length === longest.length &&
        path.every((at, i) => distance(at, longest[i] as Point) <= SAME_PLACE);
      const isPart = (path: readonly Point[]): boolean =>
        longest.length === 2 && path.every((at) => beside(at, { from, to }) <= SAME_PLACE);
      return paths.every((path) => isSame(path) || isPart(path))
        ? [{ name: mark.name, points: longest }]
        : [];
    });
}

function lengthOf(path: readonly Point[]): number {
  return path.slice(1).reduce((sum, at, i) => sum + distance(at, path[i] as Point), 0);
}

/** mm of a point beside a straight line. */
function beside(at: Point, { from, to }: Chord): number {
  return Math.abs(dot(subtract(at, from), quarterTurn(unit(subtract(to, from)))));
}

/** The straight stretches of the outline, the cut line where it is shown, that no size is without. */
function sharedRuns({ sizes, lines }: NestedPiece): readonly Chord[] {
  const straight = sizes.map(({ piece, cut }) =>
    (cut === undefined || lines === 'net' ? outlineSegments(piece) : cut.cut).filter(isStraight),
  );
  const [first = [], ...others] = straight;
  return others.reduce<readonly Chord[]>(
    (runs, own) => runs.flatMap((run) => own.flatMap((other) => common(run, other))),
    first,
  );
}

function isStraight({ kind, from, to }: Segment): boolean {
  return kind === 'line' && distance(from, to) >= LEAST;
}

/** What two straight lines have in common, if that is long enough. */
function common(run: Chord, other: Chord): readonly Chord[] {
  if (beside(other.from, run) > SAME_PLACE || beside(other.to, run) > SAME_PLACE) return [];
  const along = unit(subtract(run.to, run.from));
  const places = [other.from, other.to].map((at) => dot(subtract(at, run.from), along));
  const start = Math.max(0, Math.min(...places));
  const end = Math.min(distance(run.from, run.to), Math.max(...places));
  if (end - start < LEAST) return [];
  return [{ from: add(run.from, scale(along, start)), to: add(run.from, scale(along, end)) }];
}
