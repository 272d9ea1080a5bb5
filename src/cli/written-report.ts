/** What was written, for the terminal. */
import type { PrintFile } from '../print/print-drawing';
import { wrappedParagraph } from './text-table';
import type { WrittenFiles } from './write-files';

/** Where the results are, how many sheets are to print, and what an earlier run left there. */
export function writtenReport(
  { folder, names, leftovers, dropped, outdated }: WrittenFiles,
  printed: readonly PrintFile[],
): string {
  const drawings = names.filter((name) => name.startsWith('size-')).length;
  const others = names.filter((name) => !name.startsWith('size-'));
  const list = `Written to ${folder}: ${others.join(', ')} and ${drawings} size-<label>.svg`;
  const stale =
    leftovers.length === 0
      ? ''
      : wrappedParagraph(
          `Left there by an earlier run, not part of this one: ${leftovers.join(', ')}`,
          2,
        );
  return (
    wrappedParagraph(list, 2) +
    droppedReport(dropped) +
    sheetsReport(printed) +
    stale +
    outdatedReport(outdated)
  );
}

/** The files of other commands that are not of the skirt that was written beside them. */
export function outdatedReport(outdated: readonly string[]): string {
  if (outdated.length === 0) return '';
  const sizes = outdated.filter((name) => name.startsWith('size-')).length;
  const drawings = outdated.filter((name) => DRAWN.test(name) && !name.startsWith('size-'));
  const names = [...drawings, ...(sizes === 0 ? [] : [`${sizes} size-<label>.svg`])];
  const told = names.length === 0 ? outdated : names;
  return wrappedParagraph(
    `Do not cut from ${told.join(', ')}: ${outdated.length === 1 ? 'it is' : 'they are'} of another run, with ` +
      `other settings or another chart. Make ${outdated.length === 1 ? 'it' : 'them'} again, or take ` +
      'another folder by --out.',
    2,
  );
}

/** What somebody cuts from; the tables beside it are of the same run. */
const DRAWN = /\.(?:svg|pdf|html|dxf)$/u;

/** Each file in a line of its own, with its folder. */
export function namesReport({ folder, names }: Pick<WrittenFiles, 'folder' | 'names'>): string {
  return names.map((name) => `${folder}/${name}\n`).join('');
}

/** The files of an earlier run that went with it. */
export function droppedReport(dropped: readonly string[]): string {
  if (dropped.length === 0) return '';
  return wrappedParagraph(`Gone with an earlier run, which wrote them: ${dropped.join(', ')}`, 2);
}

/** A line for each printed file: its sheets, beside those of a plain grid. */
export function sheetsReport(files: readonly PrintFile[]): string {
  return files.map(({ name, summary }) => wrappedParagraph(`  ${name}: ${summary}`, 4)).join('');
}
