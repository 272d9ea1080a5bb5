/** `skirtgrade chart`: a chart read in whatever layout it has, printed in canonical form. */
import { readChart } from '../chart/read-chart';
import { writeChart } from '../chart/write-chart';
import type { LengthUnit } from '../units';
import type { ExitCode, Io } from './io';

/**
 * Prints the chart in the unit asked for, or its own. Throws InputError for a chart that cannot be
 * read.
 */
export function chartCommand(file: string, { unit }: { unit?: LengthUnit }, io: Io): ExitCode {
  io.out(writeChart(readChart(io.readText(file), file), unit));
  return 0;
}
