/** Skirts to print, and a reader for what was printed. */
import { readFileSync } from 'node:fs';
import { PDFArray, PDFDict, PDFDocument, PDFHexString, PDFName } from '@cantoo/pdf-lib';
import type { PDFRef } from '@cantoo/pdf-lib';
import type { GradeRequest } from '../../src/index';
import type { DraftedResult } from '../graded';
import { gradedOnce } from '../graded';
import { someSizes } from '../samples';

const DEMO = readFileSync('size-charts/demo.csv', 'utf8');

/** The demo skirt with trued seams in three sizes of a step, which are soon laid; the long run takes all. */
export function demo(request: Partial<GradeRequest> = {}): DraftedResult {
  return wholeDemo({ chart: someSizes(DEMO, ['8', '12', '16']), ...request });
}

/** The same in each of its twelve sizes. */
export function wholeDemo(request: Partial<GradeRequest> = {}): DraftedResult {
  return gradedOnce({ chart: DEMO, base: '12', style: 'shared-pencil', ...request });
}

export interface LayersRead {
  readonly names: readonly string[];
  readonly locked: readonly string[];
  readonly off: readonly string[];
}

export function layersRead(document: PDFDocument): LayersRead {
  const properties = document.catalog.lookup(PDFName.of('OCProperties'), PDFDict);
  const configuration = properties.lookup(PDFName.of('D'), PDFDict);
  const named = (dictionary: PDFDict, key: string): readonly string[] =>
    dictionary
      .lookup(PDFName.of(key), PDFArray)
      .asArray()
      .map((ref) => nameOf(document, ref as PDFRef));
  return {
    names: named(properties, 'OCGs'),
    locked: named(configuration, 'Locked'),
    off: named(configuration, 'OFF'),
  };
}

function nameOf({ context }: PDFDocument, group: PDFRef): string {
  return context.lookup(group, PDFDict).lookup(PDFName.of('Name'), PDFHexString).decodeText();
}

/** The same file as it is shown once the reader has switched all layers off but these. */
export async function showing(bytes: Uint8Array, layers: readonly string[]): Promise<Uint8Array> {
  const document = await PDFDocument.load(bytes, { updateMetadata: false });
  const properties = document.catalog.lookup(PDFName.of('OCProperties'), PDFDict);
  const configuration = properties.lookup(PDFName.of('D'), PDFDict);
  const groups = properties.lookup(PDFName.of('OCGs'), PDFArray).asArray() as PDFRef[];
  const isShown = (group: PDFRef): boolean => layers.includes(nameOf(document, group));
  configuration.set(PDFName.of('ON'), document.context.obj(groups.filter(isShown)));
  configuration.set(
    PDFName.of('OFF'),
    document.context.obj(groups.filter((group) => !isShown(group))),
  );
  return document.save();
}
