/** The built command line run as a process of its own, in a folder of its own. */
import { spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, expect } from 'vitest';

export const CLI = resolve('dist/cli.js');

export interface Run {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

export interface Workplace {
  readonly path: string;
  readonly run: (...args: readonly string[]) => Run;
  readonly write: (name: string, text: string) => void;
  readonly read: (name: string) => string;
}

/** An empty folder for the tests of one file; it is removed after them. */
export function workplace(): Workplace {
  expect(existsSync(CLI), 'dist/cli.js is there: npm run build:code').toBe(true);
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

export function runIn(
  cwd: string,
  args: readonly string[],
  env: Readonly<Record<string, string>> = {},
): Run {
  const { status, stdout, stderr } = spawnSync(process.execPath, [CLI, ...args], {
    cwd,
    encoding: 'utf8',
    env: { ...process.env, ...env },
  });
  return { status, stdout, stderr };
}

/** Every file below a folder with its bytes. */
export function contents(folder: string): ReadonlyMap<string, string> {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => join(folder, name))
    .filter((path) => statSync(path).isFile())
    .sort();
  return new Map(files.map((file) => [file, readFileSync(file, 'latin1')]));
}
