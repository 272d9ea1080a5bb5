/**
 * Programs from outside that read what the engine writes: Poppler, qpdf, librsvg. They are no part
 * of the project, so what needs them is skipped, and said to be, where they are missing.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe } from 'vitest';
import type { Raster } from './raster';
import { readPgm, readPng, readPpm } from './raster';

/** Each program with the package that has it. */
const PACKAGES = {
  pdfinfo: 'poppler-utils',
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

/** Page `page`, from 1, of a PDF file in shades of gray; or `rows` of its dots from `top` on. */
export function grayPage(
  path: string,
  page: number,
  dpi: number,
  { top, rows } = { top: 0, rows: 0 },
): Raster {
  const crop = rows === 0 ? [] : ['-y', `${top}`, '-H', `${rows}`];
  const name = pageFile(path, page, dpi, '-gray', ...crop);
  return readPgm(readFileSync(`${name}.pgm`));
}

/** The same in color. */
export function colorPage(path: string, page: number, dpi: number): Raster {
  const name = pageFile(path, page, dpi);
  return readPpm(readFileSync(`${name}.ppm`));
}

function pageFile(path: string, page: number, dpi: number, ...options: readonly string[]): string {
  const name = `${path}-${page}`;
  const pages = ['-f', `${page}`, '-l', `${page}`, '-r', `${dpi}`, '-singlefile'];
  run('pdftoppm', ...options, ...pages, path, name);
  return name;
}

/** An SVG drawing by another rasterizer. */
export function svgRaster(path: string, text: string, dpi: number): Raster {
  writeFileSync(path, text);
  // The last dots of a picture are partly beyond the sheet, so paper lies below it.
  run('rsvg-convert', '-d', `${dpi}`, '-p', `${dpi}`, '-b', 'white', '-o', `${path}.png`, path);
  return readPng(readFileSync(`${path}.png`));
}
