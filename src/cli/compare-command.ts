/** `skirtgrade compare`: two versions of a style held against each other. */
import { join } from 'node:path';
import type { ComparedVersions, Version } from '../files/version-files';
import { READ_FILES, changeCounts, comparedVersions, versionFiles } from '../files/version-files';
import type { ExitCode, Io } from './io';
import type { Telling } from './json-document';
import { tell } from './json-document';
import { writtenFacts } from './json-facts';
import { wrappedParagraph } from './text-table';
import type { WrittenFiles } from './write-files';
import { namesReport } from './written-report';

/** The options of `compare` as commander reads them. */
export interface CompareCommandOptions extends Telling {
  readonly size?: string;
  readonly out?: string;
  readonly replace?: boolean;
}

/** Tells what changed, and writes it where a folder is asked for. Gives 0, changed or not. */
export async function compareCommand(
  before: string,
  now: string,
  options: CompareCommandOptions,
  io: Io,
): Promise<ExitCode> {
  const compared = comparedVersions(version(before, io), version(now, io));
  const files = versionFiles(compared, options.size);
  const written =
    options.out === undefined
      ? undefined
      : await io.write(options.out, files, { set: 'compare', replace: options.replace });
  return tell(io, 'compare', options, {
    exitCode: 0,
    words: () => report(compared, written),
    brief: () => (written === undefined ? changedLine(compared) : namesReport(written)),
    facts: () => ({
      before,
      now,
      changes: compared.rows,
      ...(written === undefined ? {} : writtenFacts(written)),
    }),
  });
}

function version(folder: string, io: Io): Version {
  // Reading what is not there is refused with the names that are near.
  if (!io.exists(folder)) io.readText(folder);
  const there = READ_FILES.filter((name) => io.exists(join(folder, name)));
  return {
    name: folder,
    texts: new Map(there.map((name) => [name, io.readText(join(folder, name))])),
  };
}

function changedLine({ before, after, rows }: ComparedVersions): string {
  const counts = changeCounts(rows);
  const told = counts === '' ? 'nothing changed.' : `changed: ${counts}.`;
  return wrappedParagraph(`${before.name} to ${after.name}: ${told}`);
}

function report(compared: ComparedVersions, written?: WrittenFiles): string {
  const { rows, changes } = compared;
  return [
    changedLine(compared),
    changeCounts(rows) === ''
      ? ''
      : changes.words.map((words) => wrappedParagraph(`- ${words}`, 2)).join(''),
    written === undefined
      ? wrappedParagraph('--out writes every number, a page to sign and a drawing.')
      : wrappedParagraph(`Written to ${written.folder}: ${written.names.join(', ')}`, 2),
  ]
    .filter((part) => part !== '')
    .join('\n');
}
