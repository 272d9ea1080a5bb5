/** Bodies in great numbers have the same bytes with any number of workers and after any kill. */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { TOPICS } from '../../src/cli/help-topics';
import { call, filesBelow, list } from '../cli/streamed-bodies';
import { workplace } from '../cli/workplace';
import { LONG } from '../samples';

const CLI = resolve('dist/cli.js');
const place = workplace();
place.write('many.csv', list(1_500));
const filesOf = (out: string): ReadonlyMap<string, string> => filesBelow(join(place.path, out));

const hasParallel = spawnSync('parallel', ['--version']).error === undefined;
if (!hasParallel)
  console.log('skipped: a list split by GNU parallel, for want of it (package parallel)');

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

  it('has the same drawings with no worker and with 1, 2 and 4', async () => {
    place.write('drawn.csv', list(60));
    const drawn = (out: string, workers: number) =>
      call('drawn.csv', out, '--drawings', 'svg,dxf', '--workers', `${workers}`);
    await place.run(...drawn('d0', 0));
    const expected = filesOf('d0');
    // Two rows of the sixty are of no use; the others have two drawings each, beside three tables.
    expect(expected.size).toBe(3 + 2 * 58);
    for (const workers of [1, 2, 4]) {
      spawnSync(process.execPath, [CLI, ...drawn(`d${workers}`, workers)], { cwd: place.path });
      expect(filesOf(`d${workers}`)).toEqual(expected);
    }
  });

  it.each([
    ['tables', 'many.csv', 'w0', [], 4, 300],
    ['drawings', 'drawn.csv', 'd0', ['--drawings', 'svg,dxf'], 2, 60],
  ] as const)(
    'of %s goes on after each kill, and nothing is lost or stands twice',
    async (_, file, whole, drawn, few, many) => {
      const expected = filesOf(whole);
      let kills = 0;
      let left: number = LONG ? many : few;
      for (let round = 0; left > 0; round++) {
        const out = `killed-${file}-${round}`;
        for (let isDone = false; !isDone;) {
          const child = spawn(
            process.execPath,
            [CLI, ...call(file, out, ...drawn, '--workers', '2')],
            {
              cwd: place.path,
              stdio: 'ignore',
            },
          );
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
          if (code === null) {
            kills++;
            left--;
          } else if (!isDone) throw new Error(`it ended with ${code}`);
          else left = LONG ? left : 0;
        }
        expect(filesOf(out)).toEqual(expected);
      }
      expect(kills).toBeGreaterThan(0);
    },
  );

  it.skipIf(!hasParallel)(
    'is split by GNU parallel as its help says, each body in one part',
    () => {
      const [call = ''] = /^ {4}parallel .*\n.*$/mu.exec(TOPICS.get('bodies') ?? '') ?? [];
      mkdirSync(join(place.path, 'split'));
      const here = call
        .replace('-a bodies.csv', '-a ../many.csv')
        .replace('--block 100M', '--block 8k')
        .replace('skirtgrade draft', `${process.execPath} ${CLI} draft --style pencil`);
      const { stderr } = spawnSync('bash', ['-c', here], {
        ...{ cwd: join(place.path, 'split'), encoding: 'utf8' },
        env: { ...process.env, PARALLEL: '--will-cite' },
      });
      expect(stderr).toBe('');
      const parts = readdirSync(join(place.path, 'split')).filter((name) => name.endsWith('.csv'));
      expect(parts.length).toBeGreaterThan(5);
      // Rows count from 1 in each part: what is left of a table without them is the table of the whole.
      const rowsOf = (path: string): readonly string[] =>
        place
          .read(path)
          .trimEnd()
          .split('\n')
          .map((row) => row.replace(/^row \d+,/u, ''));
      const [header, ...whole] = rowsOf('w0/finished-measurements.csv');
      const split = parts.flatMap((_, i) => {
        const [own, ...rows] = rowsOf(`split/output/part-${i + 1}/finished-measurements.csv`);
        expect(own).toBe(header);
        return rows;
      });
      expect(split).toEqual(whole);
    },
  );
});
