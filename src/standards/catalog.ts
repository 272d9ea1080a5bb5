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

/** A table whose rows have the plain names. */
function girths(csv: string): TableText {
  return { csv, waistRow: 'waist_girth', hipRow: 'hip_girth' };
}

/** One of the two bodies, `curvy` or `straight`, that ASTM D5585-11e1 tabulates. */
function misses2011(body: string): TableText {
  return { csv: astmD558511e1, waistRow: `waist_girth_${body}`, hipRow: `hip_girth_${body}` };
}

/** Every table, standards first and the newest edition first among them. */
export const CATALOG: readonly CatalogEntry[] = [
  {
    id: 'astm-d6960-16',
    name: 'ASTM D6960/D6960M-16',
    title: 'ASTM D6960/D6960M-16, plus sizes',
    kind: 'standard',
    year: 2016,
    table: girths(astmD696016),
    plus: true,
  },
  {
    id: 'astm-d5585-11e1-curvy',
    name: 'ASTM D5585-11e1, curvy body',
    title: 'ASTM D5585-11e1, misses sizes, curvy body',
    kind: 'standard',
    year: 2011,
    table: misses2011('curvy'),
    family: 'astm-d5585-11e1',
  },
  {
    id: 'astm-d5585-11e1-straight',
    name: 'ASTM D5585-11e1, straight body',
    title: 'ASTM D5585-11e1, misses sizes, straight body',
    kind: 'standard',
    year: 2011,
    table: misses2011('straight'),
    family: 'astm-d5585-11e1',
  },
  {
    id: 'gost-31396',
    name: 'GOST 31396-2009',
    title: 'GOST 31396-2009, women',
    kind: 'standard',
    year: 2009,
    table: { unusable: 'its waist girths are not known here, only bust and hip' },
  },
  {
    id: 'astm-d6960-04',
    name: 'ASTM D6960-04',
    title: 'ASTM D6960-04, plus sizes',
    kind: 'standard',
    year: 2004,
    table: girths(astmD696004),
    plus: true,
  },
  {
    id: 'en-13402-3',
    name: 'EN 13402-3:2004',
    title: 'EN 13402-3:2004, women, sizes by bust girth in cm',
    kind: 'standard',
    year: 2004,
    table: girths(en134023),
  },
  {
    id: 'jis-l-4005',
    name: 'JIS L 4005 (2001)',
    title: 'JIS L 4005 (2001), women, A body type, height 158 cm, sizes 3 to 9 only',
    kind: 'standard',
    year: 2001,
    table: girths(jisL4005),
  },
  {
    id: 'astm-d5585-95',
    name: 'ASTM D5585-95',
    title: 'ASTM D5585-95 (reapproved 2001), misses sizes',
    kind: 'standard',
    year: 1995,
    table: girths(astmD558595),
  },
  {
    id: 'home-misses-1968',
    name: 'US home-pattern misses sizing of 1968',
    title: 'US home-pattern industry, misses sizes of 1968',
    kind: 'trade-table',
    year: 1968,
    table: girths(homeMisses1968),
  },
  {
    id: 'home-pre-1958',
    name: 'US home-pattern sizing before 1958',
    title: 'US home-pattern industry, misses 10-20 and women 40-48 before about 1956-58',
    kind: 'trade-table',
    year: 1956,
    table: girths(homePre1958),
  },
  {
    id: 'ansur-1988',
    name: '1988 survey of US Army women',
    title: '1988 survey of US Army women, means of classes by hip girth, not a size standard',
    kind: 'survey',
    year: 1988,
    table: girths(ansur1988),
  },
];
