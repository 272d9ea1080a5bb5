/**
 * Programs from outside that read what the engine writes: Poppler, qpdf, librsvg. They are no part
 * of the project, so what needs them is skipped, and said to be, where they are missing.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterAll, describe } from 'vitest';
import type { Raster } from './raster';
import { readPgm, readPng, readPpm } from './raster';

/** Each program with the package that has it. */
const PACKAGES = {
  pdffonts: 'poppler-utils',
  pdfinfo: 'poppler-utils',
  pdftocairo: 'poppler-utils',
  pdftoppm: 'poppler-utils',
  pdftotext: 'poppler-utils',
  qpdf: 'qpdf',
  'rsvg-convert': 'librsvg2-bin',
} as const;
type Tool = keyof typeof PACKAGES;

const isMissing = (tool: string): boolean => spawnSync(tool, ['--version']).error !== undefined;
const missing = (Object.keys(PACKAGES) as Tool[]).filter(isMissing);

/** A group of tests that need all the programs. */
export function describeOutside(name: string, tests: () => void | Promise<void>): void {
  if (missing.length > 0) {
    const packages = [...new Set(missing.map((tool) => PACKAGES[tool]))].join(' ');
    console.log(`skipped: ${name}, for want of ${missing.join(', ')} (packages ${packages})`);
  }
  describe.skipIf(missing.length > 0)(name, tests);
}

/** A folder that is removed after the tests of one file. */
export function folder(): string {
  const path = mkdtempSync(join(tmpdir(), 'skirtgrade-outside-'));
  afterAll(() => {
    rmSync(path, { recursive: true });
  });
  return path;
}

/** What a program prints. Throws an Error with its complaint if it fails. */
export function run(tool: Tool, ...args: readonly string[]): string {
  const { status, stdout, stderr } = spawnSync(tool, args, {
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  if (status !== 0) throw new Error(`${tool} ${args.join(' ')}: ${stderr || stdout}`);
  return stdout;
}

/**
 * Pages of a PDF file in shades of gray, by one call: those from `first`, counted from 1, to `last`,
 * or to the end; of each all dots, or `rows` of them from `top` on.
 */
export function grayPages(
  path: string,
  dpi: number,
  { first = 1, last = NaN, top = 0, rows = 0 } = {},
): readonly Raster[] {
  const name = basename(path);
  const to = mkdtempSync(`${path}-`);
  const end = Number.isNaN(last) ? [] : ['-l', `${last}`];
  const crop = rows === 0 ? [] : ['-y', `${top}`, '-H', `${rows}`];
  run('pdftoppm', '-gray', '-r', `${dpi}`, '-f', `${first}`, ...end, ...crop, path, join(to, name));
  const pages = readdirSync(to).sort();
  return pages.map((page) => readPgm(readFileSync(join(to, page))));
}

/** The first page in color. */
export function colorPage(path: string, dpi: number): Raster {
  run('pdftoppm', '-f', '1', '-l', '1', '-r', `${dpi}`, '-singlefile', path, path);
  return readPpm(readFileSync(`${path}.ppm`));
}

/** An SVG drawing by another rasterizer. */
export function svgRaster(path: string, text: string, dpi: number): Raster {
  writeFileSync(path, text);
  // The last dots of a picture are partly beyond the sheet, so paper lies below it.
  run('rsvg-convert', '-d', `${dpi}`, '-p', `${dpi}`, '-b', 'white', '-o', `${path}.png`, path);
  return readPng(readFileSync(`${path}.png`));
}
