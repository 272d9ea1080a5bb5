/** The title that a chart or a pattern states for itself, which stands on every sheet. */
import type { Place } from '../errors';
import { InputError } from '../errors';
import type { SaidLine } from './said-line';
import { excerpt } from './tidy-text';

/** Characters, as of a size label. The engine's own figure. */
const LONGEST = 100;

/** Throws InputError `file-too-large` for a title, or what else stands beside it, that is too long. */
export function checkTitle(title: string, place: Place, name = 'title'): void {
  if (title.length <= LONGEST) return;
  throw new InputError('file-too-large', {
    what: `the ${name} has too many characters`,
    allowed: `${LONGEST} characters`,
    got: `${title.length}, which begin with ${excerpt(title)}`,
    place,
  });
}

/** Words of lines that head a table, not a garment. */
const OF_TABLE =
  /\b(?:charts?|tables?|measure\w*|sizes?|sizing|bod(?:y|ies)|units?|notes?|drafts?|girths?|circumferences?|eased?|allowances?|shrinkage)\b/iu;
/** A length, a percentage or a sum says something of the numbers. */
const OF_NUMBERS = /\d ?(?:mm|cm|inch|["\u2033%])|[\u00D7\u00F7]|\/ ?\d/iu;

/**
 * Whether a lone line above a table names the garment: some words of prose without a number's sign or
 * a colon. A comment does only where it calls itself a skirt: others may be about anything.
 */
export function seemsTitle({ text: line, parts }: SaidLine, isComment: boolean): boolean {
  if (parts.some(({ name }) => name !== undefined) || (isComment && parts.length > 1)) return false;
  if (line.length > LONGEST || !/\p{L}{2}/u.test(line) || /[:=<>@|]|[.!?]$/u.test(line))
    return false;
  return (
    !OF_TABLE.test(line) && !OF_NUMBERS.test(line) && (!isComment || /\bskirts?\b/iu.test(line))
  );
}
