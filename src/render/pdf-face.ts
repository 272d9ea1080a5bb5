/** A face of the font that a PDF file carries: it counts the characters that the file shows. */
import { InputError } from '../errors';
import type { TrueType } from './true-type';

/** A face as the content of a page needs it. */
export interface Face {
  /** Its name among the resources of a page. */
  readonly key: string;
  /** The words as numbers of characters in four hexadecimal digits each. */
  readonly encoded: (words: string) => string;
  /** The width of words in em, as they are set: without kerning. */
  readonly width: (words: string) => number;
}

/** A character that the file shows. Its number in the file is its place among them, from 1. */
export interface ShownCharacter {
  readonly character: string;
  /** The number of its glyph in the whole font. */
  readonly glyph: number;
  /** em. */
  readonly width: number;
}

/** A face, and all that was written with it. */
export interface CountingFace extends Face {
  readonly shown: readonly ShownCharacter[];
}

interface Known {
  readonly code: string;
  readonly width: number;
}

/** A face that throws InputError `character-unprintable` for a character that it cannot show. */
export function face(key: string, font: TrueType): CountingFace {
  const shown: ShownCharacter[] = [];
  const known = new Map<string, Known>();
  const charactersOf = (words: string): readonly Known[] =>
    // A letter and an accent behind it are one letter wherever there is such a one.
    Array.from(words.normalize('NFC'), (character) => {
      const old = known.get(character);
      if (old !== undefined) return old;
      const glyph = ALONE.test(character) ? font.glyphOf(character) : 0;
      if (glyph === 0) refuse(character, words);
      const width = font.advanceOf(glyph);
      shown.push({ character, glyph, width });
      const added = { code: shown.length.toString(16).padStart(4, '0'), width };
      known.set(character, added);
      return added;
    });
  return {
    key,
    shown,
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
