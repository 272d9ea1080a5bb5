/** The linter as a process of its own, on files that are planted for it. */
import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';

/** What the linter says of a file. */
export interface Fault {
  readonly filename: string;
  readonly code: string;
  readonly message: string;
  readonly labels: readonly { readonly span: { readonly line: number } }[];
}

/** What the linter says of all that stands below a folder of that name, planted or not. */
export function faultsIn(cwd: string, folder: string): readonly Fault[] {
  const said = linter(cwd, '-f', 'json', folder);
  return (JSON.parse(said) as { readonly diagnostics: readonly Fault[] }).diagnostics;
}

/** What the linter says from its command line. */
export function linter(cwd: string, ...args: readonly string[]): string {
  const bin = resolve('node_modules/oxlint/bin/oxlint');
  try {
    return execFileSync(process.execPath, [bin, ...args], { cwd, encoding: 'utf8' });
  } catch (error) {
    // Exit code 1 where it found something.
    return (error as { readonly stdout: string }).stdout;
  }
}

/** Paths of all files of code below src, without `src/`: `grade/stack.ts`. */
export function sourceFiles(): readonly string[] {
  return readdirSync('src', { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/u.test(name))
    .map((name) => name.replaceAll('\\', '/'))
    .sort();
}

/** A place where files are planted, with what the linter needs. */
export function seedbed(): string {
  const place = mkdtempSync(join(tmpdir(), 'planted-'));
  for (const file of ['.oxlintrc.json', 'tsconfig.json', 'package.json'])
    cpSync(file, join(place, file));
  cpSync('test/lint', join(place, 'test/lint'), { recursive: true });
  symlinkSync(resolve('node_modules'), join(place, 'node_modules'), 'junction');
  return place;
}

/** Writes a file and the folders that it stands in. */
export function plant(path: string, text: string): void {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
}
