/**
 * A published table read as a curve of hip girth over waist girth, straight between its sizes.
 * The curve ends where the table ends: nothing is extrapolated.
 */
import { SAME_PLACE } from '../tolerance';
import type { PublishedTable } from './published-table';

/** One size of a table: its label, and waist and hip in millimeters. */
export interface TableSize {
  readonly size: string;
  readonly waist: number;
  readonly hip: number;
}

/** Two neighboring sizes of the curve. */
export interface TableInterval {
  readonly from: TableSize;
  readonly to: TableSize;
}

/** The least and the greatest waist of the curve, in millimeters; undefined for an empty table. */
export function waistRange(
  table: PublishedTable,
): { readonly least: number; readonly greatest: number } | undefined {
  const sizes = curveSizes(table);
  const first = sizes[0];
  const last = sizes.at(-1);
  return first && last && { least: first.waist, greatest: last.waist };
}

/**
 * The interval that holds a waist girth (mm): the upper one where two meet, the last one at the
 * end of the table, undefined outside its range.
 */
export function intervalAt(table: PublishedTable, waist: number): TableInterval | undefined {
  const sizes = curveSizes(table);
  const first = sizes[0];
  const last = sizes.at(-1);
  if (first === undefined || last === undefined) return undefined;
  if (waist < first.waist - SAME_PLACE || waist > last.waist + SAME_PLACE) return undefined;
  const to = sizes.find((size) => size.waist > waist + SAME_PLACE) ?? last;
  const from = sizes.findLast((size) => size.waist < to.waist);
  return from && { from, to };
}

/** A stretch of the curve between two waists. */
export interface TableStretch extends TableInterval {
  /** How many steps of the table the stretch is worth, with its parts; 1.5 for one and a half. */
  readonly steps: number;
}

/**
 * The least stretch of whole sizes that holds both waists (mm, the smaller first), and how many
 * steps of the table lie between them; undefined where either is outside its range.
 */
export function stretchBetween(
  table: PublishedTable,
  least: number,
  most: number,
): TableStretch | undefined {
  const sizes = curveSizes(table);
  const [low, high] = [placeOf(sizes, least), placeOf(sizes, most)];
  if (low === undefined || high === undefined) return undefined;
  const from = sizes[Math.floor(low + SAME_PLACE)];
  const to = sizes[Math.ceil(high - SAME_PLACE)];
  return from && to && { from, to, steps: high - low };
}

/** Where a waist lies among the sizes: 2.5 half-way from the third to the fourth. */
function placeOf(sizes: readonly TableSize[], waist: number): number | undefined {
  const upper = sizes.findIndex((size) => size.waist >= waist - SAME_PLACE);
  const [from, to] = [sizes[upper - 1], sizes[upper]];
  if (to === undefined) return undefined;
  if (from === undefined) return Math.abs(to.waist - waist) <= SAME_PLACE ? 0 : undefined;
  return upper - 1 + Math.min(1, (waist - from.waist) / (to.waist - from.waist));
}

/** The hip girth (mm) the table gives for a waist girth (mm); undefined outside its range. */
export function hipAtWaist(table: PublishedTable, waist: number): number | undefined {
  const interval = intervalAt(table, waist);
  if (interval === undefined) return undefined;
  const { from, to } = interval;
  const share = (waist - from.waist) / (to.waist - from.waist);
  return from.hip + share * (to.hip - from.hip);
}

/**
 * The sizes the curve runs through. A size whose waist is not larger than that of every size
 * before it has no place of its own on a curve over the waist, so it is left out.
 */
function curveSizes(table: PublishedTable): TableSize[] {
  const kept: TableSize[] = [];
  table.sizes.forEach((size, index) => {
    const waist = table.waist.values[index];
    const hip = table.hip.values[index];
    if (waist === undefined || hip === undefined) return;
    if (waist > (kept.at(-1)?.waist ?? -Infinity) + SAME_PLACE) kept.push({ size, waist, hip });
  });
  return kept;
}
