/** Bodies in great numbers have the same bytes with any number of workers and after any kill. */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { call, filesBelow, list } from '../cli/streamed-bodies';
import { workplace } from '../cli/workplace';
import { LONG } from '../samples';

const CLI = resolve('dist/cli.js');
const place = workplace();
place.write('many.csv', list(1_500));
const filesOf = (out: string): ReadonlyMap<string, string> => filesBelow(join(place.path, out));

describe('a streamed list', () => {
  it('has the same bytes with no worker and with 1, 2 and 4', async () => {
    await place.run(...call('many.csv', 'w0', '--workers', '0'));
    const expected = filesOf('w0');
    expect([...expected.keys()].sort()).toEqual([
      ...['finished-measurements.csv', 'points.csv', 'refused.csv'],
    ]);
    for (const workers of ['1', '2', '4']) {
      const args = call('many.csv', `w${workers}`, '--workers', workers);
      const { status, stderr } = spawnSync(process.execPath, [CLI, ...args], {
        ...{ cwd: place.path, encoding: 'utf8' },
      });
      expect([status, stderr]).toEqual([1, '']);
      expect(filesOf(`w${workers}`)).toEqual(expected);
    }
  });

  it('goes on after each kill, and nothing is lost or stands twice', async () => {
    const expected = filesOf('w0');
    let [kills, left] = [0, LONG ? 300 : 4];
    for (let round = 0; left > 0; round++) {
      const out = `killed-${round}`;
      for (let isDone = false; !isDone;) {
        const child = spawn(process.execPath, [CLI, ...call('many.csv', out, '--workers', '2')], {
          cwd: place.path,
          stdio: 'ignore',
        });
        const end = once(child, 'close') as Promise<[number | null]>;
        const isWriting = (): boolean =>
          existsSync(join(place.path, out)) && readdirSync(join(place.path, out)).length > 0;
        while (child.exitCode === null && !isWriting()) await delay(1);
        if (left > 0) {
          await delay(((kills * 37) % 50) * 10);
          child.kill('SIGKILL');
        }
        const [code] = await end;
        isDone = code === 1;
        if (code === null) [kills, left] = [kills + 1, left - 1];
        else if (!isDone) throw new Error(`it ended with ${code}`);
        else left = LONG ? left : 0;
      }
      expect(filesOf(out)).toEqual(expected);
    }
    expect(kills).toBeGreaterThan(0);
  });
});
