/** Scales along the edges of a picture, crosses at its corners and one in its middle. */
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import type { Shape, Stroke } from '../render/scene';
import { polyline } from '../render/scene';
import { CAP_MIDDLE, text } from '../render/type';
import { ARITHMETIC } from '../tolerance';
import { inchFraction, showLength, toMillimeters } from '../units';

/** mm from corner cross to corner cross. */
export interface Span {
  readonly across: number;
  readonly down: number;
}

const COLOR = '#8a5a2b';
const TICK: Stroke = { color: COLOR, width: 1 };
const CROSS: Stroke = { color: COLOR, width: 2 };
/** mm: arms of a corner cross, of which the outer ones lie outside the span. */
const CORNER_ARM = 12;
/** mm: arms of the center cross, whose lines are told as twice that. */
const CENTER_ARM = 100;
/** Type size in mm of the numbers. */
const TYPE = 7;
/** mm of every mark, of each that has half a number's distance, and of those with a number. */
const [SHORT, MIDDLE, LONG] = [5, 9, 14];
/** mm from the edge to beyond the numbers. */
export const SCALE_DEPTH = LONG + 4 * TYPE;

/** Marks: how far apart in mm, which have a number, and which are longer than the others. */
interface Ruler {
  readonly unit: 'cm' | 'in';
  readonly step: number;
  readonly middle: number;
  readonly numbered: number;
}

const CENTIMETERS: Ruler = { unit: 'cm', step: 10, middle: 5, numbered: 10 };
const INCHES: Ruler = { unit: 'in', step: toMillimeters(1, 'in'), middle: 3, numbered: 6 };

/** From (0, 0), the upper left corner cross, to (across, down): centimeters above and left, inches below and right. */
export function edgeScale({ across, down }: Span): readonly Shape[] {
  const corners = [0, across].flatMap((x) => [0, down].map((y) => point(x, y)));
  return [
    ...marks(across, CENTIMETERS, (along, depth) => point(along, depth)),
    ...marks(down, CENTIMETERS, (along, depth) => point(depth, along)),
    ...marks(across, INCHES, (along, depth) => point(along, down - depth)),
    ...marks(down, INCHES, (along, depth) => point(across - depth, along)),
    ...corners.flatMap((at) => cross('corner-cross', at, CORNER_ARM)),
    ...cross('center-cross', point(across / 2, down / 2), CENTER_ARM),
  ];
}

/** Lines of `setUpLengths`. */
export const LENGTHS_TOLD = 4;

/** What a ruler shows where the picture has its true size, a line of words each, in cm and in inches. */
export function setUpLengths({ across, down }: Span): readonly string[] {
  return [
    `Across, above and below: ${bothUnits(across)}`,
    `Down, left and right: ${bothUnits(down)}`,
    `From corner to corner, both: ${bothUnits(Math.hypot(across, down))}`,
    `Each line of the cross in the middle: ${bothUnits(2 * CENTER_ARM)}`,
  ];
}

/** No ruler on a table shows more than a millimeter or a sixteenth. */
function bothUnits(mm: number): string {
  const sixteenth = toMillimeters(1 / 16, 'in');
  const inches = inchFraction(sixteenth * Math.round(mm / sixteenth));
  return `${showLength(Math.round(mm), { unit: 'cm', fractions: false })}, ${inches} in`;
}

/** The marks of one edge; `at` gives the place of a length along it and of a depth into the picture. */
function marks(
  length: number,
  { unit, step, middle, numbered }: Ruler,
  at: (along: number, depth: number) => Point,
): readonly Shape[] {
  const count = Math.floor(length / step + ARITHMETIC);
  return Array.from({ length: count + 1 }, (_, i) => i).flatMap((i): readonly Shape[] => {
    const [hasNumber, isLonger] = [i % numbered === 0, i % middle === 0];
    const depth = hasNumber ? LONG : isLonger ? MIDDLE : SHORT;
    const mark = polyline(`scale-${unit}`, [at(i * step, 0), at(i * step, depth)], TICK);
    // At its ends an edge meets another, and there the cross stands for the number.
    if (!hasNumber || i * step < SCALE_DEPTH || length - i * step < SCALE_DEPTH) return [mark];
    const { x, y } = at(i * step, LONG + 2.2 * TYPE);
    const words = i === numbered ? `${i} ${unit}` : `${i}`;
    const place = point(x, y + CAP_MIDDLE * TYPE);
    return [mark, text(words, place, TYPE, { anchor: 'middle', weight: 'bold', color: COLOR })];
  });
}

function cross(part: string, { x, y }: Point, arm: number): readonly Shape[] {
  return [
    polyline(part, [point(x - arm, y), point(x + arm, y)], CROSS),
    polyline(part, [point(x, y - arm), point(x, y + arm)], CROSS),
  ];
}
