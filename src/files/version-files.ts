/** What is written of two versions of a style: the table of what changed, a page to sign, a drawing. */
import { InputError } from '../errors';
import type { NamedText } from '../jobs/requests';
import { svg } from '../render/svg';
import { versionSheet } from '../render/version-sheet';
import type { WrittenOutline } from '../render/written-outlines';
import { writtenOutlines } from '../render/written-outlines';
import { counted } from '../table/counted';
import { writtenCsv } from '../table/written-csv';
import { SHOWN_ALIKE } from '../tolerance';
import type { LengthUnit } from '../units';
import { tableNumber, trimmed } from '../units';
import { factWords } from './changes/fact-words';
import type { VersionRow } from './changes/facts';
import { changedFacts } from './changes/facts';
import { HANDLE } from './changes/point-changes';
import type { NamedTexts } from './changes/rows';
import { NEST } from './changes/rows';
import { VERSION_FILES, versionRows } from './changes/version-rows';
import { changeParts } from './report-file';
import type { ResultFile } from './result-file';
import type { Changes } from './since-last-run';
import { COMPARED_FILES, UNCHANGED, changesSince, sizesOf } from './since-last-run';
import type { Source } from './source-version';
import { sourceVersions } from './source-version';

/** The files of a folder of results that a version is read from; without the first two it is none. */
export const READ_FILES: readonly string[] = [...new Set([...VERSION_FILES, ...COMPARED_FILES])];
const NEEDED = ['graded-points.csv', 'findings.csv'];

/** A folder of results: its name in messages, and the texts of its files. */
export interface Version {
  readonly name: string;
  readonly texts: NamedTexts;
}

/** Two versions held against each other. */
export interface ComparedVersions {
  /** What messages call them. */
  readonly before: string;
  readonly after: string;
  readonly unit: LengthUnit;
  readonly rows: readonly VersionRow[];
  /** The same in sentences. */
  readonly changes: Changes;
  /** The outlines of both; none where they are of no pieces. A pattern in one size has no label. */
  readonly outlines: readonly [readonly WrittenOutline[], readonly WrittenOutline[]];
  /** The sizes of the later one, in their order. */
  readonly sizes: readonly string[];
}

/**
 * Compares two folders of results. Lengths of the rows are in mm. Throws InputError `file-unreadable`
 * for a folder that has no grade in it, `csv-malformed` for a table that is none.
 */
export function comparedVersions(before: Version, after: Version): ComparedVersions {
  for (const { name, texts } of [before, after])
    for (const file of NEEDED) if (!texts.has(file)) refuseFolder(name, file);
  const points = after.texts.get('graded-points.csv') ?? '';
  const unit = (['in', 'cm', 'mm'] as const).find((own) => points.includes(`x_${own}`)) ?? 'cm';
  const nest = ({ texts }: Version) => writtenOutlines(texts.get(NEST) ?? '');
  const rows = versionRows(before.texts, after.texts);
  const changes = changesSince(before.texts, after.texts);
  const titled = factWords(rows.filter(({ of }) => of === 'title'));
  const words = changes === UNCHANGED && titled.length > 0 ? titled : [...titled, ...changes.words];
  return {
    ...{ before: before.name, after: after.name, unit, rows },
    changes: { ...changes, words },
    outlines: [nest(before), nest(after)],
    sizes: sizesOf(after.texts),
  };
}

/** Compares two charts, two patterns or two rule sheets. Throws what `sourceVersions` throws. */
export function comparedSources(
  before: Source,
  after: Source,
  pattern?: NamedText,
): ComparedVersions {
  const [old, present] = sourceVersions(before, after, pattern);
  const rows = changedFacts(old.facts, present.facts);
  return {
    ...{ before: before.file, after: after.file, unit: present.unit, rows },
    changes: { words: factWords(rows) },
    outlines: [old.outlines, present.outlines],
    sizes: [''],
  };
}

function refuseFolder(name: string, file: string): never {
  throw new InputError('file-unreadable', {
    what: `a version is a folder that grade wrote, and this has no ${file}`,
    allowed: 'a folder of results, such as output/my-chart',
    got: name,
    place: { file: name },
  });
}

/**
 * `changes.csv` (`of,name,size,value,before,after,growth_in`), `changes.md` and, where both have a nest,
 * `changes.svg` of a size that both have: the one asked for, or the middle one.
 */
export function versionFiles(compared: ComparedVersions, size?: string): readonly ResultFile[] {
  const { rows, unit } = compared;
  const head = ['of', 'name', 'size', 'value', 'before', 'after', `growth_${unit}`];
  const cells = rows.map(({ growth, ...row }) => [
    ...[row.of, row.name, row.size, row.value, row.before, row.after],
    growth === undefined ? '' : tableNumber(growth, unit),
  ]);
  return [
    { name: 'changes.csv', text: writtenCsv([head, ...cells]) },
    { name: 'changes.md', text: page(compared) },
    ...drawing(compared, size),
  ];
}

/** `3 points, 1 finding`; empty where nothing changed. */
export function changeCounts(rows: readonly VersionRow[]): string {
  const kinds = [...new Set(rows.map(({ of }) => of))];
  return kinds
    .map((of) => {
      const own = rows.filter((row) => row.of === of);
      return counted(new Set(own.map(({ name }) => name)).size, of);
    })
    .join(', ');
}

function page({ before, after, rows, changes }: ComparedVersions): string {
  const counts = changeCounts(rows);
  return [
    '# Two versions',
    `Before: ${before}  \nNow: ${after}`,
    counts === '' ? 'Nothing changed.' : `Changed: ${counts}. Every number is in changes.csv.`,
    ...(counts === '' ? [] : changeParts(changes, 'What changed')),
    '| Checked by | Date | Released by | Date |\n| --- | --- | --- | --- |\n|  |  |  |  |',
    '',
  ].join('\n\n');
}

function drawing(
  { before, after, rows, outlines, sizes }: ComparedVersions,
  size?: string,
): readonly ResultFile[] {
  const both = sizes.filter((label) =>
    outlines.every((all) => all.some((own) => own.size === label)),
  );
  if (both.length === 0 && size === undefined) return [];
  const shown = size ?? both[Math.floor((both.length - 1) / 2)] ?? '';
  if (!both.includes(shown))
    throw new InputError('size-unknown', {
      what: 'the two versions have no such size in common',
      allowed:
        both.filter((label) => label !== '').join(', ') ||
        'two folders of results to draw a size of',
      got: shown,
      place: { field: 'size' },
    });
  const [old, present] = outlines.map((all) => all.filter((own) => own.size === shown));
  const moved = rows.filter(
    ({ of: kind, size: at, name, growth = 0 }) =>
      kind === 'point' && at === shown && !name.endsWith(HANDLE) && Math.abs(growth) >= SHOWN_ALIKE,
  );
  const most = Math.max(0, ...moved.map(({ growth }) => Math.abs(growth ?? 0)));
  const scene = versionSheet({
    title: `${before} and ${after}`,
    size: shown === '' ? 'base size' : `size ${shown}`,
    before: old ?? [],
    after: present ?? [],
    notes: [
      moved.length === 0
        ? 'No point moved in this size.'
        : `${counted(new Set(moved.map(({ name }) => name)).size, 'point')} moved in this size, at most by ` +
          `${trimmed(most / 10, 2)} cm along an axis.`,
      'Both are laid on their own zero: a moved zero moves the whole piece.',
    ],
  });
  return [{ name: 'changes.svg', text: svg(scene) }];
}
