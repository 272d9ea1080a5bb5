/** Writes a scene as SVG text. One user unit is one millimeter, so the sheet prints true. */
import { markupText } from './markup';
import type { Point } from '../geometry/point';
import type { Group, PathShape, Scene, Shape, TextShape } from './scene';
import { FONT_STACK } from './type';

/** The whole scene as an XML document that ends with a line break. */
export function svg(scene: Scene): string {
  const width = number(scene.width);
  const height = number(scene.height);
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm"` +
      ` viewBox="0 0 ${width} ${height}" font-family="${markupText(FONT_STACK)}"` +
      ` fill="none" stroke-linejoin="round">`,
    `<title>${markupText(scene.title)}</title>`,
    `<rect width="${width}" height="${height}" fill="#ffffff"/>`,
  ];
  writeAll(scene.shapes, lines);
  lines.push('</svg>', '');
  return lines.join('\n');
}

/** Adds the lines of the shapes to those there are. */
function writeAll(shapes: readonly Shape[], lines: string[]): void {
  for (const shape of shapes) {
    if (shape.kind === 'path') lines.push(path(shape));
    else if (shape.kind === 'text') lines.push(text(shape));
    else {
      lines.push(groupTag(shape));
      writeAll(shape.children, lines);
      lines.push('</g>');
    }
  }
}

function groupTag({ id, layer, data, offset }: Group): string {
  let tag = '<g';
  if (id !== undefined) tag += ` id="${markupText(id)}"`;
  if (layer !== undefined) tag += ` data-layer="${markupText(layer)}"`;
  for (const [name, value] of Object.entries(data ?? {})) {
    tag += ` data-${name}="${markupText(value)}"`;
  }
  if (offset !== undefined) tag += ` transform="translate(${pair(offset)})"`;
  return `${tag}>`;
}

function path({ part, segments, closed, stroke, fill }: PathShape): string {
  let tag = `<path data-part="${part}"`;
  if (fill !== undefined) tag += ` fill="${fill}"`;
  if (stroke !== undefined) {
    tag += ` stroke="${stroke.color}" stroke-width="${number(stroke.width)}"`;
    if (stroke.dash !== undefined)
      tag += ` stroke-dasharray="${stroke.dash.map(number).join(' ')}"`;
  }
  return `${tag} d="${pathData(segments, closed)}"/>`;
}

/** Path data of segments (SVG 2, section 9.3) in thousandths of a millimeter; a closed one is one loop. */
export function pathData(segments: PathShape['segments'], closed: boolean): string {
  let data = '';
  let pen: Point | undefined;
  const last = segments.at(-1);
  for (const segment of segments) {
    if (pen?.x !== segment.from.x || pen.y !== segment.from.y) data += `M${pair(segment.from)}`;
    pen = segment.to;
    if (segment.kind === 'cubic') {
      data += `C${pair(segment.leave)} ${pair(segment.arrive)} ${pair(segment.to)}`;
    } else if (!closed || segment !== last) {
      // Z itself draws the line that closes a loop; to draw it twice would disturb the dashes.
      data += `L${pair(segment.to)}`;
    }
  }
  return closed ? `${data}Z` : data;
}

function text({ words, at, size, weight, anchor, rotation, color }: TextShape): string {
  let tag = `<text x="${number(at.x)}" y="${number(at.y)}" font-size="${number(size)}"`;
  if (weight !== 'normal') tag += ` font-weight="${weight}"`;
  if (anchor !== 'start') tag += ` text-anchor="${anchor}"`;
  if (rotation !== 0) tag += ` transform="rotate(${number(rotation)} ${pair(at)})"`;
  return `${tag} fill="${color}">${markupText(words)}</text>`;
}

function pair({ x, y }: Point): string {
  return `${number(x)} ${number(y)}`;
}

/** To a thousandth of a millimeter; adding 0 turns a negative zero into a plain one. */
function number(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} was to be drawn`);
  return String(Math.round(value * 1000) / 1000 + 0);
}
