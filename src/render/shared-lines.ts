/** Lines that sizes of a nest have in one place: drawn once, in ink, and named so. */
import type { Box } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { add, distance, dot, quarterTurn, scale, subtract, unit } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { segmentAt, segmentTangent } from '../geometry/segment';
import { SAME_PLACE } from '../tolerance';
import type { LengthUnit } from '../units';
import type { Chord } from './chords';
import { chordsIn, isClear } from './chords';
import { nearRuns } from './near-lines';
import type { NestedPiece } from './nested-piece';
import type { DashedMark } from './piece-lines';
import { markLines, markPoints, shownMarks } from './piece-lines';
import type { Shape, TextShape } from './scene';
import { shapeBox } from './shape-box';
import type { SharedRun } from './shared-runs';
import { sharedRuns, strongLines } from './shared-runs';
import { downOf, readingAngle } from './sketch';
import { INK } from './size-style';
import { sizesTold } from './sizes-told';
import { CAP_MIDDLE, text, textBox } from './type';

/** What a nest shows once for all sizes, or for some of them. */
export interface SharedLines {
  /** Of each size the names of the marked lines that are left out of it. */
  readonly marks: readonly ReadonlySet<string>[];
  readonly shapes: readonly Shape[];
}

/** Places along a line that are tried, aside of the middle and of the ends of fold brackets. */
const SHARES = [0.3, 0.7, 0.24, 0.76, 0.36, 0.64];
/** More of them for a line of some sizes, which must be named. */
const MORE_SHARES = [...SHARES, 0.5, 0.42, 0.58, 0.18, 0.82, 0.12, 0.88];
/** From the line to the middle of its words, in type sizes. */
const OFF = 1.1;
/** Farther off, where a line of some sizes finds no room else. */
const FARTHER = 2.2;
const WORDS = 'all sizes';
/** mm. A line of all sizes that is named is as long as this at least. */
const NAMED = 90;

/** A line to be drawn in ink, with the ranks of its sizes. */
interface Told {
  readonly line: Segment;
  readonly strokes: readonly Shape[];
  readonly ranks: readonly number[];
  /** Words say on a double line what it is for, and ink that it is for all sizes. */
  readonly isPlain: boolean;
  /** The name of a marked line. */
  readonly mark?: DashedMark['name'];
}

/** The shared lines of a piece in two sizes or more; `type` is in mm. */
export function sharedLines(nested: NestedPiece, type: number): SharedLines {
  const { sizes } = nested;
  const told = sizes.length < 2 ? [] : toldLines(nested);
  const labels = sizes.map(({ label }) => label);
  const taken: Chord[] = [];
  const drawn = told.flatMap((one) => {
    const { line, strokes, ranks } = one;
    const isOfAll = ranks.length === sizes.length;
    if (isOfAll && (one.isPlain || distance(line.from, line.to) < NAMED)) return [one];
    const words = isOfAll ? WORDS : sizesTold(labels, ranks);
    const own = named(line, words, nested, type, isOfAll, taken);
    // Ink without a size is for all; where there is no room for names, each size keeps its own line.
    if (!isOfAll && own.length === 0) return [];
    for (const text of own) taken.push(...crossOf(textBox(text)));
    return [{ ...one, strokes: [...strokes, ...own] }];
  });
  return {
    marks: sizes.map(
      (_, i) =>
        new Set(drawn.flatMap(({ mark, ranks }) => (mark && ranks.includes(i) ? [mark] : []))),
    ),
    shapes: drawn.flatMap(({ strokes }) => strokes),
  };
}

/**
 * Words beside lines of sizes too near to be told, as it does not matter which of them is cut along; none of
 * these lines is drawn twice. They keep off `others` and are left out where there is no room; `type` is in
 * mm, `unit` that of what they say.
 */
export function nearWords(
  nested: NestedPiece,
  type: number,
  unit: LengthUnit,
  others: readonly Shape[],
): readonly TextShape[] {
  if (nested.sizes.length < 2) return [];
  const labels = nested.sizes.map(({ label }) => label);
  const taken = [...chordsIn(others)];
  for (const shape of others) if (shape.kind !== 'path') taken.push(...crossOf(shapeBox(shape)));
  return nearRuns(strongLines(nested), nested.box).flatMap(({ line, ranks }) => {
    const words = `${sizesTold(labels, ranks)} ${NEAR_WORDS[unit === 'in' ? 'in' : 'cm']}`;
    const own = named(line, words, nested, type, false, taken);
    for (const text of own) taken.push(...crossOf(textBox(text)));
    return own;
  });
}

/** `LINES_TOGETHER` in words. */
const NEAR_WORDS = { in: 'within 1/16 in', cm: 'within 1.5 mm' } as const;

function toldLines(nested: NestedPiece): readonly Told[] {
  return [...sharedMarks(nested).map(toldMark), ...sharedRuns(nested).map(toldRun)];
}

function toldMark({ name, points, ranks }: SharedMark): Told {
  const strokes = markLines(name, points, INK, false);
  const line = { kind: 'line', from: points[0] as Point, to: points[1] as Point } as const;
  return { line, strokes, ranks, isPlain: strokes.length > 1, mark: name };
}

function toldRun({ run, ranks, width, isSewn }: SharedRun): Told {
  const stroke = { color: INK, width };
  const shape = {
    kind: 'path',
    part: 'shared-line',
    segments: [run],
    closed: false,
    stroke,
  } as const;
  return { line: run, strokes: [shape], ranks, isPlain: isSewn };
}

/** The words beside a line, toward the middle of the piece, where nothing else runs or stands. */
function named(
  line: Segment,
  words: string,
  { box, chords }: NestedPiece,
  type: number,
  isOfAll: boolean,
  taken: readonly Chord[],
): readonly TextShape[] {
  const middle = { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 };
  const placed = (share: number, off: number): TextShape => {
    const angle = readingAngle(unit(segmentTangent(line, share)));
    const down = downOf(angle);
    const place = segmentAt(line, share);
    const side = dot(subtract(middle, place), down) < 0 ? -1 : 1;
    const at = add(place, scale(down, (side * off + CAP_MIDDLE) * type));
    return text(words, at, type, { anchor: 'middle', rotation: angle });
  };
  for (const off of isOfAll ? [OFF] : [OFF, -OFF, FARTHER, -FARTHER])
    for (const share of isOfAll ? SHARES : MORE_SHARES) {
      const one = placed(share, off);
      const room = textBox(one);
      if (isClear(room, chords) && isClear(room, taken)) return [one];
    }
  return [];
}

/** The diagonals of a box, which no box over it is clear of. */
function crossOf({ left, top, right, bottom }: Box): readonly Chord[] {
  return [
    { from: { x: left, y: top }, to: { x: right, y: bottom } },
    { from: { x: left, y: bottom }, to: { x: right, y: top } },
  ];
}

/** A marked line of several sizes. */
interface SharedMark {
  readonly name: DashedMark['name'];
  readonly points: readonly Point[];
  readonly ranks: readonly number[];
}

/** Marked lines of one name that lie in one straight line, each as long as the longest of its sizes. */
function sharedMarks({ sizes, lines }: NestedPiece): readonly SharedMark[] {
  const [first] = sizes;
  if (first === undefined) return [];
  const all = shownMarks(first, lines);
  return all
    .filter(({ name }) => all.filter((other) => other.name === name).length === 1)
    .flatMap((mark) => {
      const paths = sizes.map(({ piece }) => markPoints(piece, mark));
      const groups: SharedMark[] = [];
      paths.forEach((path, rank) => {
        const k = groups.findIndex(({ points }) => isOnOne(path, points));
        const group = groups[k];
        if (group === undefined) groups.push({ name: mark.name, points: path, ranks: [rank] });
        else {
          const points = lengthOf(path) > lengthOf(group.points) ? path : group.points;
          groups[k] = { ...group, points, ranks: [...group.ranks, rank] };
        }
      });
      return groups.filter(({ ranks, points }) => ranks.length > 1 && points.length > 1);
    });
}

/** Whether two paths are the same, or straight and in one line. */
function isOnOne(a: readonly Point[], b: readonly Point[]): boolean {
  if (a.length !== b.length) return false;
  if (a.every((at, i) => distance(at, b[i] as Point) <= SAME_PLACE)) return true;
  const [longer, shorter] = lengthOf(a) > lengthOf(b) ? [a, b] : [b, a];
  const [from, to] = longer;
  if (longer.length !== 2 || from === undefined || to === undefined) return false;
  const along = unit(subtract(to, from));
  return shorter.every((at) => Math.abs(dot(subtract(at, from), quarterTurn(along))) <= SAME_PLACE);
}

function lengthOf(path: readonly Point[]): number {
  return path.slice(1).reduce((sum, at, i) => sum + distance(at, path[i] as Point), 0);
}
