/**
 * Reads a TrueType font, ISO/IEC 14496-22: its characters, their widths and outlines. It serves
 * fonts of the package itself, so what is not there is a fault of the program.
 */

/** A font as a printed page needs it; lengths in em, y up. */
export interface TrueType {
  /** The number of a character's glyph; 0 for a character that the font lacks. */
  readonly glyphOf: (character: string) => number;
  /** How far the pen moves on behind a glyph. */
  readonly advanceOf: (glyph: number) => number;
  readonly ascent: number;
  /** Negative: below the baseline. */
  readonly descent: number;
  readonly capHeight: number;
  /** Left, bottom, right, top of all glyphs over each other. */
  readonly box: readonly [number, number, number, number];
  /** The bytes of a table. Throws a RangeError if there is none. */
  readonly table: (tag: string) => Uint8Array;
  /** The bytes of a glyph's outline: none for a blank. */
  readonly outlineOf: (glyph: number) => Uint8Array;
}

/** A font with outlines of lines and quadratics and characters of the basic plane. */
export function trueType(bytes: Uint8Array): TrueType {
  const tables = tablesOf(bytes);
  const table = (tag: string): Uint8Array => {
    const found = tables.get(tag);
    if (found === undefined) throw new RangeError(`the font has no table ${tag}`);
    return found;
  };
  const [head, hhea, hmtx, loca, glyf] = ['head', 'hhea', 'hmtx', 'loca', 'glyf'].map((tag) =>
    viewOf(table(tag)),
  ) as [DataView, DataView, DataView, DataView, DataView];
  const em = head.getUint16(18);
  const isLong = head.getInt16(50) === 1;
  const widths = hhea.getUint16(34);
  const placeOf = (glyph: number): number =>
    isLong ? loca.getUint32(4 * glyph) : 2 * loca.getUint16(2 * glyph);
  let map: ((character: string) => number) | undefined;
  return {
    // The part of a font that a file carries has neither a map nor the height of capitals.
    glyphOf: (character) => (map ??= characterMap(viewOf(table('cmap'))))(character),
    // The last width holds for all glyphs behind it.
    advanceOf: (glyph) => hmtx.getUint16(4 * Math.min(glyph, widths - 1)) / em,
    ascent: hhea.getInt16(4) / em,
    descent: hhea.getInt16(6) / em,
    get capHeight() {
      return viewOf(table('OS/2')).getInt16(88) / em;
    },
    box: [36, 38, 40, 42].map((at) => head.getInt16(at) / em) as [number, number, number, number],
    table,
    outlineOf: (glyph) => {
      const [from, to] = [placeOf(glyph), placeOf(glyph + 1)];
      return new Uint8Array(glyf.buffer, glyf.byteOffset + from, to - from);
    },
  };
}

/** Reads and writes numbers of several bytes, the highest first as fonts have them. */
export function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

function tablesOf(bytes: Uint8Array): ReadonlyMap<string, Uint8Array> {
  const view = viewOf(bytes);
  const tables = new Map<string, Uint8Array>();
  for (let i = 0; i < view.getUint16(4); i++) {
    const entry = 12 + 16 * i;
    const tag = String.fromCharCode(...bytes.subarray(entry, entry + 4));
    const from = view.getUint32(entry + 8);
    tables.set(tag, bytes.subarray(from, from + view.getUint32(entry + 12)));
  }
  return tables;
}

/** The segments of format 4, the one that fonts of the basic plane have. */
function characterMap(cmap: DataView): (character: string) => number {
  const at = subtableOf(cmap);
  const segments = cmap.getUint16(at + 6) / 2;
  const [ends, starts] = [at + 14, at + 16 + 2 * segments];
  const [deltas, offsets] = [starts + 2 * segments, starts + 4 * segments];
  return (character) => {
    const code = character.codePointAt(0) ?? 0;
    for (let i = 0; i < segments; i++) {
      if (cmap.getUint16(ends + 2 * i) < code) continue;
      const start = cmap.getUint16(starts + 2 * i);
      if (start > code) return 0;
      const delta = cmap.getUint16(deltas + 2 * i);
      const offset = cmap.getUint16(offsets + 2 * i);
      if (offset === 0) return (code + delta) & 0xffff;
      const glyph = cmap.getUint16(offsets + 2 * i + offset + 2 * (code - start));
      return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
    }
    return 0;
  };
}

function subtableOf(cmap: DataView): number {
  for (let i = 0; i < cmap.getUint16(2); i++) {
    const at = cmap.getUint32(8 + 8 * i);
    if (cmap.getUint16(at) === 4) return at;
  }
  throw new RangeError('the font has no map of the basic plane');
}
