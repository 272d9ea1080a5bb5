/** What a new set of results has otherwise than the one before it, told from the texts of both. */
import type { SizeTable } from '../print/size-table';
import { readWrittenCsv } from '../table/written-csv';
import { clothChanges } from './changes/cloth-changes';
import { cutChanges, cutWords } from './changes/cut-changes';
import { findingChanges } from './changes/finding-changes';
import { measureChanges } from './changes/measure-changes';
import { pointChanges } from './changes/point-changes';
import type { NamedTexts, Row } from './changes/rows';
import { NEST } from './changes/rows';

/** The files that are compared, as far as both sets have them. */
export const COMPARED_FILES = [
  'finished-measurements.csv',
  'findings.csv',
  'graded-points.csv',
  'fabric.csv',
  NEST,
] as const;

/** Sentences, and the finished measurements that changed with a column a size. */
export interface Changes {
  readonly words: readonly string[];
  readonly measures?: SizeTable;
}

/** What is said where no file differs. */
export const UNCHANGED: Changes = {
  words: ['Nothing changed that is drawn, measured, warned of or bought.'],
};

/**
 * The changes from an earlier set of files to a new one. Files that either set lacks are left out, and
 * so are lengths that changed by less than anybody draws. Throws InputError `csv-malformed` for a text
 * that is no table.
 */
export function changesSince(earlier: NamedTexts, now: NamedTexts): Changes {
  const pair = (
    name: (typeof COMPARED_FILES)[number],
  ): readonly [readonly Row[], readonly Row[]] | undefined => {
    const [before, after] = [earlier.get(name), now.get(name)];
    if (before === undefined || after === undefined || before === after) return undefined;
    return [readWrittenCsv(before, name), readWrittenCsv(after, name)];
  };
  const measured = pair('finished-measurements.csv');
  const points = pair('graded-points.csv');
  const found = pair('findings.csv');
  const cloth = pair('fabric.csv');
  const cuts = cutChanges(earlier.get(NEST) ?? '', now.get(NEST) ?? '');
  if (cuts.length === 0 && [measured, points, found, cloth].every((one) => one === undefined))
    return UNCHANGED;
  const labels = sizesOf(now);
  const measures = measured && measureChanges(...measured, labels);
  const moved = points === undefined ? [] : pointChanges(...points);
  const words = [
    ...moved,
    ...cutWords(cuts, (piece) => moved.some((told) => told.startsWith(`${piece}: `))),
    ...(found === undefined ? [] : findingChanges(...found, [sizesOf(earlier), labels])),
    ...(cloth === undefined ? [] : clothChanges(...cloth, labels)),
  ];
  if (measures !== undefined) return { words, measures };
  return words.length === 0 ? UNCHANGED : { words };
}

/** The sizes of a set of files, in their order. */
export function sizesOf(texts: NamedTexts): readonly string[] {
  const points = readWrittenCsv(texts.get('graded-points.csv') ?? '', 'graded-points.csv');
  return [...new Set(points.map(({ size = '' }) => size))];
}
