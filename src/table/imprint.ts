/** What a file states of itself for a cover: who designed it, which version it is, from when. */
import { present } from '../lists/present';
import { InputError } from '../errors';
import type { SaidLine } from './said-line';
import { allStated } from './said-line';
import { excerpt } from './tidy-text';
import { checkTitle } from './title';

/** The statements of an imprint, in the order in which they are shown. */
export const IMPRINT_NAMES = ['designer', 'version', 'date', 'copyright'] as const;

/** As they were typed; what no file states is not there, least of all a date. */
export type Imprint = Readonly<Partial<Record<(typeof IMPRINT_NAMES)[number], string>>>;

/**
 * What the lines of all files of a pattern state together. Throws InputError `sheet-malformed` where
 * two differ, and `file-too-large` as `checkTitle` does.
 */
export function imprintOf(lines: readonly SaidLine[]): Imprint {
  const found = IMPRINT_NAMES.flatMap((name) => {
    const [first, ...others] = allStated(lines, name).filter(({ text }) => text !== '');
    if (first === undefined) return [];
    checkTitle(first.text, first.place, name);
    const other = others.find(({ text }) => text !== first.text);
    if (other === undefined) return [[name, first.text] as const];
    throw new InputError('sheet-malformed', {
      what: `the ${name} is stated twice, first as ${excerpt(first.text)}`,
      allowed: `one line such as "# ${name}: ${first.text}"`,
      got: excerpt(other.text),
      place: other.place,
    });
  });
  return Object.fromEntries(found);
}

/** In words for a cover: `Design: A. Lind. Version 2. 2026-03-01. © 2026 A. Lind`; empty for none. */
export function imprintWords({ designer, version, date, copyright }: Imprint): string {
  const year = /^\d{4}$/u.test(copyright ?? '') && designer !== undefined;
  return present([
    designer !== undefined && `Design: ${designer}`,
    version !== undefined && `Version ${version}`,
    date,
    copyright !== undefined && `© ${copyright}${year ? ` ${designer}` : ''}`,
  ]).join(' · ');
}

/** The day that the date states as `2026-03-01`; undefined for any other words. */
export function imprintDay({ date = '' }: Imprint): Date | undefined {
  if (!/^\d{4}-\d\d-\d\d$/u.test(date)) return undefined;
  const day = new Date(`${date}T00:00:00Z`);
  return Number.isNaN(day.getTime()) || day.toISOString().slice(0, 10) !== date ? undefined : day;
}
