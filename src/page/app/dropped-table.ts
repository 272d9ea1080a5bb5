/** A table or a drawing that somebody chose or dropped, as text with its name. */
import type { NamedText } from '../../jobs/requests';
import { decodedDrawing } from '../../dxf/drawing-text';
import { decodedTable } from '../../table/table-text';

/** Reads a file in whatever encoding a spreadsheet or a drawing program saved it. */
export async function takenTable(file: File): Promise<NamedText> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const isDrawing = /\.(?:dxf|rul)$/iu.test(file.name);
  const text = isDrawing ? decodedDrawing(bytes, file.name) : decodedTable(bytes);
  return { text, file: file.name };
}
