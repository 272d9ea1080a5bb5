/** Plants a mutant in the texts of src as they are loaded; no file is touched. */
import type { Plugin } from 'vitest/config';
import type { Mutant } from './mutants';

/** The text with the slip in it. Throws an Error unless its place is there exactly once. */
export function planted(text: string, { file, find, replace }: Mutant): string {
  const [before, after, ...more] = text.split(find);
  if (before === undefined || after === undefined || more.length > 0)
    throw new Error(`src/${file} does not have this once: ${find}`);
  return `${before}${replace}${after}`;
}

export function planting(mutant: Mutant): Plugin {
  return {
    name: 'planted-mutant',
    enforce: 'pre',
    transform: (code, id) =>
      id.endsWith(`/src/${mutant.file}`) ? planted(code, mutant) : undefined,
  };
}
