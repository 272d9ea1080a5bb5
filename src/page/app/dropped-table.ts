/** A table that somebody chose or dropped, as text with its name. */
import type { NamedText } from '../../jobs/requests';
import { decodedTable } from '../../table/table-text';

/** Reads a file in whatever encoding a spreadsheet saved it. */
export async function takenTable(file: File): Promise<NamedText> {
  return { text: decodedTable(new Uint8Array(await file.arrayBuffer())), file: file.name };
}
