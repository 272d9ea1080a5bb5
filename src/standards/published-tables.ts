/** Finds published tables by their short names. Only the table asked for is read. */
import type { InputProblem } from '../errors';
import { InputError } from '../errors';
import type { CatalogEntry } from './catalog';
import { CATALOG } from './catalog';
import type { PublishedTable, TableKind } from './published-table';
import { readPublishedTable } from './read-published-table';
import { listedNames, wantedNames } from '../table/near-names';

/** One line of a list of tables. */
export interface TableListing {
  readonly id: string;
  readonly title: string;
  readonly kind: TableKind;
  readonly year: number;
  /** Why no chart can be compared with the table; undefined where one can. */
  readonly unusable: string | undefined;
}

/** Every published table, without reading any: standards first, newest edition first. */
export function publishedTables(): TableListing[] {
  return CATALOG.map(({ id, title, kind, year, table }) => ({
    id,
    title,
    kind,
    year,
    unusable: 'unusable' in table ? table.unusable : undefined,
  }));
}

/**
 * The table of that short name, or of the one name that begins so, in any case. Throws an
 * InputError `standard-unknown` if there is none or more than one, or if the table has no waist
 * row to compare with.
 */
export function publishedTable(id: string): PublishedTable {
  const entry = entryOf(id);
  if ('unusable' in entry.table) {
    throw unknown(
      `no chart can be compared with ${entry.title}: ${entry.table.unusable}`,
      USABLE,
      id,
    );
  }
  return readPublishedTable(entry, entry.table);
}

function entryOf(id: string): CatalogEntry {
  const wanted = id.trim().toLowerCase();
  const exact = CATALOG.find((entry) => entry.id === wanted);
  const begun = wanted === '' ? [] : CATALOG.filter((entry) => entry.id.startsWith(wanted));
  const entry = exact ?? (begun.length === 1 ? begun[0] : undefined);
  if (entry !== undefined) return entry;
  throw begun.length === 0
    ? unknown('no published table has this name', USABLE, id)
    : refused(
        'more than one published table begins with this name',
        { allowed: listedNames(idsOf(begun)) },
        id,
      );
}

const USABLE = CATALOG.filter(({ table }) => !('unusable' in table));

function idsOf(entries: readonly CatalogEntry[]): readonly string[] {
  return entries.map((entry) => entry.id);
}

function unknown(what: string, allowed: readonly CatalogEntry[], got: string): InputError {
  const ids = idsOf(allowed);
  const whole = wantedNames(got, ids);
  // `JIS A type` says more than a name, and begins with one.
  return refused(
    what,
    whole.near === undefined ? wantedNames(/^\w*/u.exec(got.trim())?.[0] ?? '', ids) : whole,
    got,
  );
}

function refused(
  what: string,
  wanted: Pick<InputProblem, 'near' | 'allowed'>,
  got: string,
): InputError {
  return new InputError('standard-unknown', {
    what,
    ...wanted,
    got,
    place: { field: 'against' },
  });
}
