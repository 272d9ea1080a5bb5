/** Cells that a spreadsheet program has turned into dates. */
import { withPlainHyphens } from './tidy-text';

/** How the months begin in English, German, French, Spanish, Italian, Portuguese and Dutch. */
const MONTHS = [
  /^(?:jan|ene|gen|gin)/u,
  /^(?:feb|fév|fev)/u,
  /^(?:mar|mär|mrz|maa|mrt)/u,
  /^(?:apr|avr|abr)/u,
  /^(?:may|mai|mag|mei)/u,
  /^(?:jun|juin|giu)/u,
  /^(?:jul|juil|lug)/u,
  /^(?:aug|aoû|aou|ago)/u,
  /^(?:sep|set)/u,
  /^(?:oct|okt|ott|out)/u,
  /^(?:nov)/u,
  /^(?:dec|dez|déc|dic)/u,
];

/** `7-Aug`, `7. Aug`, `07.aug`. */
const DAY_MONTH = /^(\d{1,2})[-. /]{1,2}(\p{L}+)\.?$/u;
/** `Aug-32`, of 8/32, which is no day. */
const MONTH_YEAR = /^(\p{L}+)\.?-(\d{2}|\d{4})$/u;
/** `2026-08-07`. */
const ISO = /^\d{4}[-./](\d{1,2})[-./](\d{1,2})$/u;
/** `7/8/2026`, `07.08.2026`. */
const WITH_YEAR = /^(\d{1,2})[-./](\d{1,2})[-./]\d{4}$/u;

/** What was typed where a date stands now, such as `7/8 or 8/7`; undefined for any other text. */
export function typedForDate(text: string): string | undefined {
  const cell = withPlainHyphens(text).toLowerCase();
  const [, day = '', dayMonth = ''] = DAY_MONTH.exec(cell) ?? [];
  if (monthNamed(dayMonth) > 0) return eitherWay(day, String(monthNamed(dayMonth)));
  const [, name = '', year = ''] = MONTH_YEAR.exec(cell) ?? [];
  if (monthNamed(name) > 0) return `${monthNamed(name)}/${Number(year.slice(-2))}`;
  const [, first, second] = ISO.exec(cell) ?? WITH_YEAR.exec(cell) ?? [];
  return first === undefined || second === undefined ? undefined : eitherWay(first, second);
}

/** Words for a message about such a cell; empty for any other. */
export function dateWords(text: string): string {
  const typed = typedForDate(text);
  return typed === undefined ? '' : ` but a date, which spreadsheet programs make of ${typed}`;
}

/** Letters of the longest name of a month, such as September. */
const LONGEST_NAME = 9;

/** From 1 to 12, or 0 for no month. */
function monthNamed(name: string): number {
  if (name.length > LONGEST_NAME) return 0;
  return MONTHS.findIndex((month) => month.test(name)) + 1;
}

/** Which of the two came first depends on the country. */
function eitherWay(a: string, b: string): string {
  const [first, second] = [Number(a), Number(b)];
  return first === second ? `${first}/${second}` : `${first}/${second} or ${second}/${first}`;
}
