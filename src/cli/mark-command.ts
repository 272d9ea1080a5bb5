/** `skirtgrade mark`: a student's rule sheet, cell by cell. */
import { readStyle } from '../draft/style-file';
import { markSheet } from '../mark/mark-sheet';
import type { LengthUnit } from '../units';
import type { Io } from './io';
import type { ExitCode } from './main';
import { markReport } from './mark-report';
import { settingsOf } from './settings';

export interface MarkCommandOptions {
  readonly base: string;
  readonly style: string;
  readonly set: readonly string[];
  readonly tolerance?: string;
  readonly zero?: string;
  readonly pieces?: readonly string[];
  readonly unit?: LengthUnit;
  readonly fractions?: boolean;
}

export function markCommand(
  file: string,
  sheetFile: string,
  { style, set, unit, fractions, ...options }: MarkCommandOptions,
  io: Io,
): ExitCode {
  const marking = markSheet({
    ...options,
    chart: io.readText(file),
    file,
    sheet: io.readText(sheetFile),
    sheetFile,
    style: /\.csv$/i.test(style) ? readStyle(io.readText(style), style) : style,
    set: settingsOf(set),
  });
  const display = { unit: unit ?? marking.sheet.unit, fractions: fractions ?? false };
  io.out(markReport(marking, display));
  return marking.cells.every(({ verdict }) => verdict === 'right') ? 0 : 1;
}
