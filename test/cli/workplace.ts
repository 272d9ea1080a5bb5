/** The command line run in this process, on files in a folder of its own. */
import { mkdtempSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import type { Run } from './run-in';
import { runIn } from './run-in';

export type { Run } from './run-in';
export { runIn } from './run-in';

export interface Workplace {
  readonly path: string;
  /** A call without color, as of a pipe. What is no refusal is thrown. */
  readonly run: (...args: readonly string[]) => Promise<Run>;
  readonly write: (name: string, text: string) => void;
  readonly read: (name: string) => string;
}

/** An empty folder for the tests of one file; it is removed after them. */
export function workplace(): Workplace {
  const path = mkdtempSync(join(tmpdir(), 'skirtgrade-'));
  afterAll(() => {
    rmSync(path, { recursive: true });
  });
  return {
    path,
    run: (...args) => runIn(path, args),
    write: (name, text) => {
      writeFileSync(join(path, name), text);
    },
    read: (name) => readFileSync(join(path, name), 'utf8'),
  };
}

/** The words of a call as it is typed, none of which has a blank in it. */
export function typed(call: string): readonly string[] {
  return call.split(' ');
}

/** Every file below a folder with its bytes. */
export function contents(folder: string): ReadonlyMap<string, string> {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => join(folder, name))
    .filter((path) => statSync(path).isFile())
    .sort();
  return new Map(files.map((file) => [file, readFileSync(file, 'latin1')]));
}

/** The text of a result without what it tells of the last run into its folder: no two runs share that. */
export function asFirstRun(path: string, text: string): string {
  return path.endsWith('written')
    ? text.replace(/^\w{64} {2}report\.md\n/mu, '')
    : text.replace(/## What changed since the last run\n\n.*?\n\n(?=## |Sew )/su, '');
}
