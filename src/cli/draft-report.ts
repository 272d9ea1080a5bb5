/** What `draft` tells on the terminal: verdicts counted, what is to be decided, and who was set aside. */
import { counted } from '../table/counted';
import type { BodyEntry, BodyList } from '../bodies/body-list';
import type { NearestSize } from '../bodies/nearest-size';
import { InputError } from '../errors';
import { grouped } from '../lists/grouped';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { BodyRecord } from '../files/body-files';
import { notReadInList } from '../files/body-files';
import type { Decision, Verdict } from '../verdict/verdict';
import type { Telling } from './json-document';
import type { DraftedList } from './draft-command';
import { refusedProblem } from '../bodies/refused-problem';
import { optionMessage } from './option-words';
import { notReadLine } from './not-read-line';
import { textTable, wrappedParagraph } from './text-table';
import { droppedReport } from './written-report';

/** Decisions and reasons that are told; the rest is counted. */
const TOLD = 5;
/** Places that are named in one line. */
const NAMED = 6;

const KINDS: readonly (readonly [Verdict['kind'], string, string])[] = [
  ['cut', 'can be cut', '32'],
  ['decide', 'need a decision', '33'],
  ['mend', 'are to be mended', '31'],
];

/** In lines of at most 80 columns, without a single name: bodies are told by their place in the list. */
export function draftReport(drafted: DraftedList, telling: Telling, color: boolean): string {
  const { list, style, records, refused, unprintable, written } = drafted;
  const of = records.length + refused.length;
  return [
    wrappedParagraph(
      `${list.file}: ${counted(of, 'body', 'bodies')}, ${records.length} drafted` +
        (style === '' ? '' : `, style ${style}`) +
        (refused.length === 0 ? '' : `; ${refused.length} set aside, in refused.csv`),
    ),
    verdictLines(records, color) + decisionsReport(list, records) + refusedReport(drafted),
    nearestReport(drafted),
    ...notReadLine([...notReadInList(list), ...(records[0]?.findings ?? [])], 'in findings.csv'),
    ...(telling.verbose === true ? [bodiesTable(records)] : []),
    wrappedParagraph(`Written to ${written.folder}: ${writtenNames(written.names)}`, 2) +
      droppedReport(written.dropped) +
      (unprintable.length === 0
        ? ''
        : wrappedParagraph(
            `Printed by their place, since the font lacks letters of their names: ${placesOf(list, unprintable)}`,
            2,
          )),
    wrappedParagraph(
      'Sew a toile first. A list of bodies is personal data: --anonymous leaves the names out.',
    ),
  ]
    .filter((part) => part !== '')
    .join('\n');
}

/** Tables by their names, and how many files there are of bodies. */
function writtenNames(names: readonly string[]): string {
  const tables = names.filter((name) => !name.startsWith('body-'));
  const own = names.length - tables.length;
  return (
    tables.map((name) => (name === 'drafts.csv' ? 'drafts.csv (who is who)' : name)).join(', ') +
    (own === 0 ? '' : ` and ${counted(own, 'file')} body-<row>`)
  );
}

function verdictLines(records: readonly BodyRecord[], color: boolean): string {
  const counts = KINDS.flatMap(([kind, words, code]) => {
    const count = records.filter(({ verdict }) => verdict.kind === kind).length;
    if (count === 0) return [];
    const text = `${count} ${words}`;
    return [color ? `\u001b[${code}m${text}\u001b[0m` : text];
  });
  return counts.length === 0 ? 'No body could be drafted.\n' : `${counts.join(', ')}.\n`;
}

/** Each decision once, with the bodies that it is for, those of most bodies first. */
function decisionsReport(list: BodyList, records: readonly BodyRecord[]): string {
  const groups = new Map<string, { readonly decision: Decision; readonly of: BodyEntry[] }>();
  for (const { entry, verdict } of records)
    for (const decision of verdict.decisions) {
      const key = decision.findings.map(({ check }) => check).join(' ');
      const group = groups.get(key) ?? { decision, of: [] };
      if (!group.of.includes(entry)) group.of.push(entry);
      groups.set(key, group);
    }
  const all = [...groups.values()].toSorted(
    (a, b) =>
      Number(b.decision.severity === 'fail') - Number(a.decision.severity === 'fail') ||
      b.of.length - a.of.length,
  );
  const lines = all
    .slice(0, TOLD)
    .map(({ decision, of }, i) =>
      wrappedParagraph(`  ${i + 1}. ${placesOf(list, of)}: ${sayingOf(decision, of)}`, 5),
    );
  const rest = all.length - TOLD;
  return lines.join('') + (rest > 0 ? `  And ${rest} more, in drafts.csv.\n` : '');
}

/** The words of the first, which tell its place where there is but one. */
function sayingOf({ text }: Decision, of: readonly BodyEntry[]): string {
  const words = text.replace(/^(?:Row|Column|Size \w+|All sizes)[^:]{0,20}: /u, '');
  return of.length === 1 ? words : `such as ${words.charAt(0).toLowerCase()}${words.slice(1)}`;
}

/** Each reason once, with the bodies that it is for. */
function refusedReport({ list, refused }: DraftedList): string {
  const groups = grouped(refused, ({ error: { problem } }) => {
    const { place, ...said } = refusedProblem(problem, false);
    return JSON.stringify([place?.measurement, said]);
  });
  const told = [...groups.values()].slice(0, TOLD).flatMap(([first, ...others]) => {
    if (first === undefined) return [];
    const { code, problem } = first.error;
    const plain = refusedProblem(problem, false);
    if (others.length === 0) return `set aside: ${optionMessage(new InputError(code, plain))}`;
    const { measurement } = problem.place ?? {};
    const which = placesOf(
      list,
      [first, ...others].map(({ entry }) => entry),
    );
    const place = measurement === undefined ? {} : { measurement };
    return `set aside: ${which}: ${optionMessage(new InputError(code, { ...plain, place }))}`;
  });
  const rest = groups.size - told.length;
  return (
    told.map((words) => wrappedParagraph(`  ${words}`, 4)).join('') +
    (rest > 0 ? `  And ${counted(rest, 'other reason')}, in refused.csv.\n` : '')
  );
}

/** How many fit a size, and of those that do not what is too tight or too loose. */
function nearestReport({ list, records, tried, display }: DraftedList): string {
  if (tried === undefined || records.length === 0) return '';
  const all = records.flatMap(({ entry, nearest }) =>
    nearest === undefined ? [] : [{ entry, nearest }],
  );
  const fitting = all.filter(({ nearest }) => nearest.fits);
  const others = all.filter(({ nearest }) => !nearest.fits);
  const same = all.filter(({ nearest }) => nearest.isSame).length;
  const lines = others
    .slice(0, TOLD)
    .map(({ entry, nearest }) =>
      wrappedParagraph(
        `  ${placesOf(list, [entry])}: ${nearest.label} is nearest, ${missWords(nearest, display)}`,
        4,
      ),
    );
  const rest = others.length - lines.length;
  return (
    wrappedParagraph(
      `${fitting.length} of ${all.length} fit a size of ${tried}; for ${same} made to measure would be ` +
        'the very same skirt. nearest.csv has all.',
    ) +
    lines.join('') +
    (rest > 0 ? `  And ${rest} more, in nearest.csv.\n` : '')
  );
}

function missWords(nearest: NearestSize, display: LengthDisplay): string {
  return (['waist', 'hip'] as const)
    .flatMap((girth) => {
      const { beyond, easeLeft } = nearest[girth];
      if (beyond === 0) return [];
      const by = showLength(Math.abs(beyond), display);
      const left = easeLeft < 0 ? `, ${showLength(-easeLeft, display)} less than the body` : '';
      return [`${by} too ${beyond > 0 ? 'tight' : 'loose'} at the ${girth}${left}`];
    })
    .join(' and ');
}

function bodiesTable(records: readonly BodyRecord[]): string {
  const rows = records.map(({ body, verdict: { counts } }) => [
    body,
    ...[counts.fail, counts.warning, counts.note, counts.ok].map(String),
  ]);
  return textTable([['body', 'fail', 'warning', 'note', 'ok'], ...rows]);
}

/** `rows 2, 3 and 9 more`. */
function placesOf({ layout }: BodyList, entries: readonly BodyEntry[]): string {
  const word = layout === 'size-rows' ? 'row' : 'column';
  const named = entries.slice(0, NAMED).map(({ number }) => number);
  const rest = entries.length - named.length;
  return `${word}${entries.length === 1 ? '' : 's'} ${named.join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`;
}
