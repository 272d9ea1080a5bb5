/** Layers of a PDF file: optional content groups, ISO 32000-1 clause 8.11. */
import type { PDFDocument, PDFRef } from '@cantoo/pdf-lib';
import { PDFHexString } from '@cantoo/pdf-lib';

/** A layer by the name that readers list. A locked one is always shown. */
export interface PdfLayer {
  readonly name: string;
  readonly locked: boolean;
}

/**
 * Adds the groups to the catalog, all of them on, in the order given, and returns a reference for
 * each. The default configuration locks those that must not be switched (table 101).
 */
export function addLayers(document: PDFDocument, layers: readonly PdfLayer[]): readonly PDFRef[] {
  const { context, catalog } = document;
  const groups = layers.map(({ name }) =>
    context.register(context.obj({ Type: 'OCG', Name: PDFHexString.fromText(name) })),
  );
  const configuration = {
    Name: PDFHexString.fromText('All layers'),
    BaseState: 'ON',
    ON: groups,
    OFF: [],
    Order: groups,
    ListMode: 'AllPages',
    Locked: groups.filter((_, i) => layers[i]?.locked),
  };
  catalog.set(context.obj('OCProperties'), context.obj({ OCGs: groups, D: configuration }));
  // A reader opens with its list of layers in sight.
  catalog.set(context.obj('PageMode'), context.obj('UseOC'));
  return groups;
}
