/** Streams of a PDF file, packed by the machine's own zlib: far quicker than in JavaScript. */
import { deflateSync } from 'node:zlib';
import type { PDFContext, PDFRef } from '@cantoo/pdf-lib';

/** What a stream says of itself besides its length and how it is packed. */
type Entries = Exclude<Parameters<PDFContext['stream']>[1], undefined>;

/** Adds a stream of bytes, or of a text in ASCII, to the file. */
export function packedStream(
  context: PDFContext,
  content: Uint8Array | string,
  entries: Entries = {},
): PDFRef {
  return context.register(
    context.stream(deflateSync(content), { ...entries, Filter: 'FlateDecode' }),
  );
}
