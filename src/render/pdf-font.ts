/** A face as a font of a PDF file: embedded, with only what the file shows. ISO 32000-1 clause 9.7. */
import type { PDFDocument, PDFRef } from '@cantoo/pdf-lib';
import { PDFString } from '@cantoo/pdf-lib';
import type { CountingFace, ShownCharacter } from './pdf-face';
import { packedStream } from './pdf-stream';
import type { TrueType } from './true-type';
import { subsetOf } from './true-type-subset';

/** The font gives a width of the vertical strokes nowhere; readers do without. */
const STEM_UNKNOWN = 0;
/** Flag of a font whose characters are numbered by the file itself (table 123). */
const SYMBOLIC = 4;

/** Adds to the document, at `ref`, the font `name` with all that was written with `face`. */
export function addFont(
  { context }: PDFDocument,
  ref: PDFRef,
  name: string,
  font: TrueType,
  { shown }: CountingFace,
): void {
  const subset = subsetOf(
    font,
    shown.map(({ glyph }) => glyph),
  );
  const tagged = `${tagOf(shown)}+${name}`;
  const thousandths = (em: number): number => Math.round(em * 1e6) / 1e3;
  const descriptor = context.register(
    context.obj({
      Type: 'FontDescriptor',
      FontName: tagged,
      Flags: SYMBOLIC,
      FontBBox: font.box.map(thousandths),
      ItalicAngle: 0,
      Ascent: thousandths(font.ascent),
      Descent: thousandths(font.descent),
      CapHeight: thousandths(font.capHeight),
      StemV: STEM_UNKNOWN,
      FontFile2: packedStream(context, subset, { Length1: subset.length }),
    }),
  );
  const descendant = context.register(
    context.obj({
      Type: 'Font',
      Subtype: 'CIDFontType2',
      BaseFont: tagged,
      CIDSystemInfo: {
        Registry: PDFString.of('Adobe'),
        Ordering: PDFString.of('Identity'),
        Supplement: 0,
      },
      FontDescriptor: descriptor,
      DW: thousandths(font.advanceOf(0)),
      W: [1, shown.map(({ width }) => thousandths(width))],
      CIDToGIDMap: 'Identity',
    }),
  );
  context.assign(
    ref,
    context.obj({
      Type: 'Font',
      Subtype: 'Type0',
      BaseFont: tagged,
      Encoding: 'Identity-H',
      DescendantFonts: [descendant],
      ToUnicode: packedStream(context, charactersOf(shown)),
    }),
  );
}

/** Six letters that differ where the parts of a font differ (clause 9.6.4). */
function tagOf(shown: readonly ShownCharacter[]): string {
  let sum = 0;
  for (const { glyph } of shown) sum = (sum * 31 + glyph) % 26 ** 6;
  return Array.from({ length: 6 }, (_, i) =>
    String.fromCharCode(65 + (Math.floor(sum / 26 ** i) % 26)),
  ).join('');
}

/** Entries of one list, clause 9.10.3. */
const MOST_ENTRIES = 100;

/** Which characters the numbers stand for, so that words can be found and copied. */
function charactersOf(shown: readonly ShownCharacter[]): string {
  const entries = shown.map(({ character }, i) => {
    const code = (i + 1).toString(16).padStart(4, '0');
    const units = Array.from({ length: character.length }, (_, unit) =>
      character.charCodeAt(unit).toString(16).padStart(4, '0'),
    );
    return `<${code}> <${units.join('')}>`;
  });
  const lists = Array.from({ length: Math.ceil(entries.length / MOST_ENTRIES) }, (_, i) =>
    entries.slice(i * MOST_ENTRIES, (i + 1) * MOST_ENTRIES),
  );
  return [
    '/CIDInit /ProcSet findresource begin 12 dict begin begincmap',
    '/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def',
    '/CMapName /Adobe-Identity-UCS def /CMapType 2 def',
    '1 begincodespacerange <0000> <ffff> endcodespacerange',
    ...lists.flatMap((list) => [`${list.length} beginbfchar`, ...list, 'endbfchar']),
    'endcmap CMapName currentdict /CMap defineresource pop end end',
  ].join('\n');
}
