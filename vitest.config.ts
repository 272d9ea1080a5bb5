import { readFileSync } from 'node:fs';
import { setFlagsFromString } from 'node:v8';
import type { Plugin } from 'esbuild';
import { defineConfig } from 'vitest/config';
import type { ViteUserConfig } from 'vitest/config';
import { nativeEngine } from './test/native-engine.ts';

// A test runs most of its code a few times: to compile it later, and to clear young objects less often,
// takes a fifth of the processor time off. An engine that does not know a flag goes on without it.
for (const flag of [
  '--interrupt-budget=1000000',
  '--min-semi-space-size=64',
  '--max-semi-space-size=128',
])
  setFlagsFromString(flag);

/** Asks Poppler, qpdf, librsvg and ezdxf, which npm does not install, and starts processes in numbers. */
const OUTSIDE = 'test/outside/**/*.test.ts';

/** The tests of a mode: `long`, `outside` or any other; planters change src on its way to them. */
export function configuration(mode: string, ...planters: Plugin[]): ViteUserConfig {
  return {
    plugins: [
      nativeEngine(...planters),
      // The published tables and the words of help are imported as text, by the bundle and the tests.
      {
        name: 'text-as-text',
        enforce: 'pre',
        load(id) {
          if (!/\.(csv|txt)$/.test(id)) return undefined;
          return `export default ${JSON.stringify(readFileSync(id, 'utf8'))}`;
        },
      },
      // So is the font, as bytes.
      {
        name: 'font-as-bytes',
        enforce: 'pre',
        load(id) {
          if (!id.endsWith('.ttf')) return undefined;
          const bytes = readFileSync(id).toString('base64');
          return `export default Uint8Array.from(Buffer.from('${bytes}', 'base64'))`;
        },
      },
    ],
    test: {
      include: mode === 'outside' ? [OUTSIDE] : ['test/**/*.test.ts'],
      exclude: mode === 'long' || mode === 'outside' ? [] : [OUTSIDE],
      setupFiles: ['test/samples.ts'],
      env: { LONG: mode === 'long' ? '1' : '' },
      // Nothing in src or test keeps a state that another file could see, so each worker imports all
      // once.
      pool: 'threads',
      isolate: false,
      // No test is to fail because the machine is busy: this only ends one that never would.
      testTimeout: 600_000,
      hookTimeout: 600_000,
      // What a page comes to show is waited for.
      expect: { poll: { timeout: 30_000 } },
    },
  };
}

export default defineConfig(({ mode }) => configuration(mode));
