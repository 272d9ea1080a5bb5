/** A face of the font that a PDF file carries: of each character only what words need that are set by themselves. */
import type { PDFFont } from '@cantoo/pdf-lib';
import { InputError } from '../errors';

/** A face as the content of a page needs it. */
export interface Face {
  /** Its name among the resources of a page. */
  readonly key: string;
  /** The words as numbers of characters in four hexadecimal digits each. */
  readonly encoded: (words: string) => string;
  /** The width of words in em, as they are set: without kerning. */
  readonly width: (words: string) => number;
}

interface Known {
  readonly code: string;
  readonly width: number;
}

/** A face that throws InputError `character-unprintable` for a character that it cannot show. */
export function face(font: PDFFont): Face {
  const characters = new Set(font.getCharacterSet());
  const known = new Map<string, Known>();
  const charactersOf = (words: string): readonly Known[] =>
    // A letter and an accent behind it are one letter wherever there is such a one.
    Array.from(words.normalize('NFC'), (character) => {
      const old = known.get(character);
      if (old !== undefined) return old;
      if (!ALONE.test(character) || !characters.has(character.codePointAt(0) ?? 0))
        refuse(character, words);
      // One by one, so that no pair is kerned and no two letters become one.
      const code = font.encodeText(character).asString();
      const added = { code, width: font.widthOfTextAtSize(character, 1) };
      known.set(character, added);
      return added;
    });
  return {
    key: font.name,
    encoded: (words) =>
      charactersOf(words)
        .map(({ code }) => code)
        .join(''),
    width: (words) => charactersOf(words).reduce((sum, { width }) => sum + width, 0),
  };
}

/** Scripts whose letters stand in a row from left to right, and what all scripts share but marks. */
const ALONE =
  /^(?:\p{Script=Latin}|\p{Script=Greek}|\p{Script=Cyrillic}|(?=\p{Script=Common})[^\p{M}\p{C}])$/u;

function refuse(character: string, words: string): never {
  const code = (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
  throw new InputError('character-unprintable', {
    what: `the words "${words}" hold a character that the font of printed files does not have`,
    allowed: 'Latin, Greek and Cyrillic letters, figures and common signs',
    got: `${character} (U+${code})`,
  });
}
