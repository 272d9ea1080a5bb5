/** Tables that come with the program, as lists of what it knows. */
import { parse } from 'csv-parse/sync';

/** Rows by the names of their columns, as the caller says that they are; lines that begin with `#` are comments. */
export function bundledTable<Row>(csv: string): readonly Row[] {
  return parse<Row>(csv, { columns: true, comment: '#', comment_no_infix: true });
}
