/** The label of a size as somebody typed it: what can be one, and what only stands where one does. */
import { typedForDate } from './date-cell';
import { labelKey, splitLabel } from './label';
import { excerpt } from './tidy-text';
import type { Place } from '../errors';
import { InputError } from '../errors';

/**
 * Columns that people put beside the sizes, by the letters and digits of their headings, from which no size takes
 * anything: what the sizes show themselves, such as their steps, and words for people.
 */
const BESIDE =
  /^(?:tol(?:erances?)?|plusminus|(?:grade)?(?:steps?|rules?|increments?|breaks?)|grad(?:e|ing)|growth|differences?|nos?|nr|notes?|comments?|remarks?|descriptions?|sources?|howto(?:measure)?|pages?|checked|check|done|ok|approved|range|status|dates?|ref(?:erence)?s?|codes?|poms?|initials)$/u;
/** Figures made of all others, such as `Average`, `Grand total`, `Std. dev.` or `Mean of 12 bodies`. */
const SUMMARY =
  /^(?:overall|grand|group|sample|sub)?(?:averages?|avg|mean|median|mode|min(?:imum)?|max(?:imum)?|totals?|sum|counts?|ø|(?:std|sd|st(?:andar)?d)(?:dev(?:iations?)?|errors?)?|stdev|variance|(?:\d+(?:st|nd|rd|th))?(?:percentiles?|quartiles?)\d*)(?:values?|rows?|n\d+|(?:of)?(?:all|these|\d+)?(?:bod(?:y|ies)|women|customers?|clients?|sizes?)?)$/u;
/** And those by which the numbers beside them would count otherwise. */
const COUNTING = /^(?:ease|units?|factors?|half|quarter)$/u;
const PLUS_MINUS = /^(?:±|\+ ?\/? ?-)/u;

/** Whether a heading names no size but what may be left out beside them, such as `Notes` or `Tol +/-`. */
export function isBesideSizes(name: string): boolean {
  return isBeside(name, headingKey(name));
}

/** Whether a label is of figures made of all others, such as `Average`. */
export function isSummary(label: string): boolean {
  return SUMMARY.test(headingKey(label));
}

/** Whether a label names neither a size nor a body, but figures or words about those beside it. */
export function namesNone(label: string): boolean {
  const key = headingKey(label);
  return isBeside(label, key) || COUNTING.test(key);
}

function isBeside(name: string, key: string): boolean {
  return PLUS_MINUS.test(name) || BESIDE.test(key) || SUMMARY.test(key);
}

/** Letters and digits without a unit, and without the signs of a tolerance. */
function headingKey(name: string): string {
  return labelKey(splitLabel(name).text);
}

/** Characters of a size label: it names files and stands on every piece. The engine's own figure. */
const LONGEST = 100;
/** Sizes of a range: five times the longest published one. The engine's own figure. */
const MOST_SIZES = 100;
/** Line ends of any kind (Unicode Standard 5.8), which a tidy text has no more. */
const LINE_END = /[\n\v\f\r\u0085\u2028\u2029]/u;

/** Throws InputError `file-too-large` for more sizes than a range may have. */
export function checkSizeCount(count: number, place: Place): void {
  if (count <= MOST_SIZES) return;
  throw new InputError('file-too-large', {
    what: 'there are too many sizes',
    allowed: `${MOST_SIZES} sizes`,
    got: `${count}`,
    place,
  });
}

/** Throws InputError `character-unseen` for a label as it was typed, if it has more than one line. */
export function checkOneLine(typed: string, place: Place): void {
  if (!LINE_END.test(typed.trim())) return;
  throw new InputError('character-unseen', {
    what: 'the label of a size has a line break',
    allowed: 'a label on one line',
    got: excerpt(typed),
    place,
  });
}

/**
 * Throws InputError `size-missing` for the heading of a column that people put beside the sizes, such
 * as `tolerance`, since it would be graded as a size; `cell-is-date` for two sizes in one, such as
 * 10-12, of which a spreadsheet made a date; `sheet-malformed` for a size that its label calls the base, as in
 * `12 (base)`; and `file-too-large` for a label that is too long.
 */
export function checkSizeLabel(name: string, place: Place): void {
  if (namesNone(name)) {
    throw new InputError('size-missing', {
      what: `"${excerpt(name)}" stands where a size does, but it names none`,
      allowed: 'sizes with their own numbers, and nothing else beside them',
      got: excerpt(name),
      place: { ...place, size: name },
    });
  }
  if (/\b(?:base|basis|sample)\b/iu.test(name)) {
    throw new InputError('sheet-malformed', {
      what: 'the label of a size says which is the base, where it is not read',
      allowed: 'the label alone, and a line such as "# base: 12"',
      got: excerpt(name),
      place,
    });
  }
  if (name.length > LONGEST) {
    throw new InputError('file-too-large', {
      what: 'the label of a size has too many characters',
      allowed: `${LONGEST} characters`,
      got: `${name.length}, which begin with ${excerpt(name)}`,
      place,
    });
  }
  const typed = typedForDate(name);
  if (typed === undefined) return;
  throw new InputError('cell-is-date', {
    what: `the label of a size is a date, which spreadsheet programs make of ${typed.replaceAll('/', '-')}`,
    allowed: 'the name of the size, in a column of text',
    got: name,
    place,
  });
}
