/** Golden files: whole results that were looked at once, and must stay as they are. */
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';

const FOLDER = 'test/golden';

/**
 * Expects `text` to be the golden file of this name. A golden that is missing fails; one that
 * differs fails and leaves the new text beside it as `<name>.changed.<extension>`. With
 * UPDATE_GOLDEN=1 the file is written instead: look at it before you keep it.
 */
export function expectGolden(name: string, text: string): void {
  const path = join(FOLDER, name);
  const changed = path.replace(/(\.\w+)$/, '.changed$1');
  if (process.env.UPDATE_GOLDEN === '1') {
    mkdirSync(FOLDER, { recursive: true });
    writeFileSync(path, text);
    rmSync(changed, { force: true });
    return;
  }
  expect(existsSync(path), `${path} is missing; UPDATE_GOLDEN=1 npx vitest run makes it`).toBe(
    true,
  );
  const same = readFileSync(path, 'utf8') === text;
  if (same) rmSync(changed, { force: true });
  else writeFileSync(changed, text);
  expect(same, `${path} is not what came out; compare it with ${changed}`).toBe(true);
}
