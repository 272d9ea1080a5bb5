/** Folders into which a streamed run may not write, or cannot. */
import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { workplace } from './workplace';

const place = workplace();
const LIST = '# unit: cm\nwaist_girth,hip_girth,waist_to_hip,skirt_length\n74,100,20,62\n';

it('replaces no folder that has the name of a table', async () => {
  place.write('list.csv', LIST);
  mkdirSync(join(place.path, 'out', 'refused.csv'), { recursive: true });
  place.write('out/refused.csv/mine.txt', 'kept');
  const call = ['draft', 'list.csv', '--stream', '--out', 'out', '--replace'] as const;
  const { status, stderr } = await place.run(...call);
  expect(status).toBe(2);
  expect(stderr).toContain('a result would replace what is no file');
  expect(place.read('out/refused.csv/mine.txt')).toBe('kept');
});

it.runIf(existsSync('/proc'))('ends where a folder takes none', async () => {
  place.write('list.csv', LIST);
  for (const more of [[], ['--stream']]) {
    const { status, stderr } = await place.run('draft', 'list.csv', ...more, '--out', '/proc/x');
    expect(status).toBe(2);
    expect(stderr).toContain('the results cannot be written');
  }
});
