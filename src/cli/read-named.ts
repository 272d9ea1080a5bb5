/** A file that a call names, with the name that messages have for it. */
import type { NamedText } from '../jobs/requests';
import type { Io } from './io';

/** Stands for the standard input wherever a file is read. */
export const STDIN = '-';

/** What messages and the folder of results call a file. */
export function nameOf(path: string): string {
  return path === STDIN ? 'stdin' : path;
}

/** Throws InputError where the file cannot be read. */
export function readNamed(io: Pick<Io, 'readText'>, path: string): NamedText {
  return { text: io.readText(path), file: nameOf(path) };
}
