/** Streams of a PDF file, packed by a library of its own, so that every machine writes the same bytes. */
import type { PDFContext, PDFRef } from '@cantoo/pdf-lib';
import { strToU8, zlibSync } from 'fflate';

/** What a stream says of itself besides its length and how it is packed. */
type Entries = Exclude<Parameters<PDFContext['stream']>[1], undefined>;

/** Adds a stream of bytes, or of a text in ASCII, to the file. */
export function packedStream(
  context: PDFContext,
  content: Uint8Array | string,
  entries: Entries = {},
): PDFRef {
  const bytes = typeof content === 'string' ? strToU8(content) : content;
  return context.register(context.stream(zlibSync(bytes), { ...entries, Filter: 'FlateDecode' }));
}
