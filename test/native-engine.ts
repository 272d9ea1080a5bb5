/**
 * Src as the tests load it: each of its files written once by esbuild as a module of its own, which
 * Node runs as it stands. Vite would turn every file for each worker, and look up every import of it
 * at each use, which takes a fifth more processor time.
 */
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { build } from 'esbuild';
import type { Plugin as Planter } from 'esbuild';
import type { Plugin } from 'vitest/config';

const SRC = resolve('src');
const CACHE = resolve('node_modules/.cache');

function sources(): string[] {
  return readdirSync(SRC, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts') && !file.endsWith('.d.ts'))
    .map((file) => join(SRC, file));
}

/** Writes every file of src as a module below the folder; planters may change it on its way. */
async function write(outdir: string, plugins: Planter[]): Promise<void> {
  await build({
    entryPoints: sources(),
    outdir,
    outbase: SRC,
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    mainFields: ['module', 'main'],
    outExtension: { '.js': '.mjs' },
    sourcemap: 'inline',
    sourcesContent: false,
    // As in `build:code`.
    loader: { '.csv': 'text', '.txt': 'text', '.ttf': 'binary' },
    banner: {
      js: "import{createRequire as makeRequire}from'node:module';const require=makeRequire(import.meta.url);",
    },
    logLevel: 'warning',
    plugins,
  });
}

/** Leads imports of src to a folder that is written at the first of them and lives as long as the run. */
export function nativeEngine(...planters: Planter[]): Plugin {
  mkdirSync(CACHE, { recursive: true });
  const place = mkdtempSync(join(CACHE, 'engine-'));
  let written: Promise<void> | undefined;
  let isWatched = false;
  return {
    name: 'native-engine',
    enforce: 'pre',
    configureVitest({ vitest }) {
      // Who watches changes src as the run goes on, so there Vite loads it.
      isWatched = vitest.config.watch;
      vitest.onClose(() => {
        rmSync(place, { recursive: true, force: true });
      });
    },
    async resolveId(source, importer) {
      if (isWatched || importer === undefined || !source.startsWith('.')) return undefined;
      const file = resolve(dirname(importer), source);
      if (!file.startsWith(SRC + sep)) return undefined;
      written ??= write(place, planters);
      await written;
      const module = join(place, `${relative(SRC, file)}.mjs`);
      return existsSync(module) ? module : undefined;
    },
  };
}
