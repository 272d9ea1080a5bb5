/** Bodies in great numbers: the same as one by one, with any number of workers, after any kill. */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { cellsOf } from '../../src/bodies/streamed-list';
import { LONG } from '../samples';
import { contents, workplace } from './workplace';

const CLI = resolve('dist/cli.js');
const place = workplace();

/** Bodies apart from one another by a sequence that fills a range evenly, some rows of no use among them. */
function list(count: number): string {
  const rows = Array.from({ length: count }, (_, i) => {
    const at = (from: number, to: number, by: number): string =>
      (from + (((i + 1) * by) % 1) * (to - from)).toFixed(1);
    const body = [
      at(60, 110, 0.618034),
      at(90, 125, 0.754878),
      at(18, 23, 0.56984),
      at(50, 75, 0.8191725),
    ];
    if (i % 50 === 7) body[0] = i % 100 === 7 ? 'x' : '7';
    return `"Quill, ${i}",${body.join(',')}\n`;
  });
  return `# unit: cm\nname,waist,hip,waist_to_hip,skirt_length\n${rows.join('')}`;
}
place.write('few.csv', list(20));
place.write('many.csv', list(1_500));

const call = (file: string, out: string, ...more: readonly string[]): readonly string[] => [
  ...['draft', file, '--stream', '--points', '--style', 'pencil', ...more, '--out', out],
];

function filesOf(out: string): ReadonlyMap<string, string> {
  const folder = join(place.path, out);
  return new Map(
    [...contents(folder)].map(([path, text]) => [path.slice(folder.length + 1), text]),
  );
}

describe('a streamed list', () => {
  it('says what it does not read above its header, and sets aside what it does not below', async () => {
    place.write('said.csv', `# in stockings\n${list(3)}# 9,70,96,20,60\n# not read: 70,96\n`);
    const { status, stdout } = await place.run(...call('said.csv', 'said', '--workers', '0'));
    expect(status).toBe(1);
    expect(stdout).toContain('Not read: said.csv row 1.');
    expect(place.read('said/refused.csv')).toMatch(/^.*\n7,,,"a line among the bodies .*\n$/u);
    expect(place.read('said/finished-measurements.csv').trim().split('\n')).toHaveLength(4);
  });

  it.each(['pencil', 'shared-pencil'])('has in %s what each body has by itself', async (style) => {
    const few = style === 'pencil' ? 'few.csv' : 'fewer.csv';
    place.write('fewer.csv', list(9));
    const own = ['--style', style];
    const streamed = await place.run(
      ...call(few, 'streamed', '--workers', '0', '--replace', ...own),
    );
    const alone = await place.run('draft', few, ...own, '--out', 'alone', '--replace');
    expect([streamed.status, streamed.stderr]).toEqual([alone.status, '']);
    for (const name of ['points.csv', 'refused.csv'])
      expect(place.read(`streamed/${name}`)).toBe(place.read(`alone/${name}`));
    const rows = (path: string): readonly (readonly string[])[] =>
      place
        .read(path)
        .trimEnd()
        .split('\n')
        .map((row) => row.split(','));
    const [header = [], ...measured] = rows('streamed/finished-measurements.csv');
    const [all = [], ...whole] = rows('alone/finished-measurements.csv');
    expect(measured).toHaveLength(whole.length);
    for (const [i, row] of measured.entries())
      expect(row).toEqual(header.map((name) => whole[i]?.[all.indexOf(name)] ?? ''));
    for (const [name, text] of filesOf('streamed'))
      expect(text.includes('Quill'), name).toBe(false);
  });

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

  it('refuses what is no list for it, another run in its folder, and options of single bodies', async () => {
    const refused = async (...args: readonly string[]): Promise<string> => {
      const { status, stdout, stderr } = await place.run(...args);
      expect([status, stdout]).toEqual([2, '']);
      return stderr;
    };
    place.write('turned.csv', '# unit: cm\nmeasurement,a,b\nwaist,68,70\nhip,96,98\n');
    expect(await refused(...call('turned.csv', 'no'))).toContain('one body a row');
    expect(await refused(...call('none.csv', 'no'))).toContain('cannot be read');
    expect(await refused(...call('few.csv', 'no', '--paper', 'a4'))).toContain('--paper');
    expect(await refused(...call('few.csv', 'no', '--workers', '-1'))).toContain('--workers');
    expect(await refused(...call('few.csv', 'no', '--set', 'hip_eas=1cm'))).toContain('hip_ease');
    expect(existsSync(join(place.path, 'no'))).toBe(false);
    const before = filesOf('w0');
    expect(await refused(...call('few.csv', 'w0'))).toContain('--replace');
    expect(filesOf('w0')).toEqual(before);
  });
});

describe('a line', () => {
  it.each([
    ['a,b,c', ['a', 'b', 'c']],
    ['"a, b",c', ['a, b', 'c']],
    ['"a ""b""",c,', ['a "b"', 'c', '']],
    [' "a" ,b', ['a', 'b']],
    ['26 1/2",b', ['26 1/2"', 'b']],
    ['"a,b', ['"a', 'b']],
  ])('%s has its cells', (line, cells) => {
    expect(cellsOf(line, ',')).toEqual(cells);
  });
});
