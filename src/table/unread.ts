/** What stands beside a table and was not understood: lines, parts of lines, and cells of notes. */
import { isAboutFile } from './about-file';
import type { SaidLine } from './said-line';
import type { StatementName } from './statement-words';
import type { Place } from '../errors';

/** A text that nothing read, tidy, and where it stands first. */
export interface UnreadText {
  readonly text: string;
  readonly place: Place;
  /** How often it stands in its file besides. */
  readonly others: number;
}

/** What a file has beside its table. */
export interface BesideTable {
  readonly comments: readonly SaidLine[];
  /** The cells of its column for notes, where it has one. */
  readonly notes?: readonly SaidLine[];
}

/** What names a file for people counts no cell of it; a remark says itself that it states nothing. */
const OF_THE_FILE: readonly StatementName[] = [
  ...(['unit', 'title', 'designer', 'version', 'date', 'copyright', 'not read'] as const),
];

/**
 * Lines in the order of the file, then notes; `reads` are the statements that the reader of the file takes
 * besides its unit and what names it. A note states nothing but a unit, which is refused if it is another.
 * What has no letter or digit says nothing, and what tells of the file itself nothing of its cells.
 */
export function unreadIn(
  { comments, notes = [] }: BesideTable,
  reads: readonly StatementName[],
): readonly UnreadText[] {
  const found = new Map<string, UnreadText>();
  const add = (line: SaidLine, known: readonly (StatementName | undefined)[]): void => {
    const { parts, place } = line;
    if (parts.every(({ name }) => name === undefined) && isAboutFile(line.text)) return;
    const unread = parts.filter(
      ({ name, text }) => !known.includes(name) && !(name === undefined && isAboutFile(text)),
    );
    const words =
      unread.length === parts.length ? line.text : unread.map(({ typed }) => typed).join('; ');
    const text = /[\p{L}\p{N}]/u.test(words) ? words : '';
    const key = text.toLowerCase();
    const earlier = found.get(key);
    if (earlier !== undefined) found.set(key, { ...earlier, others: earlier.others + 1 });
    else if (text !== '') found.set(key, { text, place, others: 0 });
  };
  for (const line of comments) add(line, [...OF_THE_FILE, ...reads]);
  for (const note of notes) add(note, ['unit', 'not read']);
  return [...found.values()];
}
