/** How each line of a block is made, in words by which a hand can make it again. */
import { bundledTable } from '../table/bundled-table';
import type { Making } from './block';
import makingCsv from './making.csv';

const ROWS = bundledTable<Making & { readonly block: string }>(makingCsv);

/** The lines of the block of that name, from the waist to the hem, as a hand draws them. */
export function makingOf(name: string): readonly Making[] {
  return ROWS.filter(({ block }) => block === name);
}
