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
