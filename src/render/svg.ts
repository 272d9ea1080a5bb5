/** Writes a scene as SVG 1.1 text. One user unit is one millimeter, so the sheet prints true. */
import type { Point } from '../geometry/point';
import { trimmed } from '../units';
import type { PathShape, Scene, Shape, TextShape } from './scene';
import { FONT_STACK } from './type';

/** Decimals of every number: a thousandth of a millimeter. */
const DECIMALS = 3;

/** The whole scene as an XML document that ends with a line break. */
export function svg(scene: Scene): string {
  const width = number(scene.width);
  const height = number(scene.height);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm"` +
      ` viewBox="0 0 ${width} ${height}" font-family="${escaped(FONT_STACK)}"` +
      ` fill="none" stroke-linejoin="round">`,
    `<title>${escaped(scene.title)}</title>`,
    `<rect width="${width}" height="${height}" fill="#ffffff"/>`,
    ...scene.shapes.map(shape),
    '</svg>',
    '',
  ].join('\n');
}

function shape(drawn: Shape): string {
  switch (drawn.kind) {
    case 'path':
      return path(drawn);
    case 'text':
      return text(drawn);
    case 'group': {
      const { id, layer, data, offset } = drawn;
      const attributes = [
        ...(id === undefined ? [] : [attribute('id', id)]),
        ...(layer === undefined ? [] : [attribute('data-layer', layer)]),
        ...Object.entries(data ?? {}).map(([name, value]) => attribute(`data-${name}`, value)),
        ...(offset === undefined ? [] : [attribute('transform', `translate(${pair(offset)})`)]),
      ];
      return [`<g${attributes.join('')}>`, ...drawn.children.map(shape), '</g>'].join('\n');
    }
  }
}

function path({ part, segments, closed, stroke, fill }: PathShape): string {
  const attributes = [
    attribute('data-part', part),
    ...(fill === undefined ? [] : [attribute('fill', fill)]),
    ...(stroke === undefined
      ? []
      : [
          attribute('stroke', stroke.color),
          attribute('stroke-width', number(stroke.width)),
          ...(stroke.dash === undefined
            ? []
            : [attribute('stroke-dasharray', stroke.dash.map(number).join(' '))]),
        ]),
    attribute('d', pathData(segments, closed)),
  ];
  return `<path${attributes.join('')}/>`;
}

function pathData(segments: PathShape['segments'], closed: boolean): string {
  const steps: string[] = [];
  let pen: Point | undefined;
  segments.forEach((segment, i) => {
    if (pen?.x !== segment.from.x || pen.y !== segment.from.y) {
      steps.push(`M${pair(segment.from)}`);
    }
    pen = segment.to;
    // Z itself draws the line that closes a loop; to draw it twice would disturb the dashes.
    if (closed && i === segments.length - 1 && segment.kind === 'line') return;
    steps.push(
      segment.kind === 'line'
        ? `L${pair(segment.to)}`
        : `C${pair(segment.leave)} ${pair(segment.arrive)} ${pair(segment.to)}`,
    );
  });
  if (closed) steps.push('Z');
  return steps.join('');
}

function text({ words, at, size, weight, anchor, rotation, color }: TextShape): string {
  const attributes = [
    attribute('x', number(at.x)),
    attribute('y', number(at.y)),
    attribute('font-size', number(size)),
    ...(weight === 'normal' ? [] : [attribute('font-weight', weight)]),
    ...(anchor === 'start' ? [] : [attribute('text-anchor', anchor)]),
    ...(rotation === 0 ? [] : [attribute('transform', `rotate(${number(rotation)} ${pair(at)})`)]),
    attribute('fill', color),
  ];
  return `<text${attributes.join('')}>${escaped(words)}</text>`;
}

function attribute(name: string, value: string): string {
  return ` ${name}="${escaped(value)}"`;
}

function pair({ x, y }: Point): string {
  return `${number(x)} ${number(y)}`;
}

function number(value: number): string {
  return trimmed(value, DECIMALS);
}

/** Characters that XML 1.0 does not allow at all, not even escaped. */
const NOT_XML = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/gu;

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
  '\t': '&#9;',
  '\n': '&#10;',
  '\r': '&#13;',
};

function escaped(words: string): string {
  return words
    .replace(NOT_XML, '\ufffd')
    .replace(/[&<>"'\t\n\r]/g, (character) => ENTITIES[character] ?? character);
}
