/** Characters that cannot be seen and change what is: they move what a terminal shows or turn text around. */

/**
 * Control characters (C0 but for tab and line ends, DEL, C1: ISO/IEC 6429) and those that set the
 * direction of text (Unicode Standard Annex 9, section 2), with the separators of lines and paragraphs.
 */
export const UNSEEN =
  /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u009F\u061C\u200E\u200F\u2028-\u202E\u2066-\u2069]/u;

const EACH = new RegExp(UNSEEN.source, 'gu');
const EACH_ON_A_LINE = new RegExp(`${UNSEEN.source}|[\\r\\n\\t]`, 'gu');

/** What colors a word, and does nothing else. */
const COLOR = /(\u001B\[\d{0,2}m)/u;

/** A text on one line for a message, with the code in the place of each such character. */
export function printable(text: string): string {
  return text.replace(EACH_ON_A_LINE, coded);
}

/** Any text for a terminal, with the codes of all that would move what it shows; `color` lets colors pass. */
export function terminalText(text: string, color: boolean): string {
  if (!UNSEEN.test(text)) return text;
  if (!color) return text.replace(EACH, coded);
  // Every other part is a color, since the parting pattern has a group.
  return text
    .split(COLOR)
    .map((part, i) => (i % 2 === 1 ? part : part.replace(EACH, coded)))
    .join('');
}

function coded(character: string): string {
  return `\\u${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`;
}
