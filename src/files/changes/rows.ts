/** Rows of written tables, read again. */
import { parseLength } from '../../table/number-cell';
import { LENGTH_UNITS, toMillimeters } from '../../units';
import { NO_LIMIT } from '../tables';

/** Texts of written tables by the names of their files. */
export type NamedTexts = ReadonlyMap<string, string>;

/** The nest, whose outlines are compared and laid over each other. */
export const NEST = 'nest.svg';

/** A row of a written table: its cells by the names of their columns. */
export type Row = Readonly<Record<string, string>>;

/** Rows in groups of the same key, in the order in which the keys come. */
export function groups<Item>(
  items: readonly Item[],
  keyOf: (item: Item) => string,
): ReadonlyMap<string, readonly Item[]> {
  const found = new Map<string, Item[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = found.get(key);
    if (group === undefined) found.set(key, [item]);
    else group.push(item);
  }
  return found;
}

/** What a finding is of; not the name of the file it was found in, which a new version mostly has. */
export function subjectOf({ subject = '' }: Row): string {
  return /\.(?:csv|dxf|txt)$/iu.test(subject) ? '' : subject;
}

/** A length as a table has it, decimals or a fraction, in mm; NaN for what is none, infinite without a limit. */
export function millimeters(text: string | undefined, unit: string | undefined): number {
  const known = LENGTH_UNITS.find((name) => name === unit);
  if (text === NO_LIMIT) return Infinity;
  if (text === undefined || known === undefined) return NaN;
  const decimals = Number(text);
  return Number.isNaN(decimals)
    ? (parseLength(text, known) ?? NaN)
    : toMillimeters(decimals, known);
}
