/** What nothing read beside the tables of the files, for a terminal. */
import type { Finding } from '../check/finding';
import { NOT_READ } from '../check/not-read';
import { wrappedParagraph } from './text-table';

/** Texts that are told; the rest is counted. */
const TOLD = 2;

/** One sentence or nothing; `where` tells where the rest of them stands, all are told without it. */
export function notReadLine(findings: readonly Finding[], where?: string): readonly string[] {
  const unread = findings.filter(({ check }) => check === NOT_READ);
  if (unread.length === 0) return [];
  const told = where === undefined ? unread : unread.slice(0, TOLD);
  const rest = unread.length - told.length;
  const places = told.map(({ facts = {} }) =>
    [facts.place, facts.text].filter((part) => part !== undefined).join(' '),
  );
  const it = unread.length === 1 ? 'it does' : 'they do';
  return [
    wrappedParagraph(
      `Not read: ${places.join('; ')}${rest === 0 ? '' : `; and ${rest} more, ${where ?? ''}`}. ` +
        `Check that ${it} not change how cells count.`,
    ),
  ];
}

/** The same as values of a document. */
export function notReadFacts(findings: readonly Finding[]): readonly string[] {
  return findings
    .filter(({ check }) => check === NOT_READ)
    .map(({ subject, message }) => `${subject}: ${message}`);
}
