/** `skirtgrade compare`: two versions of a style held against each other. */
import { join } from 'node:path';
import { InputError } from '../errors';
import type { Source } from '../files/source-version';
import type { ComparedVersions, Version } from '../files/version-files';
import {
  READ_FILES,
  changeCounts,
  comparedSources,
  comparedVersions,
  versionFiles,
} from '../files/version-files';
import type { ExitCode, Io } from './io';
import type { Telling } from './json-document';
import { tell } from './json-document';
import { writtenFacts } from './json-facts';
import { readNamed } from './read-named';
import { wrappedParagraph } from './text-table';
import type { WrittenFiles } from './write-files';
import { namesReport } from './written-report';

/** The options of `compare` as commander reads them. */
export interface CompareCommandOptions extends Telling {
  readonly size?: string;
  /** What two rule sheets are for. */
  readonly pattern?: string;
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
  const compared = comparedPaths([before, now], options, io);
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

/** Two folders of results, or two files that styles are made from. */
function comparedPaths(
  [before, now]: readonly [string, string],
  { pattern }: CompareCommandOptions,
  io: Io,
): ComparedVersions {
  const [isFolder, isOther] = [io.isFolder(before), io.isFolder(now)];
  if (isFolder !== isOther)
    throw new InputError('bad-option', {
      what: 'one is a folder of results, the other a file',
      allowed: 'two folders that grade wrote, or two files of one kind',
      got: now,
      place: { file: before },
    });
  const given = pattern === undefined ? undefined : readNamed(io, pattern);
  if (!isFolder) return comparedSources(source(before, io), source(now, io), given);
  if (given !== undefined)
    throw new InputError('bad-option', {
      what: 'the option is for two rule sheets',
      allowed: 'a call without it',
      got: given.file,
      place: { field: 'pattern' },
    });
  return comparedVersions(version(before, io), version(now, io));
}

function version(folder: string, io: Io): Version {
  const there = READ_FILES.filter((name) => io.exists(join(folder, name)));
  return {
    name: folder,
    texts: new Map(there.map((name) => [name, io.readText(join(folder, name))])),
  };
}

/** A file; of a drawing, with the rule table that stands beside it under its name. */
function source(path: string, io: Io): Source {
  if (!/\.dxf$/iu.test(path)) return readNamed(io, path);
  const tables = ['.rul', '.RUL'].map((end) => path.replace(/\.dxf$/iu, end));
  const table = tables.find((name) => io.exists(name)) ?? tables[0] ?? path;
  return { ...readNamed(io, path), table: readNamed(io, table) };
}

function changedLine({ before, after, rows }: ComparedVersions): string {
  const counts = changeCounts(rows);
  const told = counts === '' ? 'nothing changed.' : `changed: ${counts}.`;
  return wrappedParagraph(`${before} to ${after}: ${told}`);
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
