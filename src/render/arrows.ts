/** Arrows of the trade: the grainline, and the bracket that says that an edge lies on the fold. */
import type { Point } from '../geometry/point';
import {
  add,
  between,
  distance,
  point,
  quarterTurn,
  scale,
  subtract,
  unit,
} from '../geometry/point';
import type { Line } from '../geometry/segment';
import type { SketchChoices } from './room';
import type { Group, PathShape } from './scene';
import { filled, polyline } from './scene';
import { INK } from './size-style';
import type { Sketch } from './sketch';
import { block, blocks, heightOf, readingAngle, sketchOf, widthOf } from './sketch';

const LINE = { color: INK, width: 0.4 };
/** mm. */
export const HEAD_LENGTH = 7;
const HEAD_WIDTH = 4.5;
/** mm from the middle of the grainline to the middle of its word. */
const WORD_OFF = 7.5;
/** mm from the fold to the bar of its bracket, and to the tips of its arrows. */
export const BRACKET_DEPTH = 15;
const BRACKET_TIP = 1;

/** Lengths of the grainline that are tried: shares of the piece along the grain, then mm. */
const GRAIN_SHARES = [0.4, 0.3];
const GRAIN_LENGTHS = [60, 45, 32, 20];

/** Which way the grain runs on the paper. */
export type GrainWay = 'down' | 'across';

/** Grainlines for a piece that measures `extent` mm along the grain, the longest first. */
export function* grainlines(extent: number, way: GrainWay, size: number): Generator<Sketch> {
  const lengths = [...GRAIN_SHARES.map((share) => share * extent), ...GRAIN_LENGTHS];
  const apart = lengths.filter((length) => length > 2 * HEAD_LENGTH);
  for (const length of apart.sort((a, b) => b - a)) yield grainline(length, way, size);
}

/** A line along the grain with a head at both ends and its word. */
function grainline(length: number, way: GrainWay, size: number): Sketch {
  const along = way === 'down' ? point(0, 1) : point(1, 0);
  const off = way === 'down' ? point(-WORD_OFF, 0) : point(0, -WORD_OFF);
  const neck = HEAD_LENGTH - 1;
  const word = block([{ words: 'GRAIN', size }], way === 'down' ? -90 : 0);
  const wordLength = way === 'down' ? heightOf(word) : widthOf(word);
  const beside: Group = {
    kind: 'group',
    offset: add(scale(along, length / 2), off),
    children: word.shapes,
  };
  const { shapes, box } = sketchOf([
    polyline('grainline', [scale(along, neck), scale(along, length - neck)], LINE),
    arrowHead(point(0, 0), scale(along, -1)),
    arrowHead(scale(along, length), along),
    ...(length < wordLength ? [] : [beside]),
  ]);
  // As much room on the other side: the line itself stands in the middle, not line and word.
  return {
    shapes,
    box: way === 'down' ? { ...box, right: -box.left } : { ...box, bottom: -box.top },
  };
}

/** The grainline that a pattern gives: its line with a head at both ends, without its word. */
export function grainArrow({ from, to }: Line, color = INK): readonly PathShape[] {
  const along = unit(subtract(to, from));
  const share = Math.min(1, distance(from, to) / (3 * HEAD_LENGTH));
  const neck = scale(along, share * (HEAD_LENGTH - 1));
  return [
    polyline('grainline', [add(from, neck), subtract(to, neck)], { ...LINE, color }),
    arrowHead(from, scale(along, -1), share, color),
    arrowHead(to, along, share, color),
  ];
}

/** Choices for the word of a grainline, and where it should be: beside its middle. */
export function grainWord({ from, to }: Line, size: number): SketchChoices {
  const along = subtract(to, from);
  const angle = readingAngle(along);
  const off = scale(quarterTurn(unit(along)), WORD_OFF);
  return {
    choices: blocks([{ words: 'GRAIN', size }], angle),
    near: add(between(from, to, 0.5), off),
  };
}

/** A bar beside the fold from `start` to `end` whose ends point at it; `inward` has length 1. */
export function foldBracket(start: Point, end: Point, inward: Point): readonly PathShape[] {
  const off = (p: Point, depth: number): Point => add(p, scale(inward, depth));
  const ends = [between(start, end, 0.1), between(start, end, 0.9)] as const;
  const [a, b] = ends;
  const neck = BRACKET_TIP + HEAD_LENGTH - 1;
  const bar = [off(a, neck), off(a, BRACKET_DEPTH), off(b, BRACKET_DEPTH), off(b, neck)];
  return [
    polyline('fold-bracket', bar, LINE),
    ...ends.map((p) => arrowHead(off(p, BRACKET_TIP), scale(inward, -1))),
  ];
}

/** A filled arrowhead with its tip at `tip`; a short line has heads of a `share` of the usual size. */
export function arrowHead(tip: Point, direction: Point, share = 1, color = INK): PathShape {
  const ahead = unit(direction);
  const base = subtract(tip, scale(ahead, share * HEAD_LENGTH));
  const half = scale(quarterTurn(ahead), (share * HEAD_WIDTH) / 2);
  return filled('arrowhead', [tip, add(base, half), subtract(base, half)], color);
}
