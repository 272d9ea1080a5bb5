/** How src becomes what is run: `node esbuild.config.js` writes dist. */
import { copyFileSync, rmSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { build } from 'esbuild';

/** @import { BuildOptions, Plugin } from 'esbuild' */

/** By name of the written file. */
const PROGRAMS = {
  cli: 'src/cli/bin.ts',
  index: 'src/index.ts',
  'draft-worker': 'src/cli/stream/draft-worker.ts',
};

/**
 * What has to be the same thing in all files of a process: the classes by which what is thrown is told
 * apart. All else that passes between files are values.
 */
const SHARED = { errors: 'src/errors.ts', stopped: 'src/cli/stopped.ts' };

/** @type {BuildOptions} */
const ANYWHERE = {
  bundle: true,
  minify: true,
  mainFields: ['module', 'main'],
  loader: { '.csv': 'text', '.txt': 'text', '.ttf': 'binary' },
  alias: {
    // A tenth of the page, for fonts of another kind than the one that goes with it.
    'brotli/decompress.js': resolve('src/render/no-brotli.ts'),
    // That for Node asks for files, which the library does nowhere.
    '@cantoo/fontkit': resolve('node_modules/@cantoo/fontkit/dist/browser-module.mjs'),
  },
  logLevel: 'warning',
};

/** Packages that are in CommonJS ask for Node's own modules by `require`. */
const REQUIRE =
  "import{createRequire as makeRequire}from'node:module';const require=makeRequire(import.meta.url);";

/**
 * Writes each program, and each module that is imported when it is wanted, as one file with all that it
 * needs: Node reads one large file far sooner than the many into which shared parts would fall.
 */
async function buildPrograms() {
  /** @type {Map<string, string>} */
  const written = new Map();
  /** @type {Record<string, string>} */
  let next = { ...SHARED, ...PROGRAMS };
  while (Object.keys(next).length > 0) {
    /** @type {Record<string, string>} */
    const wanted = {};
    for (const [name, path] of Object.entries(next)) written.set(resolve(path), name);
    await build({
      ...ANYWHERE,
      entryPoints: next,
      outdir: 'dist',
      format: 'esm',
      platform: 'node',
      target: 'node20',
      banner: { js: REQUIRE },
      plugins: [filesOfTheirOwn(written, wanted)],
    });
    next = wanted;
  }
}

/**
 * Leaves imports of what is shared, and those that are made when they are wanted, to files of their own,
 * and notes in `wanted` those that are not written yet.
 * @param {ReadonlyMap<string, string>} written
 * @param {Record<string, string>} wanted
 * @returns {Plugin}
 */
function filesOfTheirOwn(written, wanted) {
  const shared = new Set(Object.values(SHARED).map((path) => resolve(path)));
  const isTaken = (/** @type {string} */ name) =>
    name in wanted || [...written.values()].includes(name);
  return {
    name: 'files-of-their-own',
    setup(esbuild) {
      esbuild.onResolve(
        { filter: /^\./ },
        async ({ path, kind, resolveDir, pluginData: asked }) => {
          if (kind === 'entry-point' || asked === 'by this plugin') return undefined;
          const found = await esbuild.resolve(path, {
            kind,
            resolveDir,
            pluginData: 'by this plugin',
          });
          if (kind !== 'dynamic-import' && !shared.has(found.path)) return undefined;
          const name = written.get(found.path) ?? basename(found.path, '.ts');
          if (!written.has(found.path) && wanted[name] !== found.path) {
            if (isTaken(name)) throw new Error(`two files would be ${name}.js`);
            wanted[name] = found.path;
          }
          return { path: `./${name}.js`, external: true };
        },
      );
    },
  };
}

/** Writes the three texts of the page. */
async function buildPage() {
  await build({
    ...ANYWHERE,
    entryPoints: {
      app: 'src/page/app/main.tsx',
      engine: 'src/page/engine/worker.ts',
      look: 'src/page/look/page.css',
    },
    outdir: 'dist/page',
    format: 'iife',
    platform: 'browser',
    target: 'es2023',
    alias: {
      ...ANYWHERE.alias,
      'csv-parse/sync': 'csv-parse/browser/esm/sync',
      'csv-stringify/sync': 'csv-stringify/browser/esm/sync',
    },
    jsx: 'automatic',
    jsxImportSource: 'preact',
  });
}

rmSync('dist', { recursive: true, force: true });
await Promise.all([buildPrograms(), buildPage()]);
copyFileSync('node_modules/@expo-google-fonts/arimo/LICENSE_FONT', 'dist/arimo-license.txt');
