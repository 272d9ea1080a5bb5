/** The parts of the page as the build left them beside the program. */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'fflate';
import type { PageParts } from '../page/page-file';
import { policyOf } from '../page/page-file';

/** The folder of the build: beside the program, or below the folder that its source is built in. */
function builtFolder(): string {
  let above = dirname(fileURLToPath(import.meta.url));
  for (;;) {
    const found = ['page', 'dist/page']
      .map((name) => join(above, name))
      .find((folder) => existsSync(join(folder, 'engine.js')));
    if (found !== undefined) return found;
    if (above === dirname(above)) throw new Error('the page was not built: npm run build:code');
    above = dirname(above);
  }
}

/** Reads the parts and packs the engine. Throws where the program was not built. */
export function pageParts(): PageParts {
  const folder = builtFolder();
  const text = (name: string): string => readFileSync(join(folder, name), 'utf8').trim();
  const [app, style] = [text('app.js'), text('look.css')];
  const engine = gzipSync(readFileSync(join(folder, 'engine.js')), { level: 9, mtime: 0 });
  return {
    policy: policyOf({ app: digest(app), style: digest(style) }),
    style,
    app,
    engine: Buffer.from(engine).toString('base64'),
  };
}

/** As a policy names it (CSP Level 3, section 2.3.1). */
function digest(text: string): string {
  return createHash('sha256').update(text).digest('base64');
}
