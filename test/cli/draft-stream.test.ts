/** Bodies in great numbers have what each has by itself. */
import { existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { cellsOf } from '../../src/table/line-cells';
import { call, filesBelow, list } from './streamed-bodies';
import { typed, workplace } from './workplace';

const place = workplace();
place.write('few.csv', list(20));

describe('a streamed list', () => {
  it('says what it does not read above its header, and sets aside what it does not below', async () => {
    place.write('said.csv', `# in stockings\n${list(3)}# 9,70,96,20,60\n# not read: 70,96\n`);
    const { status, stdout } = await place.run(...call('said.csv', 'said', '--workers', '0'));
    expect(status).toBe(1);
    expect(stdout).toContain('Not read: said.csv row 1.');
    expect(place.read('said/refused.csv')).toMatch(/^.*\n7,,,"a line that begins with # .*\n$/u);
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
    for (const [name, text] of filesBelow(join(place.path, 'streamed')))
      expect(text.includes('Quill'), name).toBe(false);
  });

  it('draws each body as it is drawn by itself, a thousand rows a folder', async () => {
    const few = list(6);
    // The rows of bodies that follow two thousand lines that say nothing.
    place.write('late.csv', few.replace('\n"', `\n${'\n'.repeat(2_000)}"`));
    const drawn = call('late.csv', 'drawn', '--workers', '0', '--drawings', 'dxf,svg');
    expect((await place.run(...drawn)).status).toBe(0);
    await place.run(...typed('draft late.csv --style pencil --anonymous --out one-by-one'));
    const rows = [2003, 2004, 2005, 2006, 2007, 2008];
    const names = rows.flatMap((row) => [`2/body-${row}.dxf`, `2/body-${row}.svg`]);
    const drawings = filesBelow(join(place.path, 'drawn/drawings'));
    expect([...drawings.keys()].sort()).toEqual(names);
    for (const row of rows) {
      expect(drawings.get(`2/body-${row}.svg`)).toBe(place.read(`one-by-one/body-${row}.svg`));
      expect(drawings.get(`2/body-${row}.dxf`)).toMatch(/\n0\r?\nEOF\r?\n$/u);
    }
    // What is left of it by a run that draws nothing is named, and goes with a run that draws again.
    const told = await place.run(...call('late.csv', 'drawn', '--workers', '0', '--replace'));
    expect(told.stdout).toContain('Of another run, and not written anew: drawings.');
    place.write('late.csv', few);
    await place.run(...call('late.csv', 'drawn', ...typed('--workers 0 --drawings svg --replace')));
    expect([...filesBelow(join(place.path, 'drawn/drawings')).keys()][0]).toBe('0/body-3.svg');
  });

  it('is read in UTF-8 and Windows-1252, and refused at once in what has no such lines', async () => {
    // 0xBD is one half and 0xFC a letter in Windows-1252; in UTF-8 neither stands alone.
    const [header, body] = ['# unit: in\nname,waist,hip\n', 'J\u00FCl,26\u00BD,37\u00BD\n'];
    const text = `${header}${body}Ada,26.5,37.5\n`;
    const run = async (bytes: Buffer) => {
      writeFileSync(join(place.path, 'coded.csv'), bytes);
      return place.run(...call('coded.csv', 'coded', '--workers', '0', '--replace'));
    };
    for (const bytes of [Buffer.from(text, 'utf8'), Buffer.from(text, 'latin1')]) {
      expect((await run(bytes)).status).toBe(0);
      const [, ...rows] = place.read('coded/finished-measurements.csv').trimEnd().split('\n');
      expect(rows).toEqual([rows[0], rows[0]?.replace('row 3', 'row 4')]);
    }
    const wide = Buffer.from(`\uFEFF${text}`, 'utf16le');
    for (const bytes of [wide, wide.subarray(2), Buffer.from(wide).swap16()]) {
      const { status, stderr } = await run(bytes);
      expect([status, stderr.replace(/\s+/gu, ' ')]).toEqual([
        2,
        expect.stringContaining('Allowed: the list saved as CSV in UTF-8.'),
      ]);
    }
    for (const lines of [text.replaceAll('\n', '\r'), `${text}Bea,\r27,38\n`]) {
      const { status, stderr } = await run(Buffer.from(lines));
      expect([status, stderr]).toEqual([2, expect.stringContaining('carriage return')]);
    }
    expect((await run(Buffer.from('PK\u0003\u0004'))).stderr).toContain('workbook');
  });

  it('takes away no file of somebody else from its folder of drawings', async () => {
    mkdirSync(join(place.path, 'shared/drawings/0'), { recursive: true });
    for (const stranger of ['shared/drawings/sketch.svg', 'shared/drawings/0/body-3-mine.svg']) {
      place.write(stranger, 'mine');
      const { status, stderr } = await place.run(
        ...call('few.csv', 'shared', '--drawings', 'svg', '--replace'),
      );
      expect(status).toBe(2);
      expect(stderr).toContain(stranger.replace('shared/', ''));
      expect(place.read(stranger)).toBe('mine');
      rmSync(join(place.path, stranger));
    }
  });

  it('refuses the list as a whole where a line changes how those below it count', async () => {
    const head = '# unit: cm\nname,waist,hip\nAda,68,96\n';
    for (const [line, code] of [
      ['name,hip,waist\nBea,101,74\n', 'a header stands among the bodies'],
      ['# unit: in\nBea,29,40\n', 'states something of those below it'],
      ['"Bea\n74,101\nCleo",80,104\n', 'a quote is opened'],
    ] as const) {
      place.write('turning.csv', head + line);
      const { status, stderr } = await place.run(
        ...call('turning.csv', 'turning', '--workers', '0'),
      );
      expect([status, stderr]).toEqual([2, expect.stringContaining(code)]);
      expect(existsSync(join(place.path, 'turning'))).toBe(false);
    }
  });

  it('tells which columns it does not know, and how many hips are smaller than their waists', async () => {
    place.write('odd.csv', '# unit: cm\nname,waist,hip,lenght\nAda,96,68,60\nBea,74,101,61\n');
    const { stdout } = await place.run(...call('odd.csv', 'odd', '--workers', '0'));
    expect(stdout).toContain('Not known as measurements: lenght.');
    expect(stdout).toContain('1 body has less hip than waist');
  });

  it('does not take the place of its list', async () => {
    mkdirSync(join(place.path, 'own'));
    place.write('own/points.csv', list(3));
    const { status, stderr } = await place.run(...call('own/points.csv', 'own', '--replace'));
    expect(status).toBe(2);
    expect(stderr).toContain('would replace a file that was read for it');
    expect(place.read('own/points.csv')).toBe(list(3));
    const folder = await place.run(...call('own', 'elsewhere'));
    expect([folder.status, folder.stderr]).toEqual([2, expect.stringContaining('no file')]);
    const taken = await place.run(...call('few.csv', 'few.csv'));
    expect([taken.status, taken.stderr]).toEqual([2, expect.stringContaining('--out')]);
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
    for (const count of ['-1', '', '0x2'])
      expect(await refused(...call('few.csv', 'no', '--workers', count))).toContain('--workers');
    expect(await refused(...call('few.csv', 'no', '--set', 'hip_eas=1cm'))).toContain('hip_ease');
    expect(await refused(...call('few.csv', 'no', '--drawings', 'pdf'))).toContain('svg and dxf');
    expect(await refused(...call('few.csv', 'no', '--lines', 'cut'))).toContain('--drawings');
    for (const [alone, value] of [
      ['--points', []],
      ['--drawings', ['svg']],
      ['--workers', ['1']],
    ] as const)
      expect(await refused('draft', 'few.csv', '--out', 'no', alone, ...value)).toContain(
        '--stream',
      );
    expect(existsSync(join(place.path, 'no'))).toBe(false);
    const before = filesBelow(join(place.path, 'streamed'));
    expect(await refused(...call('few.csv', 'streamed'))).toContain('--replace');
    expect(filesBelow(join(place.path, 'streamed'))).toEqual(before);
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
