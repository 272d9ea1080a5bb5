/** `skirtgrade chart`: a chart read in whatever layout it has, printed in canonical form. */
import { readChart } from '../chart/read-chart';
import { writeChart } from '../chart/write-chart';
import type { LengthUnit } from '../units';
import type { ExitCode, Io } from './io';
import type { Telling } from './json-document';
import { tell } from './json-document';
import { readNamed } from './read-named';

/**
 * Prints the chart in the unit asked for, or its own. Throws InputError for a chart that cannot be
 * read.
 */
export function chartCommand(
  path: string,
  { unit, json }: { readonly unit?: LengthUnit } & Telling,
  io: Io,
): ExitCode {
  const { text, file } = readNamed(io, path);
  const chart = readChart(text, file);
  return tell(
    io,
    'chart',
    { json },
    {
      exitCode: 0,
      words: () => writeChart(chart, unit),
      facts: () => ({
        chart: file,
        comments: chart.comments.map((line) => line.text),
        unit: unit ?? chart.unit,
        sizes: chart.sizes,
        measurements: chart.rows.map(({ name, label, known, values }) => ({
          name,
          label,
          known,
          values,
        })),
      }),
    },
  );
}
