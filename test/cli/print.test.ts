import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { chartText } from '../skirts';
import { contents, workplace, typed } from './workplace';

const place = workplace();
const ROWS = { waist_girth: [25, 26.5, 28], hip_girth: [35, 36.5, 38] };
const SIZES = ['8', '10', '12'];
place.write('good.csv', chartText('in', ROWS, SIZES));
place.write('hard.csv', chartText('in', ROWS, ['8', '十', '12']));

const print = (...args: readonly string[]) =>
  place.run('print', 'good.csv', '--base', '10', '--style', 'pencil', ...args);
const isPdf = (path: string): boolean =>
  readFileSync(join(place.path, path)).subarray(0, 5).toString() === '%PDF-';

describe('print', () => {
  it('writes A4 where no paper is named, and nothing else', async () => {
    const { status, stdout, stderr } = await print('--out', 'plain');
    expect([status, stderr]).toEqual([0, '']);
    expect(readdirSync(join(place.path, 'plain'))).toEqual(['.skirtgrade-written', 'print-a4.pdf']);
    expect(isPdf('plain/print-a4.pdf')).toBe(true);
    expect(stdout).toMatch(/print-a4\.pdf: \d+ sheets/);
    expect(stdout.replace(/\s+/gu, ' ')).toContain('See "stride" in print-a4.pdf.');
  });

  it('writes every paper asked for', async () => {
    const { status, stdout } = await print(
      ...['--paper', 'letter, A0,roll=36in,projector', '--sizes', '8,12'],
      ...typed('--join butt --margin 1/4in --out many'),
    );
    expect(status).toBe(0);
    expect(stdout.replace(/\s+/gu, ' ')).toContain('See "stride" in booklet.pdf.');
    const names = [
      'booklet.pdf',
      ...['print-a0.pdf', 'print-letter.pdf', 'print-roll.pdf', 'projector.pdf'],
    ];
    expect(readdirSync(join(place.path, 'many')).sort()).toEqual(['.skirtgrade-written', ...names]);
    for (const name of names) expect(isPdf(`many/${name}`)).toBe(true);
  });

  it('points to the stride where there is a table of it', async () => {
    const picture = await print(
      ...typed('--paper projector,roll=36in --booklet none --sizes 8,12 --out picture'),
    );
    expect(picture.stdout.replace(/\s+/gu, ' ')).toContain('See "stride" in print-roll.pdf.');
    const alone = await print(...typed('--paper projector --booklet none --sizes 8 --out alone'));
    expect(alone.stdout).not.toContain('See');
  });

  it('is a part of grade where paper is named', async () => {
    const args = typed('grade good.csv --base 10 --style pencil --paper a4 --out graded');
    const { status, stdout } = await place.run(...args);
    expect(status).toBe(0);
    expect(stdout).toMatch(/print-a4\.pdf: \d+ sheets/);
    expect(readdirSync(join(place.path, 'graded'))).toEqual(
      expect.arrayContaining(['nest.svg', 'print-a4.pdf', 'findings.csv']),
    );
    expect(contents(join(place.path, 'graded')).get(join(place.path, 'graded/print-a4.pdf'))).toBe(
      contents(join(place.path, 'plain')).get(join(place.path, 'plain/print-a4.pdf')),
    );
  });
});

describe('what cannot be printed', () => {
  it.each([
    ['an unknown paper', ['--paper', 'a4,b7'], ['--paper', 'letter', 'Got: b7']],
    ['a margin too large', ['--margin', '40mm'], ['--margin', '0 to 22 mm', 'Got: 40mm']],
    ['a margin that is no length', ['--margin', 'thin'], ['--margin', 'Got: thin']],
    ['an unknown size', ['--sizes', '8,9'], ['--sizes', '8, 10, 12', 'Got: 9']],
    ['an unknown way to join', ['--join', 'staple'], ['--join', 'overlap, butt']],
    ['a roll too narrow', ['--paper', 'a4,roll=250mm'], ['--paper', 'Got: 250 mm']],
  ])('%s is refused and nothing is written', async (_, args, words) => {
    const before = contents(place.path);
    const { status, stdout, stderr } = await print('--out', 'refused', ...args);
    expect(contents(place.path)).toEqual(before);
    expect([status, stdout]).toEqual([2, '']);
    for (const word of words) expect(stderr).toContain(word);
  });

  it('a name in letters that the fonts lack is refused by grade too', async () => {
    const before = contents(place.path);
    const args = typed('hard.csv --base 8 --style pencil --paper a4 --out refused');
    for (const command of ['print', 'grade']) {
      const { status, stderr } = await place.run(command, ...args);
      expect(status).toBe(2);
      expect(stderr).toContain('十 (U+5341)');
    }
    expect(contents(place.path)).toEqual(before);
  });
});
