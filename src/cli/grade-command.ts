/** `skirtgrade grade`: the main job, from a chart or a given pattern to a folder of results. */
import { bySeverity } from '../check/finding';
import { cutShapes } from '../files/cut-shapes';
import { EXPORTS, exportFiles } from '../files/exports';
import { reportFile } from '../files/report-file';
import type { ResultFile } from '../files/result-file';
import { resultFiles } from '../files/result-files';
import { COMPARED_FILES, changesSince } from '../files/since-last-run';
import { gradeChart } from '../jobs/grade-chart';
import { gradePattern } from '../jobs/grade-pattern';
import type { GradeResult } from '../jobs/grade-result';
import type { PrintFile } from '../print/print-drawing';
import type { PrintRequest } from '../print/print-options';
import type { GradeRequestOptions, PatternRequestOptions, ExportOptions } from './grade-request';
import { gradeReport } from './grade-report';
import type { Telling } from './json-document';
import { tell } from './json-document';
import { gradedFacts, writtenFacts } from './json-facts';
import { gradeRequest, outFolder, patternRequest, exportRequest } from './grade-request';
import type { ExitCode, Io } from './io';
import { namesReport, outdatedReport } from './written-report';

/** What may be written besides the files that every result has: an option for each export. */
export type OutputOptions = Partial<PrintRequest> &
  ExportOptions &
  Telling &
  Readonly<Partial<Record<string, unknown>>>;

/** Drafts the sizes of a chart and writes the results. */
export async function gradeCommand(
  file: string,
  options: GradeRequestOptions & OutputOptions,
  io: Io,
): Promise<ExitCode> {
  const request = gradeRequest(file, options, io);
  io.progress('drafting and grading');
  const result = gradeChart(request);
  const page = options.page === true ? [await pageOf(file, options, io)] : [];
  return write(result, outFolder(file, options), options, io, page);
}

/** Grades a pattern that is given and writes the results. */
export function patternCommand(
  options: PatternRequestOptions & OutputOptions,
  io: Io,
): Promise<ExitCode> {
  const request = patternRequest(options, io);
  io.progress('grading');
  return write(gradePattern(request), outFolder(options.pattern, options), options, io);
}

/** The page of a chart, as `page` writes it. */
async function pageOf(file: string, options: GradeRequestOptions, io: Io): Promise<ResultFile> {
  const { pageFile } = await import('../page/page-file');
  const { pageParts } = await import('./page-parts');
  const { pageState } = await import('./page-state');
  return { name: 'page.html', text: pageFile(pageParts(), pageState(file, options, io)) };
}

async function write(
  graded: GradeResult,
  folder: string,
  options: OutputOptions,
  io: Io,
  page: readonly ResultFile[] = [],
): Promise<ExitCode> {
  const names = EXPORTS.map(({ name }) => name).filter((name) => isAsked(name, options));
  if (names.length > 0) io.progress(`making ${names.join(', ')}`);
  const {
    files: exported,
    printed: cards,
    findings,
    tables,
  } = await exportFiles(graded, names, exportRequest(options, io));
  const result = { ...graded, findings: bySeverity([...graded.findings, ...findings]) };
  const { paper } = options;
  let printed: readonly PrintFile[] = [];
  if (paper !== undefined) {
    io.progress('laying out the sheets');
    const { printFiles } = await import('../files/print-files');
    printed = await printFiles(result, { ...options, paper });
  }
  io.progress('writing the files');
  const results = resultFiles(result);
  const earlier = io.earlier(folder, 'grade', COMPARED_FILES);
  const changed =
    earlier.size === 0 ? undefined : changesSince(earlier, textsOf([...results, ...exported]));
  const report = reportFile(result, tables, changed);
  const files = [...results, report, ...exported, ...cards, ...printed, ...page];
  const written = await io.write(folder, files, {
    set: 'grade',
    shows: cutShapes(result),
    replace: options.replace === true,
  });
  if (options.quiet === true) io.error(outdatedReport(written.outdated));
  return tell(io, 'grade', options, {
    exitCode: result.findings.some(({ severity }) => severity === 'fail') ? 1 : 0,
    words: () => gradeReport(result, written, printed, { ...options, color: io.color }),
    brief: () => namesReport(written),
    facts: () => ({ ...gradedFacts(result), ...writtenFacts(written, printed) }),
  });
}

function textsOf(files: readonly ResultFile[]): ReadonlyMap<string, string> {
  const isCompared = ({ name }: ResultFile): boolean => COMPARED_FILES.some((one) => one === name);
  return new Map(files.filter(isCompared).map(({ name, text }) => [name, text]));
}

/** An export is asked for by an option of its name, or by one that says how it is made. */
function isAsked(name: string, options: OutputOptions): boolean {
  const hasLists = options.measures !== undefined || options.measured !== undefined;
  return (
    options[name] === true ||
    (name === 'spec' && hasLists) ||
    (name === 'dxf' && options.unfold === true) ||
    (name === 'moves' && options.enlarge !== undefined)
  );
}
