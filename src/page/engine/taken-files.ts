/** The files of a graded skirt, the same as the command line writes them. */
import { bySeverity } from '../../check/finding';
import { exportFiles } from '../../files/exports';
import { reportFile } from '../../files/report-file';
import type { BinaryFile, ResultFile } from '../../files/result-file';
import { resultFiles } from '../../files/result-files';
import type { GradeResult } from '../../jobs/grade-result';
import type { BookletChoice } from '../../print/booklet/booklet';
import type { TakenFile, Wanted } from '../wish';

/** Drawings, tables and report, and what else is wanted. Throws InputError for what cannot be printed. */
export async function takenFiles(
  graded: GradeResult,
  wanted: Wanted,
): Promise<readonly TakenFile[]> {
  const { files: exported, printed, findings, tables } = await exportFiles(graded, wanted.exports);
  const result = { ...graded, findings: bySeverity([...graded.findings, ...findings]) };
  const files: (ResultFile | BinaryFile)[] = [
    ...resultFiles(result),
    reportFile(result, tables),
    ...exported,
    ...printed,
  ];
  if (wanted.papers.length > 0) {
    const { printFiles } = await import('../../files/print-files');
    const { papers: paper, booklet } = wanted;
    files.push(...(await printFiles(result, { paper, booklet: booklet as BookletChoice })));
  }
  return files.map(bytesOf);
}

function bytesOf(file: ResultFile | BinaryFile): TakenFile {
  const { name } = file;
  if ('bytes' in file) return { name, bytes: Uint8Array.from(file.bytes) };
  return { name, bytes: new TextEncoder().encode(file.text) };
}
