/** Findings of two runs beside each other. */
import { grouped } from '../../lists/grouped';
import { sizeWords } from '../../verdict/size-words';
import type { Row } from './rows';
import { subjectOf } from './rows';

const GRAVE = ['fail', 'warning'];

/** Failures and warnings that came, and those that went, by their check with its sizes, of which each run has its own. */
export function findingChanges(
  before: readonly Row[],
  now: readonly Row[],
  [oldLabels, labels]: readonly [readonly string[], readonly string[]],
): readonly string[] {
  const grave = (rows: readonly Row[]): readonly Row[] =>
    rows.filter(({ severity = '' }) => GRAVE.includes(severity));
  const key = (row: Row): string =>
    JSON.stringify([row.severity, row.check, row.size, row.piece, subjectOf(row)]);
  const [old, present] = [grave(before), grave(now)];
  const [oldKeys, presentKeys] = [new Set(old.map(key)), new Set(present.map(key))];
  return [
    ...byCheck(
      'New',
      present.filter((row) => !oldKeys.has(key(row))),
      labels,
    ),
    ...byCheck(
      'No longer',
      old.filter((row) => !presentKeys.has(key(row))),
      oldLabels,
    ),
  ];
}

/** `New: warning stride (all sizes), fail seam (size 12).` */
function byCheck(head: string, rows: readonly Row[], labels: readonly string[]): readonly string[] {
  if (rows.length === 0) return [];
  const checks = grouped(rows, ({ severity = '', check = '' }) => `${severity} ${check}`);
  const told = [...checks].map(([name, found]) => {
    const places = [...new Set(found.map(({ size = '' }) => size))];
    const sizes = places.includes('') ? '' : sizeWords(places, labels);
    return sizes === '' ? name : `${name} (${sizes.charAt(0).toLowerCase()}${sizes.slice(1)})`;
  });
  return [`${head}: ${told.join(', ')}.`];
}
