/**
 * Which published tables there are. The texts are bundled with the program and are not read here;
 * where each figure comes from stands in the comment lines of its file.
 */
import ansur1988 from '../../size-charts/standards/survey-ansur-1988-women-by-hip.csv';
import astmD558511e1 from '../../size-charts/standards/astm-d5585-11e1-misses.csv';
import astmD558595 from '../../size-charts/standards/astm-d5585-95-misses.csv';
import astmD696004 from '../../size-charts/standards/astm-d6960-04-plus.csv';
import astmD696016 from '../../size-charts/standards/astm-d6960-16-plus.csv';
import en134023 from '../../size-charts/standards/en-13402-3-women.csv';
import homePre1958 from '../../size-charts/standards/home-pattern-pre-1958.csv';
import homeMisses1968 from '../../size-charts/standards/home-pattern-misses-1968.csv';
import jisL4005 from '../../size-charts/standards/jis-l-4005-women-a-type.csv';
import { bundledTable } from '../table/bundled-table';
import catalogCsv from './catalog.csv';
import type { TableKind } from './published-table';

/** Where the rows of a table are found. */
export interface TableText {
  readonly csv: string;
  readonly waistRow: string;
  readonly hipRow: string;
}

/** One published table that the engine knows of, whether or not a chart can be compared with it. */
export interface CatalogEntry {
  /** The short name that a user types, such as `astm-d5585-95`. */
  readonly id: string;
  /** Its number and edition alone, as people call it. */
  readonly name: string;
  readonly title: string;
  readonly kind: TableKind;
  /** Year of the edition, or of the survey. */
  readonly year: number;
  /** The table itself, or why no chart can be compared with it. */
  readonly table: TableText | { readonly unusable: string };
  /** Tables of one edition for bodies of different types; a chart is compared with the nearer. */
  readonly family?: string;
  /** True for plus sizes: compared unasked only with a chart that is mostly of them. */
  readonly plus?: boolean;
}

/** The texts by the names of their files. */
const TEXTS: Readonly<Record<string, string>> = {
  'survey-ansur-1988-women-by-hip': ansur1988,
  'astm-d5585-11e1-misses': astmD558511e1,
  'astm-d5585-95-misses': astmD558595,
  'astm-d6960-04-plus': astmD696004,
  'astm-d6960-16-plus': astmD696016,
  'en-13402-3-women': en134023,
  'home-pattern-pre-1958': homePre1958,
  'home-pattern-misses-1968': homeMisses1968,
  'jis-l-4005-women-a-type': jisL4005,
};

/** A row; of a `body`, where a table has several, there are rows of its own. */
interface Row extends Readonly<
  Record<'id' | 'name' | 'title' | 'year' | 'family' | 'plus', string>
> {
  readonly kind: TableKind;
  readonly file: string;
  readonly body: string;
  readonly unusable: string;
}

/** Every table, standards first and the newest edition first among them. */
export const CATALOG: readonly CatalogEntry[] = bundledTable<Row>(catalogCsv).map(
  ({ id, name, title, kind, year, family, plus, file, body, unusable }) => {
    const ofBody = body === '' ? '' : `_${body}`;
    const rows = { waistRow: `waist_girth${ofBody}`, hipRow: `hip_girth${ofBody}` };
    return {
      ...{ id, name, title, kind, year: Number(year) },
      table: unusable === '' ? { csv: TEXTS[file] ?? '', ...rows } : { unusable },
      ...(family !== '' && { family }),
      ...(plus !== '' && { plus: true }),
    };
  },
);
