/**
 * The two standard faces of a PDF file. They are not embedded: every reader has the fonts of ISO
 * 32000-1 clause 9.6.2.2, with the characters of its WinAnsiEncoding (annex D) and no others.
 */
import type { PDFFont } from 'pdf-lib';
import { InputError } from '../errors';

/** A face as the content of a page needs it. */
export interface Face {
  /** Its name among the resources of a page. */
  readonly key: string;
  /** The words in the face's encoding, as hexadecimal digits. */
  readonly encoded: (words: string) => string;
  /** The width of words in em, as they are set: without kerning. */
  readonly width: (words: string) => number;
}

/** A face that throws InputError `character-unprintable` for a character that the font lacks. */
export function face(key: string, font: PDFFont): Face {
  const glyphs = new Map<string, { readonly code: string; readonly width: number }>();
  const glyphsOf = (words: string) =>
    Array.from(words, (character) => {
      const known = glyphs.get(character);
      if (known !== undefined) return known;
      if (!isPrintable(font, character)) refuse(character, words);
      const glyph = {
        code: font.encodeText(character).asString(),
        width: font.widthOfTextAtSize(character, 1),
      };
      glyphs.set(character, glyph);
      return glyph;
    });
  return {
    key,
    encoded: (words) =>
      glyphsOf(words)
        .map(({ code }) => code)
        .join(''),
    width: (words) => glyphsOf(words).reduce((sum, { width }) => sum + width, 0),
  };
}

/** The font has glyphs that its encoding has no code for, so only encoding itself can tell. */
function isPrintable(font: PDFFont, character: string): boolean {
  try {
    font.encodeText(character);
    return true;
  } catch {
    return false;
  }
}

function refuse(character: string, words: string): never {
  const code = (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
  throw new InputError('character-unprintable', {
    what: `the words "${words}" hold a character that the standard fonts of PDF cannot print`,
    allowed: 'the letters, figures and signs of western European languages',
    got: `${character} (U+${code})`,
  });
}
