/** Plants a mutant in the texts of src as they are built for the tests; no file is touched. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Plugin } from 'esbuild';
import type { Mutant } from './mutants';

/** The text with the slip in it. Throws an Error unless its place is there exactly once. */
export function planted(text: string, { file, find, replace }: Mutant): string {
  const [before, after, ...more] = text.split(find);
  if (before === undefined || after === undefined || more.length > 0)
    throw new Error(`src/${file} does not have this once: ${find}`);
  return `${before}${replace}${after}`;
}

export function planting(mutant: Mutant): Plugin {
  const place = resolve('src', mutant.file);
  return {
    name: 'planted-mutant',
    setup(build) {
      build.onLoad({ filter: /\.ts$/ }, ({ path }) =>
        path === place
          ? { contents: planted(readFileSync(path, 'utf8'), mutant), loader: 'ts' }
          : undefined,
      );
    },
  };
}
