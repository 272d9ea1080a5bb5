/**
 * What a newcomer gets wrong, and word for word what is said: `wrong-calls.txt` has the files, each below
 * `@ name`, then each call below a `$` with all that stderr shows. Nothing is written.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { expect, it } from 'vitest';
import { argumentsOf } from './typed-blocks';
import { workplace } from './workplace';

const place = workplace();
const BLOCKS = readFileSync('test/cli/wrong-calls.txt', 'utf8')
  .split(/^(?=[@$] )/mu)
  .filter((block) => /^[@$] /u.test(block))
  .map((block) => {
    const end = block.indexOf('\n');
    return { kind: block[0], head: block.slice(2, end), body: block.slice(end + 1).trimEnd() };
  });
const FILES = BLOCKS.filter(({ kind }) => kind === '@');
const CALLS = BLOCKS.filter(({ kind }) => kind === '$');

for (const { head, body } of FILES) place.write(head, body === '' ? '' : `${body}\n`);

it('there are more than 60 of them, each once', () => {
  expect(CALLS.length).toBeGreaterThan(60);
  expect(new Set(CALLS.map(({ head }) => head)).size).toBe(CALLS.length);
});

it.each(CALLS.map(({ head, body }) => [head, body]))('skirtgrade %s', async (call, message) => {
  const { status, stdout, shown } = await place.run(...argumentsOf(`skirtgrade ${call}`));
  expect(shown.trimEnd()).toBe(message);
  for (const line of shown.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
  expect(status).toBe(2);
  if (!call.includes('--json')) expect(stdout).toBe('');
  expect(readdirSync(place.path).toSorted()).toEqual(FILES.map(({ head }) => head).toSorted());
});
