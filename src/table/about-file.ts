/** Prose about a file itself, which cannot change how its cells count: a heading, a day, a page, a source. */

const HEADING_WORD = String.raw`(?:(?:wom[ae]n|lad(?:y|ies)|misses|miss|girl)(?:['\u2019]?s)?|bod(?:y|ies)|size|sizes|sizing|measurements?|girths|lengths|chart|table|sheet|block|pattern|skirts?|points?|rules?|grad(?:e|ing)|spec|specification|seams|list|for|of|and|the|my|our)`;
const MONTH = String.raw`(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)\p{L}*\.?`;
const YEAR = String.raw`(?:19|20)\d\d`;
const DAY = String.raw`(?:${YEAR}(?:-\d\d?){0,2}|\d\d?[./-]\d\d?[./-](?:${YEAR}|\d\d)|(?:\d\d?\.? )?${MONTH},? ${YEAR})`;

const SEASON = String.raw`(?:spring|summer|autumn|fall|winter)(?:[ /-]+(?:spring|summer|autumn|fall|winter))? ?(?:${YEAR})?|(?:ss|aw|fw) ?\d\d`;
/** Initials, names, and counts of other things than units. */
const WORDS = String.raw`(?:(?:\p{L}[\p{L}.'\u2019-]*|&|\d+(?= \p{L})(?! ?(?:mm|cm|in|inch\p{L}*)\b)),? ?){0,8}`;

const ABOUT_FILE = new RegExp(
  [
    `${HEADING_WORD}(?:[ /&-]+${HEADING_WORD})*`,
    // A day, and what was done on it: revised 3 May 2024.
    String.raw`(?:(?:date|dated|revised|revision|updated|issued|printed|saved|created|as of)[: ]+)?${DAY}`,
    SEASON,
    String.raw`(?:page|sheet) \d+(?: ?(?:of|/) ?\d+)?`,
    String.raw`(?:version|revision|rev\.?|v) ?[\d.]*\p{L}?`,
    // Where it comes from or who made it.
    String.raw`(?:source|author|(?:made|prepared|checked|approved|revised|drawn)(?: by)?|client|customer|collection|season|studio)(?: ?[:=-] ?| |$)${WORDS}(?:${DAY}|${SEASON})?`,
    String.raw`(?:(?:e-?mail|contact|web)[: ]+)?(?:\S+@\S+\.\p{L}+|(?:https?://|www\.)\S+)`,
  ]
    .map((form) => `^(?:${form})$`)
    .join('|'),
  'iu',
);

/** Whether a part of a line tells of its file alone; nobody needs to be told that it was not read. */
export function isAboutFile(text: string): boolean {
  return text.length <= 100 && ABOUT_FILE.test(text);
}
