/** `skirtgrade print`: the pattern of a chart as PDF files to print and sew from. */
import { gradeChart } from '../jobs/grade-chart';
import { printFiles } from '../files/print-files';
import type { PrintRequest } from '../print/print-options';
import { cautions } from '../print/instructions';
import { readPrintOptions } from '../print/print-options';
import { printTables } from '../files/print-tables';
import { findingsReport } from './findings-report';
import type { GradeRequestOptions } from './grade-request';
import { gradeRequest, outFolder } from './grade-request';
import type { ExitCode, Io } from './io';
import { wrappedParagraph } from './text-table';
import { droppedReport, sheetsReport } from './written-report';

/** The options of `print` as commander reads them. */
export type PrintCommandOptions = GradeRequestOptions & PrintRequest;

/**
 * Grades, writes the sheets and tells how many there are. Gives 0, or 1 where a check failed;
 * throws InputError, and then nothing is written.
 */
export async function printCommand(
  file: string,
  options: PrintCommandOptions,
  io: Io,
): Promise<ExitCode> {
  const result = gradeChart(gradeRequest(file, options, io));
  const files = await printFiles(result, options);
  const order = { set: 'print', replace: options.replace };
  const { folder, dropped } = await io.write(outFolder(file, options), files, order);
  const { chart, style, range, shown, findings } = result;
  const media = (['paper', 'projector'] as const).filter((medium) =>
    readPrintOptions(options).papers.some(
      ({ kind }) => (kind === 'projector') === (medium === 'projector'),
    ),
  );
  // What is worth a note was told when the chart was graded; here only what may spoil the skirt.
  const grave = findings.filter(({ severity }) => severity === 'fail' || severity === 'warning');
  io.out(
    [
      wrappedParagraph(
        `${chart.file}: ${range.blend ?? (shown.length === 1 ? '1 size' : `${shown.length} sizes`)}, ` +
          `style ${style.name}, base ${range.base}`,
      ),
      ...(grave.length === 0 ? [] : [findingsReport(grave, io.color, 'in findings.csv of grade')]),
      `Written to ${folder}:\n${sheetsReport(files)}${droppedReport(dropped)}`,
      wrappedParagraph(cautions(printTables(result), media).join(' ')),
    ].join('\n'),
  );
  return findings.some(({ severity }) => severity === 'fail') ? 1 : 0;
}
