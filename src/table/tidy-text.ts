/** Text as people type and paste it, brought into one form before it is compared or parsed. */

/** Zero-width and soft-hyphen characters come along with pasted text and are never meant. */
const INVISIBLE = /[\u00AD\u200B-\u200D\u2060]/gu;
const HYPHENS = /[\u2010-\u2015\u2212]/gu;

/** The text without blanks at its ends, every run of blanks of any width as one space. */
export function tidyText(text: string): string {
  return text.replace(INVISIBLE, '').replace(/\s+/gu, ' ').trim();
}

/** Tidy text with every hyphen, dash and minus sign as `-`. */
export function withPlainHyphens(text: string): string {
  return tidyText(text).replace(HYPHENS, '-');
}

/** True if nothing can be seen of the text. */
export function isBlank(text: string): boolean {
  return tidyText(text) === '';
}

/** Characters of a cell that a message quotes; more would hide what is wrong with it. */
const EXCERPT = 60;

/** The beginning of a text, tidy and on one line, for a message. */
export function excerpt(text: string): string {
  const tidy = tidyText(text);
  return tidy.length > EXCERPT ? `${tidy.slice(0, EXCERPT)}…` : tidy;
}
