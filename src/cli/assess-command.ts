/** `skirtgrade assess`: a student's rule sheet, cell by cell. */
import { markSheet } from '../study/mark/mark-sheet';
import type { LengthUnit } from '../units';
import type { ExitCode, Io } from './io';
import { assessReport } from './assess-report';
import type { StyleOptions } from './style-request';
import { styleRequest } from './style-request';

/** The options of `assess` as commander reads them. */
export interface AssessCommandOptions extends StyleOptions {
  readonly base: string;
  readonly tolerance?: string;
  readonly zero?: string;
  readonly pieces?: readonly string[];
  /** Of the report; the sheet's if absent. */
  readonly unit?: LengthUnit;
  readonly fractions?: boolean;
}

/**
 * Prints the assessment. Gives 0 if every cell is right, otherwise 1; throws InputError for a chart or a
 * sheet that cannot be used.
 */
export function assessCommand(
  file: string,
  sheetFile: string,
  { style, set, unit, fractions, ...options }: AssessCommandOptions,
  io: Io,
): ExitCode {
  const marking = markSheet({
    ...options,
    chart: io.readText(file),
    file,
    sheet: io.readText(sheetFile),
    sheetFile,
    ...styleRequest({ style, set }, io),
  });
  const display = { unit: unit ?? marking.sheet.unit, fractions: fractions ?? false };
  io.out(assessReport(marking, display));
  return marking.cells.every(({ verdict }) => verdict === 'right') ? 0 : 1;
}
