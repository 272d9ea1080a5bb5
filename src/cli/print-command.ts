/** `skirtgrade print`: the pattern of a chart as PDF files to print and sew from. */
import { counted } from '../table/counted';
import { gradeChart } from '../jobs/grade-chart';
import type { Drafted, GradeResult } from '../jobs/grade-result';
import { cutShapes } from '../files/cut-shapes';
import { printFiles } from '../files/print-files';
import type { PrintFile } from '../print/print-drawing';
import { fileWithTables } from '../print/print-drawing';
import type { PrintRequest } from '../print/print-options';
import { cautions } from '../print/instructions';
import { readPrintOptions } from '../print/print-options';
import { printTables } from '../files/print-tables';
import { verdictOf } from '../verdict/verdict';
import type { GradeRequestOptions } from './grade-request';
import { gradeRequest, outFolder } from './grade-request';
import type { ExitCode, Io } from './io';
import type { Telling } from './json-document';
import { tell } from './json-document';
import { gradedFacts, writtenFacts } from './json-facts';
import { notReadLine } from './not-read-line';
import { wrappedParagraph } from './text-table';
import { findingsInWords, verdictReport } from './verdict-report';
import type { WrittenFiles } from './write-files';
import { droppedReport, namesReport, outdatedReport, sheetsReport } from './written-report';

/** The options of `print` as commander reads them. */
export type PrintCommandOptions = GradeRequestOptions & PrintRequest & Telling;

/**
 * Grades, writes the sheets and tells how many there are. Gives 0, or 1 where a check failed;
 * throws InputError, and then nothing is written.
 */
export async function printCommand(
  file: string,
  options: PrintCommandOptions,
  io: Io,
): Promise<ExitCode> {
  const request = gradeRequest(file, options, io);
  io.progress('drafting and grading');
  const result = gradeChart(request);
  io.progress('laying out the sheets');
  const files = await printFiles(result, options);
  const order = { set: 'print', shows: cutShapes(result), replace: options.replace };
  const written = await io.write(outFolder(file, options), files, order);
  if (options.quiet === true) io.error(outdatedReport(written.outdated));
  return tell(io, 'print', options, {
    exitCode: result.findings.some(({ severity }) => severity === 'fail') ? 1 : 0,
    words: () => printReport(result, written, files, options, io),
    brief: () => namesReport(written),
    facts: () => ({ ...gradedFacts(result), ...writtenFacts(written, files) }),
  });
}

/** In lines of at most 80 columns; the verdict is that of `grade`. */
function printReport(
  result: GradeResult & Drafted,
  { folder, dropped, outdated }: WrittenFiles,
  files: readonly PrintFile[],
  options: PrintCommandOptions,
  { color }: Io,
): string {
  const { chart, range, shown, findings, display } = result;
  const media = (['paper', 'projector'] as const).filter((medium) =>
    readPrintOptions(options).papers.some(
      ({ kind }) => (kind === 'projector') === (medium === 'projector'),
    ),
  );
  const labels = range.sizes.map(({ label }) => label);
  const tablesIn = fileWithTables(files);
  return [
    wrappedParagraph(
      `${chart.file}: ${range.blend ?? counted(shown.length, 'size')}, ` +
        `style ${range.draft.style.name}, base ${range.base}`,
    ),
    verdictReport(
      verdictOf(findings, labels, display),
      color,
      'which --verbose tells, and grade writes',
    ),
    ...notReadLine(findings, 'which --verbose tells'),
    ...findingsInWords(findings, options, color),
    `Written to ${folder}:\n${sheetsReport(files)}${droppedReport(dropped)}${outdatedReport(outdated)}`,
    wrappedParagraph(
      cautions(printTables(result), media, `in ${tablesIn?.name ?? 'the booklet'}`).join(' '),
    ),
  ].join('\n');
}
