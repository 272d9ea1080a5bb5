/** The library bundled anew: what it asks of Node. */
import { buildSync } from 'esbuild';
import { expect, it } from 'vitest';

it('the library touches no file: nothing in it could', () => {
  const { metafile } = buildSync({
    entryPoints: ['src/index.ts'],
    bundle: true,
    // As it is built: the library's own fonts, and no files.
    alias: { '@cantoo/fontkit': './node_modules/@cantoo/fontkit/dist/browser-module.mjs' },
    format: 'esm',
    loader: { '.csv': 'text', '.ttf': 'binary' },
    logLevel: 'silent',
    mainFields: ['module', 'main'],
    metafile: true,
    outdir: 'unused',
    platform: 'node',
    write: false,
  });
  const imported = Object.values(metafile.outputs).flatMap(({ imports }) =>
    imports.filter(({ external }) => external).map(({ path }) => path.replace(/^node:/, '')),
  );
  // CSV reading and writing build on streams and buffers, packing on a loader, and use none for files.
  const harmless = ['stream', 'buffer', 'util', 'events', 'string_decoder', 'module'];
  expect(imported.filter((path) => !harmless.includes(path))).toEqual([]);
});
