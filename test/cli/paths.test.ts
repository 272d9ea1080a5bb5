/** The three paths of the README, typed as they are written there. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { callsIn, fencedBlocks } from './typed-blocks';
import { workplace } from './workplace';

const README = readFileSync('README.md', 'utf8');
const PATHS = README.slice(README.indexOf('## Three paths'), README.indexOf('## Commands'))
  .split(/^### /mu)
  .slice(1);

describe.each(PATHS.map((text) => [text.slice(0, text.indexOf('\n')), text]))('%s', (_, path) => {
  const place = workplace();

  it('runs as written, and writes what it names', async () => {
    let ran = 0;
    for (const block of fencedBlocks(path)) {
      const calls = callsIn(block);
      if (calls.length === 0) {
        // The file is the last one that the words above name.
        const name = [...block.above.matchAll(/`([\w-]+\.csv)`/gu)].at(-1)?.[1];
        expect(name, block.text).toBeDefined();
        place.write(name ?? '', block.text);
      }
      for (const call of calls) {
        const { status, stdout, stderr } = await place.run(...call);
        expect(stderr, call.join(' ')).toBe('');
        // A sheet of one point leaves the others missing.
        expect(status, call.join(' ')).toBe(call[0] === 'assess' ? 1 : 0);
        for (const line of stdout.split('\n'))
          if (/\S\s+\S/u.test(line.slice(8))) expect(line.length, line).toBeLessThanOrEqual(80);
        ran++;
      }
    }
    expect(ran).toBeGreaterThan(1);
    for (const [, file = ''] of path.matchAll(/`((?:output|lesson)\/[\w/.-]+)`/gu))
      expect(() => place.read(file)).not.toThrow();
  });
});

it('has three paths within 10 KB, and names only topics and commands that are there', async () => {
  expect(PATHS).toHaveLength(3);
  expect(Buffer.byteLength(README)).toBeLessThanOrEqual(10_240);
  const place = workplace();
  const typed = [...README.matchAll(/`skirtgrade ([a-z-]+)(?: ([a-z-]+))?[^`]*`/gu)];
  const table = /\| `skirtgrade help \.\.\.`[^]*?\n\n/u.exec(README)?.[0] ?? '';
  const topics = [
    ...[...table.matchAll(/`([a-z-]+)`/gu)].map(([, topic]) => topic),
    ...typed.filter(([, command]) => command === 'help').map(([, , topic]) => topic),
  ].filter((topic) => topic !== undefined);
  expect(topics.length).toBeGreaterThan(15);
  for (const topic of new Set(topics))
    expect((await place.run('help', topic)).status, topic).toBe(0);
});
