/** Type: the font stack, and how much room words need where no font can be asked. */
import type { Box } from '../geometry/bounds';
import type { TextShape } from './scene';
import { INK } from './size-style';

/** Plain sans-serif faces that one system or another has, none of them embedded. */
export const FONT_STACK = "'Helvetica Neue', Helvetica, Arial, 'Liberation Sans', sans-serif";

/**
 * Advance widths in em, each with the characters that need no more than that in bold. They are
 * those of the widest face the stack may fall back to, so that words never outgrow their room.
 */
const WIDTHS: readonly (readonly [em: number, characters: string])[] = [
  [0.38, "ijlI' /\\|,.·ıłΙϳІіј‘’‚′"],
  [0.5, '!()[]`frt:;-ľ¡°²³¹ιſ“”„″‹›'],
  [0.6, 'J_cs"*zªºĸεζςгзстѕє–†ґ'],
  [
    0.72,
    '0123456789abdeghknopquvxyLSFET${}?¢£¥§«»¿ßðøþđħŋŁŧəΓΕΞΣΤαβγδηθκλνορτυχГЕЅЗТЄабвеикнопрухчьяђћџҐ€•',
  ],
  [0.79, 'ABCKPRVXYZµÞΑΒΔΖΚΛΡΥΧμσφЈАБВРСУХЧЬЭЯлцъэћ'],
  [0.88, 'DGHNOQU#+<=>^&~±Ð×Ø÷ĐĦŊΗΘΝΟΠΦΨΩπψωЋЏДИКЛНОПдм−≤≥'],
  [1.11, 'MWmw@%©®¼½¾⅓⅔⅛⅜⅝⅞ÆæœΆΈΉΊΌΎΏΜЂМФЦЪЫжфшщыюљњ—…™←→'],
];
const EM = new Map(WIDTHS.flatMap(([em, characters]) => [...characters].map((c) => [c, em])));
/** Em of a character that the table does not know: the widest pictures among letters. */
const UNKNOWN_EM = 1.3;

/** A letter with accents is about as wide as without them. */
function emOf(character: string): number {
  return EM.get(character) ?? EM.get(character.normalize('NFD').charAt(0)) ?? UNKNOWN_EM;
}

/** Share of the type size that capitals and figures rise above the baseline. */
const ASCENT = 0.76;
/** Share of the type size that letters may hang below the baseline. */
const DESCENT = 0.24;
/** Share of the type size from the baseline up to the middle of a capital. */
export const CAP_MIDDLE = 0.36;
/** Distance from one baseline to the next, as a share of the type size. */
export const LEADING = 1.35;

/** How a line of words may differ from the usual one. */
export interface TypeOptions {
  readonly weight?: TextShape['weight'];
  /** Which end of the words, or their middle, is at the place given. */
  readonly anchor?: TextShape['anchor'];
  /** Degrees, clockwise on paper. */
  readonly rotation?: number;
  readonly color?: string;
}

/** A line of words with its anchor on the baseline at `at`: ink, regular, from the left, level. */
export function text(
  words: string,
  at: TextShape['at'],
  size: number,
  { weight = 'normal', anchor = 'start', rotation = 0, color = INK }: TypeOptions = {},
): TextShape {
  return { kind: 'text', words, at, size, weight, anchor, rotation, color };
}

/** Width in mm that a line of words takes at most, in any weight. */
export function textWidth(words: string, size: number): number {
  let em = 0;
  for (const character of words) em += emOf(character);
  return em * size;
}

/** The type size in mm, or a smaller one at which the words are no wider than `width` mm. */
export function fitted(words: string, size: number, width: number): number {
  return Math.min(size, width / textWidth(words, 1));
}

/** The upright box that surely holds a line of words, turned or not. */
export function textBox({ words, at, size, anchor, rotation }: TextShape): Box {
  const width = textWidth(words, size);
  const left = anchor === 'start' ? 0 : anchor === 'middle' ? -width / 2 : -width;
  const right = left + width;
  const top = -ASCENT * size;
  const bottom = DESCENT * size;
  const angle = (rotation * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  // Each corner is (x cos - y sin, x sin + y cos); the extremes take the sides that suit the signs.
  return {
    left: at.x + Math.min(left * cos, right * cos) - Math.max(top * sin, bottom * sin),
    right: at.x + Math.max(left * cos, right * cos) - Math.min(top * sin, bottom * sin),
    top: at.y + Math.min(left * sin, right * sin) + Math.min(top * cos, bottom * cos),
    bottom: at.y + Math.max(left * sin, right * sin) + Math.max(top * cos, bottom * cos),
  };
}

/** Breaks words into lines no wider than `width` mm; a word that is wider itself is cut up. */
export function wrapped(words: string, size: number, width: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of words.split(/\s+/).flatMap((w) => pieces(w, size, width))) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidth(longer, size) <= width) {
      line = longer;
    } else {
      if (line !== '') lines.push(line);
      line = word;
    }
  }
  return line === '' ? lines : [...lines, line];
}

function pieces(word: string, size: number, width: number): string[] {
  const cut: string[] = [];
  let piece = '';
  for (const character of word) {
    if (piece !== '' && textWidth(piece + character, size) > width) {
      cut.push(piece);
      piece = '';
    }
    piece += character;
  }
  return piece === '' ? cut : [...cut, piece];
}
