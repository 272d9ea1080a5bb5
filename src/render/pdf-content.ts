/** Shapes as the operators of a content stream, ISO 32000-1 clause 8 (graphics) and 9 (text). */
import type { Box } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import { POINTS_PER_MILLIMETER } from '../units';
import type { Face } from './pdf-face';
import type { PathShape, Shape, Stroke, TextShape } from './scene';

/** What the operators may call by name. */
export interface Names {
  readonly faces: Readonly<Record<TextShape['weight'], Face>>;
  /** The resource name of each layer's optional content group. */
  readonly layers: ReadonlyMap<string, string>;
}

/** Operators after which one unit is a millimeter, x runs right and y down from the top left. */
export function millimeters(height: number): string {
  return `${POINTS_PER_MILLIMETER.toFixed(9)} 0 0 ${(-POINTS_PER_MILLIMETER).toFixed(9)} 0 ${(height * POINTS_PER_MILLIMETER).toFixed(6)} cm`;
}

/**
 * Draws in millimeters, y down. A group with a layer becomes marked content of that layer, which
 * a reader shows or hides (ISO 32000-1 clause 8.11.3.2). Throws a RangeError for a layer without a
 * resource name, and InputError `character-unprintable`.
 */
export function contentOf(shapes: readonly Shape[], names: Names): string {
  // Round joins and butt ends, as in every other drawing.
  const lines = ['1 j 0 J'];
  write(shapes, point(0, 0), names, lines);
  return lines.join('\n');
}

/** Shows the part `part` of an external object that is drawn in millimeters, moved to `at`. */
export function windowContent(key: string, part: Box, at: Point): string {
  const [width, height] = [part.right - part.left, part.bottom - part.top];
  const clip = `${number(at.x)} ${number(at.y)} ${number(width)} ${number(height)} re W n`;
  const move = `1 0 0 1 ${number(at.x - part.left)} ${number(at.y - part.top)} cm`;
  return `q ${clip} ${move} /${key} Do Q`;
}

function write(shapes: readonly Shape[], zero: Point, names: Names, lines: string[]): void {
  for (const shape of shapes) {
    if (shape.kind === 'path') lines.push(path(shape, zero));
    else if (shape.kind === 'text') lines.push(text(shape, zero, names));
    else {
      const { offset = point(0, 0), layer, children } = shape;
      if (layer !== undefined) lines.push(`/OC /${layerKey(layer, names)} BDC`);
      write(children, point(zero.x + offset.x, zero.y + offset.y), names, lines);
      if (layer !== undefined) lines.push('EMC');
    }
  }
}

function layerKey(layer: string, { layers }: Names): string {
  const key = layers.get(layer);
  if (key === undefined) throw new RangeError(`the file has no layer ${layer}`);
  return key;
}

function path({ segments, closed, stroke, fill }: PathShape, zero: Point): string {
  const pair = ({ x, y }: Point): string => `${number(x + zero.x)} ${number(y + zero.y)}`;
  let operators = '';
  if (fill !== undefined) operators += `${color(fill)} rg `;
  if (stroke !== undefined) operators += strokeState(stroke);
  let pen: Point | undefined;
  for (const segment of segments) {
    const { from, to } = segment;
    if (pen?.x !== from.x || pen.y !== from.y) operators += `${pair(from)} m `;
    pen = to;
    operators +=
      segment.kind === 'cubic'
        ? `${pair(segment.leave)} ${pair(segment.arrive)} ${pair(to)} c `
        : `${pair(to)} l `;
  }
  const paint = fill === undefined ? 'S' : stroke === undefined ? 'f' : 'B';
  return `${operators}${closed ? 'h ' : ''}${paint}`;
}

function strokeState({ color: ink, width, dash = [] }: Stroke): string {
  return `${color(ink)} RG ${number(width)} w [${dash.map(number).join(' ')}] 0 d `;
}

function text(
  { words, at, size, weight, anchor, rotation, color: ink }: TextShape,
  zero: Point,
  { faces }: Names,
): string {
  const face = faces[weight];
  const back = { start: 0, middle: 0.5, end: 1 }[anchor] * face.width(words) * size;
  const angle = (rotation * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const x = at.x + zero.x - back * cos;
  const y = at.y + zero.y - back * sin;
  // The second row turns the letters upright again where y runs down.
  const matrix = [cos, sin, sin, -cos].map((value) => number(value, 6)).join(' ');
  return (
    `BT ${color(ink)} rg /${face.key} ${number(size)} Tf ` +
    `${matrix} ${number(x)} ${number(y)} Tm <${face.encoded(words)}> Tj ET`
  );
}

/** `#rrggbb` as three shares. */
function color(hex: string): string {
  return [1, 3, 5].map((i) => number(parseInt(hex.slice(i, i + 2), 16) / 255)).join(' ');
}

/** Rounded to a thousandth of a millimeter; adding 0 turns a negative zero into a plain one. */
function number(value: number, decimals = 3): string {
  const scale = 10 ** decimals;
  if (!Number.isFinite(value)) throw new RangeError(`${value} was to be drawn`);
  // PDF knows no exponents, and none are written of numbers that have up to six decimals.
  return String(Math.round(value * scale) / scale + 0);
}
