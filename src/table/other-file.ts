/** Files that somebody takes for a table since a spreadsheet program opens or makes them. */
import { InputError } from '../errors';

/** How they begin, in whatever encoding their bytes were taken for text. */
const BEGINNINGS: readonly (readonly [begins: RegExp, what: string])[] = [
  // A ZIP archive (APPNOTE 4.3.7), which workbooks of ISO/IEC 29500 and 26300 are, and a compound file of earlier ones.
  [/^(?:PK\u0003\u0004|\u00D0\u00CF\u0011\u00E0)/u, 'a workbook of a spreadsheet program'],
  // ISO 32000-1, 7.5.2.
  [/^%PDF-/u, 'a PDF'],
  [/^\s*(?:<!DOCTYPE html|<html|<\?xml|<svg)/iu, 'a page or a drawing'],
];

/** Throws InputError `csv-malformed` for a file that is no text of cells. */
export function refuseOtherFile(text: string, file: string): void {
  const found = BEGINNINGS.find(([begins]) => begins.test(text));
  if (found === undefined) return;
  throw new InputError('csv-malformed', {
    what: `the file is ${found[1]}, and no table as text`,
    allowed: 'CSV, in which spreadsheet programs save a sheet',
    place: { file },
  });
}
