/** What was written, for the terminal. */
import type { PrintFile } from '../print/print-drawing';
import { paragraph } from './text-table';
import type { WrittenFiles } from './write-files';

/** Where the results are, how many sheets are to print, and what an earlier run left there. */
export function writtenReport(
  { folder, names, leftovers }: WrittenFiles,
  printed: readonly PrintFile[],
): string {
  const drawings = names.filter((name) => name.startsWith('size-')).length;
  const others = names.filter((name) => !name.startsWith('size-'));
  const list = `Written to ${folder}: ${others.join(', ')} and ${drawings} size-<label>.svg`;
  const stale =
    leftovers.length === 0
      ? ''
      : paragraph(`Left there by an earlier run, not part of this one: ${leftovers.join(', ')}`, 2);
  return paragraph(list, 2) + sheetsReport(printed) + stale;
}

/** A line for each printed file: its sheets, beside those of a plain grid. */
export function sheetsReport(files: readonly PrintFile[]): string {
  return files.map(({ name, summary }) => paragraph(`  ${name}: ${summary}`, 4)).join('');
}
