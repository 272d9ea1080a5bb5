/** The part of a TrueType font that a file needs: the glyphs it shows, numbered anew from 1. */
import type { TrueType } from './true-type';
import { viewOf } from './true-type';

/** Bits of a part of a glyph that is put together of others, ISO/IEC 14496-22 clause 5.3.3. */
const WORDS = 0x1;
const SCALE = 0x8;
const MORE = 0x20;
const TWO_SCALES = 0x40;
const MATRIX = 0x80;

/** The sum of a whole font, of which `head` tells what is missing to it. */
const WHOLE_SUM = 0xb1b0afba;

/**
 * A font of glyph 0, `glyphs` in their order, and what those are put together of. It has no
 * characters and no name: a page of PDF tells both.
 */
export function subsetOf(font: TrueType, glyphs: readonly number[]): Uint8Array<ArrayBuffer> {
  const order = [0, ...glyphs];
  const outlines: Uint8Array[] = [];
  // Parts that are added meanwhile are reached at the end of the list.
  for (const glyph of order) outlines.push(renumbered(font, glyph, order));
  const [loca, glyf] = placed(outlines);
  const hmtx = new Uint8Array(4 * order.length);
  order.forEach((glyph, i) => hmtx.set(metricOf(font, glyph), 4 * i));
  return fontOf(
    [
      ['glyf', glyf],
      ['head', changed(font.table('head'), (head) => head.setInt16(50, 1))],
      ['hhea', changed(font.table('hhea'), (hhea) => hhea.setUint16(34, order.length))],
      ['hmtx', hmtx],
      ['loca', loca],
      ['maxp', changed(font.table('maxp'), (maxp) => maxp.setUint16(4, order.length))],
    ].map(([tag, bytes]) => [tag as string, bytes as Uint8Array]),
  );
}

/** The outline of a glyph; its parts take their numbers in `order`, which grows by those it lacks. */
function renumbered(font: TrueType, glyph: number, order: number[]): Uint8Array {
  const outline = font.outlineOf(glyph);
  const isPlain = outline.length === 0 || viewOf(outline).getInt16(0) >= 0;
  if (isPlain) return outline;
  return changed(outline, (view) => {
    for (let at = 10, flags = MORE; (flags & MORE) !== 0;) {
      flags = view.getUint16(at);
      const component = view.getUint16(at + 2);
      // A glyph of the file itself may stand for several characters; any of them has the outline.
      const known = order.indexOf(component);
      view.setUint16(at + 2, known >= 0 ? known : order.push(component) - 1);
      const scale = flags & MATRIX ? 8 : flags & TWO_SCALES ? 4 : flags & SCALE ? 2 : 0;
      at += 4 + (flags & WORDS ? 4 : 2) + scale;
    }
  });
}

/** The width of a glyph and the place of its left edge. */
function metricOf(font: TrueType, glyph: number): Uint8Array {
  const hmtx = font.table('hmtx');
  const widths = viewOf(font.table('hhea')).getUint16(34);
  if (glyph < widths) return hmtx.subarray(4 * glyph, 4 * glyph + 4);
  const edge = 4 * widths + 2 * (glyph - widths);
  return Uint8Array.of(
    ...hmtx.subarray(4 * widths - 4, 4 * widths - 2),
    ...hmtx.subarray(edge, edge + 2),
  );
}

/** Outlines behind each other, each at a multiple of 4, and the table of their places. */
function placed(outlines: readonly Uint8Array[]): readonly [loca: Uint8Array, glyf: Uint8Array] {
  const loca = new Uint8Array(4 * (outlines.length + 1));
  const places = viewOf(loca);
  let end = 0;
  outlines.forEach((outline, i) => {
    places.setUint32(4 * i, end);
    end += padded(outline.length);
  });
  places.setUint32(4 * outlines.length, end);
  const glyf = new Uint8Array(end);
  outlines.forEach((outline, i) => glyf.set(outline, places.getUint32(4 * i)));
  return [loca, glyf];
}

/** The tables as a font file, in the order given, which is that of their tags. */
function fontOf(
  tables: readonly (readonly [tag: string, bytes: Uint8Array])[],
): Uint8Array<ArrayBuffer> {
  const directory = 12 + 16 * tables.length;
  const size = tables.reduce((sum, [, bytes]) => sum + padded(bytes.length), directory);
  const file = new Uint8Array(size);
  const view = viewOf(file);
  const power = Math.floor(Math.log2(tables.length));
  view.setUint32(0, 0x00010000);
  view.setUint16(4, tables.length);
  view.setUint16(6, 16 * 2 ** power);
  view.setUint16(8, power);
  view.setUint16(10, 16 * (tables.length - 2 ** power));
  let at = directory;
  let head = 0;
  tables.forEach(([tag, bytes], i) => {
    const entry = 12 + 16 * i;
    file.set(bytes, at);
    if (tag === 'head') {
      head = at;
      // The font's own sum counts as 0 in all sums.
      view.setUint32(head + 8, 0);
    }
    file.set(
      Array.from(tag, (letter) => letter.charCodeAt(0)),
      entry,
    );
    view.setUint32(entry + 4, sumOf(file.subarray(at, at + padded(bytes.length))));
    view.setUint32(entry + 8, at);
    view.setUint32(entry + 12, bytes.length);
    at += padded(bytes.length);
  });
  view.setUint32(head + 8, (WHOLE_SUM - sumOf(file)) >>> 0);
  return file;
}

function sumOf(bytes: Uint8Array): number {
  const view = viewOf(bytes);
  let sum = 0;
  for (let at = 0; at < bytes.length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
  return sum;
}

function padded(length: number): number {
  return Math.ceil(length / 4) * 4;
}

function changed(bytes: Uint8Array, change: (view: DataView) => void): Uint8Array {
  const copy = bytes.slice();
  change(viewOf(copy));
  return copy;
}
