/** The built file runs, and its exit codes are those of `main`; `test/outside` asks it for more. */
import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import { expect, it } from 'vitest';
import { runIn, workplace } from './workplace';

const place = workplace();
const chart = (...hips: readonly number[]): string =>
  `# unit: in\nmeasurement,38,40\nwaist,40,42\nhip,${hips.join()}\n`;
place.write('right.csv', chart(46, 48));
place.write('wrong.csv', chart(38, 40));

it.each([
  [0, 'check', 'right.csv'],
  [1, 'check', 'wrong.csv'],
  [2, 'check', 'none.csv'],
])('ends with %i: %s %s', async (code, ...args) => {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [resolve('dist/cli.js'), ...args],
    {
      cwd: place.path,
      encoding: 'utf8',
    },
  );
  const own = await runIn(place.path, args);
  expect({ status, stdout, stderr }).toEqual({
    status: code,
    stdout: own.stdout,
    stderr: own.shown,
  });
});
