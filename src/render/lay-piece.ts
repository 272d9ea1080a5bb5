/** One piece on a drawn lay: its cut line, its words, its grain. */
import type { Box } from '../geometry/bounds';
import type { Upright } from '../geometry/longest-inside';
import { longestInside } from '../geometry/longest-inside';
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import { OFF_THE_FOLD } from '../fabric/off-the-fold';
import type { Placement } from '../fabric/lay';
import { CLEARANCE, wordsInside } from './lay-words';
import type { Shape } from './scene';
import { filled, polyline } from './scene';
import { INK } from './size-style';
import { spelled } from './captions';

const OUTLINE = { color: INK, width: 0.35 };
const GRAIN = { color: INK, width: 0.25 };
const PAPER = '#ffffff';
/** mm. */
const ARROW = { length: 2.4, width: 1.6 };
const GRAIN_MOST = 32;
const LEAST_ARROW = 6;
/** Places for words that are tried across and down a small piece. */
const FEW_PLACES = 5;

/** The shapes of a placement; `toPaper` takes a point of the cloth to the sheet. */
export function layPiece(placement: Placement, toPaper: (p: Point) => Point): readonly Shape[] {
  const corners = placement.corners.map(toPaper);
  const lines = [spelled(placement.piece.piece.plan.name), ...details(placement)];
  const words = wordsInside(lines, corners);
  return [outline(corners), ...words.shapes, ...grainArrow(corners, words.box)];
}

/** The same in a picture that is too small for arrows: the name, and what must be seen to be cut. */
export function smallPiece(placement: Placement, toPaper: (p: Point) => Point): readonly Shape[] {
  const corners = placement.corners.map(toPaper);
  const { zone } = placement;
  const single = zone === 'rest' ? 'one layer, last' : zone === 'strip' ? 'one layer' : '';
  const told = [single, isBeside(placement) ? 'not on the fold' : '', lies(placement)]
    .filter((words) => words !== '')
    .join(', ');
  const name = spelled(placement.piece.piece.plan.name);
  const number = [`${placement.piece.number}`, ...(told === '' ? [] : [told])].join(', ');
  const lines = [name, ...(told === '' ? [] : [told])];
  const words = wordsInside(lines, corners, FEW_PLACES, number);
  return [outline(corners), ...words.shapes];
}

function outline(corners: readonly Point[]): Shape {
  return {
    kind: 'path',
    part: 'cut-line',
    segments: corners.map((from, i) => ({
      kind: 'line',
      from,
      to: corners[(i + 1) % corners.length] ?? from,
    })),
    closed: true,
    stroke: OUTLINE,
    fill: PAPER,
  };
}

/** How the piece is cut and how it lies. */
function details(placement: Placement): readonly string[] {
  const { onFold, layers, copy, copies, zone, piece } = placement;
  const many = copies > 1 ? `${copy} of ${copies}` : undefined;
  const whole = piece.fold === undefined ? 'one layer' : 'unfolded, one layer';
  const isDoubled = layers === 2;
  const cut = onFold ? 'on the fold' : isDoubled ? 'cut 2' : whole;
  const last = zone === 'rest' ? 'cut last, from what is left' : '';
  return [
    [cut, many].filter((word) => word !== undefined).join(', '),
    last,
    isBeside(placement) ? 'beside the fold, not on it' : '',
    lies(placement),
  ].filter((line) => line !== '');
}

/** It could not be moved away, and what lies along a fold is taken to be cut on it. */
function isBeside({ zone, onFold, corners }: Placement): boolean {
  return zone === 'fold' && !onFold && corners.some(({ x }) => x < OFF_THE_FOLD / 2);
}

/** Face down matters only where a piece has one layer: two give it and its image. */
function lies({ mirrored, turned, layers }: Placement): string {
  const words = [mirrored && layers === 1 ? 'face down' : '', turned ? 'upside down' : ''];
  return words.filter((word) => word !== '').join(', ');
}

/** The longest line along the grain below, above or beside the words that is long enough. */
function grainArrow(corners: readonly Point[], taken: Box): readonly Shape[] {
  const middle = (taken.left + taken.right) / 2;
  const beside = [taken.left - ARROW.length, taken.right + ARROW.length];
  const stretches = [
    ...outside(longestInside(corners, middle), taken),
    ...beside.map((x) => longestInside(corners, x)),
  ];
  const found = stretches.find((stretch) => arrowLength(stretch) >= LEAST_ARROW);
  if (found === undefined) return [];
  const { x, top, bottom } = found;
  const long = arrowLength(found);
  const start = (top + bottom - long) / 2;
  return [
    polyline('grainline', [point(x, start + 1), point(x, start + long - 1)], GRAIN),
    head(point(x, start), 1),
    head(point(x, start + long), -1),
  ];
}

function arrowLength({ top, bottom }: Upright): number {
  return Math.min(GRAIN_MOST, bottom - top - 2 * CLEARANCE);
}

/** What a stretch leaves above and below a box, the longer first. */
function outside(stretch: Upright, { top, bottom }: Box): readonly Upright[] {
  const above = { ...stretch, bottom: top };
  const below = { ...stretch, top: bottom };
  return top - stretch.top > stretch.bottom - bottom ? [above, below] : [below, above];
}

/** An arrowhead that ends at `tip`; `way` leads from there along its line. */
function head({ x, y }: Point, way: 1 | -1): Shape {
  const neck = y + way * ARROW.length;
  const half = ARROW.width / 2;
  return filled('arrowhead', [point(x, y), point(x - half, neck), point(x + half, neck)], INK);
}
