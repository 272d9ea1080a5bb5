/** The library as it is shipped: what it asks of Node. */
import { buildSync } from 'esbuild';
import { expect, it } from 'vitest';

it('the library touches no file: nothing in it could', () => {
  const { metafile, outputFiles } = buildSync({
    entryPoints: ['dist/index.js'],
    bundle: true,
    format: 'esm',
    logLevel: 'silent',
    metafile: true,
    outdir: 'unused',
    platform: 'node',
    write: false,
  });
  const imported = Object.values(metafile.outputs).flatMap(({ imports }) =>
    imports.filter(({ external }) => external).map(({ path }) => path.replace(/^node:/, '')),
  );
  // What packages in CommonJS ask for goes through a `require` of the file's own.
  const required = outputFiles.flatMap(({ text }) =>
    [...text.matchAll(/\brequire\w*\(["'](?:node:)?([\w/]+)["']\)/gu)].map(([, path = '']) => path),
  );
  // CSV reading and writing build on streams and buffers, packing on a loader, and use none for files.
  const harmless = ['stream', 'buffer', 'util', 'events', 'string_decoder', 'module'];
  expect([...imported, ...required].filter((path) => !harmless.includes(path))).toEqual([]);
});
