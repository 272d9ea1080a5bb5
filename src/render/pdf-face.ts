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
  const known = new Set(font.getCharacterSet());
  const widths = new Map<string, number>();
  const widthOf = (character: string): number => {
    const width = widths.get(character) ?? font.widthOfTextAtSize(character, 1);
    widths.set(character, width);
    return width;
  };
  return {
    key,
    encoded: (words) => {
      for (const character of words) {
        if (!known.has(character.codePointAt(0) ?? 0)) refuse(character, words);
      }
      return font.encodeText(words).asString();
    },
    width: (words) => [...words].reduce((sum, character) => sum + widthOf(character), 0),
  };
}

function refuse(character: string, words: string): never {
  const code = (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
  throw new InputError('character-unprintable', {
    what: `the words "${words}" hold a character that the standard fonts of PDF cannot print`,
    allowed: 'the letters, figures and signs of western European languages',
    got: `${character} (U+${code})`,
  });
}
