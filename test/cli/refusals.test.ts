import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { chartText } from '../skirts';
import { contents, workplace, typed } from './workplace';

const place = workplace();
const GOOD = { waist_girth: [25, 26.5, 28], hip_girth: [35, 36.5, 38] };
const SIZES = ['8', '10', '12'];

place.write('good.csv', chartText('in', GOOD, SIZES));
place.write('file', 'a file, not a folder');
mkdirSync(join(place.path, 'blocked/findings.csv'), { recursive: true });
await place.run('grade', 'good.csv', '--base', '10', '--out', 'out');

/** Expects exit code 2, all `words` in one message, and not a byte changed anywhere. */
async function expectRefused(args: readonly string[], words: readonly string[]): Promise<string> {
  const before = contents(place.path);
  expect(before.size).toBeGreaterThan(5);
  const { status, stdout, stderr } = await place.run('grade', ...args);
  expect(contents(place.path)).toEqual(before);
  expect(status).toBe(2);
  expect(stdout).toBe('');
  expect(stderr).not.toMatch(/\n\s+at /);
  for (const word of words) expect(stderr).toContain(word);
  return stderr;
}

async function expectChartRefused(
  text: string,
  words: readonly string[],
  base = '10',
): Promise<void> {
  place.write('bad.csv', text);
  const message = await expectRefused(
    ['bad.csv', '--base', base, '--out', 'out'],
    ['bad.csv', ...words],
  );
  expect(message).toMatch(/^skirtgrade: [^\n]+\.\n$/);
}

const chart = (rows: Parameters<typeof chartText>[1], sizes: readonly string[] = SIZES) =>
  chartText('in', { ...GOOD, ...rows }, sizes);

describe('charts', () => {
  it.each([
    [
      'a missing cell',
      chart({ waist_girth: [25, '', 28] }),
      ['row 3, column 3 (waist_girth, size 10)', 'missing', 'Allowed:', 'Got: nothing'],
    ],
    [
      'a negative cell',
      chart({ hip_girth: [35, 36.5, -38] }),
      ['row 4, column 4 (hip_girth, size 12)', 'not above zero', 'Allowed:', 'Got: -38'],
    ],
    [
      'a cell of nothing',
      chart({ hip_girth: [0, 36.5, 38] }),
      ['row 4, column 2 (hip_girth, size 8)', 'not above zero', 'Allowed:', 'Got: 0'],
    ],
    [
      'a cell that is no number',
      chart({ waist_girth: [25, 'c. 26', 28] }),
      ['row 3, column 3 (waist_girth, size 10)', 'not a number', 'Allowed:', 'Got: c. 26'],
    ],
    [
      'two sizes of one name',
      chart({}, ['8', '10', '10']),
      ['row 2, column 4', 'two sizes have one name', 'Allowed:', 'Got: 10'],
    ],
    [
      'two measurements of one name',
      chart({ hips: [35, 36, 37] }),
      ['row 5', 'hip_girth twice', 'Allowed:', 'Got: hips'],
    ],
    ['no unit', chart({}).replace(/^.*\n/, ''), ['which unit', 'Allowed:', '# unit:']],
    [
      'an unknown unit',
      chart({}).replace(' in', ' ell'),
      ['row 1', 'unit', 'Allowed:', 'Got: ell'],
    ],
    [
      'girths of another unit',
      chart({}).replace(' in', ' cm'),
      ['row 3, column 2 (waist_girth, size 8)', "an adult's only", 'Allowed:', 'Got: 25 cm'],
    ],
    [
      'a range that rises and falls',
      chart({ waist_girth: [25, 29, 28], hip_girth: [35, 39, 38] }),
      ['row 3, column 3 (waist_girth, size 10)', 'larger than both', 'Allowed:', 'Got: size 10'],
    ],
    [
      'a range that falls and rises',
      chart({ waist_girth: [25, 24, 28], hip_girth: [35, 34, 38] }),
      ['row 3, column 3 (waist_girth, size 10)', 'smaller than both', 'Allowed:', 'Got: size 10'],
    ],
    [
      'no hip girth',
      chartText('in', { waist_girth: [25, 26, 27] }, SIZES),
      ['hip_girth', 'Allowed:', 'Got: waist_girth'],
    ],
    ['nothing in it', '', ['empty', 'Allowed:', 'Got: nothing']],
    [
      'a quote that never ends',
      chart({}).replace('25', '"25'),
      ['row 3', 'quote', 'Allowed:', 'Got:'],
    ],
  ])('with %s', async (_, text, words) => {
    await expectChartRefused(text, words);
  });

  it('without the base size', async () => {
    await expectChartRefused(chart({}), ['--base', 'Allowed: 8, 10, 12', 'Got: 14'], '14');
  });

  it('that cannot be read', async () => {
    await expectRefused(typed('none.csv --base 10 --out out'), [
      'skirtgrade: none.csv: there is no such file. Allowed: the path of a file that is there',
    ]);
    await expectRefused(typed('godo.csv --base 10 --out out'), [
      'skirtgrade: godo.csv: there is no such file. Did you mean good.csv?',
    ]);
    await expectRefused(typed('none/good.csv --base 10 --out out'), [
      'skirtgrade: none/good.csv: there is no such folder.',
    ]);
    await expectRefused(typed('. --base 10 --out out'), [
      'the file cannot be read',
      'Got: a folder',
    ]);
  });
});

describe('formulas', () => {
  it.each([
    ['hip_grith/24', ['"hip_grith"', 'Did you mean hip_girth?', 'Got: hip_grith/24']],
    ['hem_taper + 1 in', ['circle', 'hem_taper -> hem_taper', 'Got: hem_taper + 1 in']],
    ['"1 in"', ['text', 'Allowed:', 'Got: "1 in"']],
    ['2 hip_girth', ['the product without a sign', 'Allowed:', 'Got: 2 hip_girth']],
    ['5%', ['a percent sign', 'Allowed:', 'Got: 5%']],
    ['exp(1) * 1 in', ['the function exp', 'Allowed: abs', 'Got: exp(1) * 1 in']],
    ['hip_girth - 2', ['mixes a length with a plain number', 'Allowed:', 'Got: hip_girth - 2']],
    ['1 in +', ['cannot be read', 'Allowed:', 'Got: 1 in +']],
    ['', ['no value', 'Allowed:', 'Got: nothing']],
    ['20 in', ['out of its range', 'size 10', 'Allowed:', 'Got: 20 in']],
  ])('%s', async (formula, words) => {
    await expectRefused(
      ['good.csv', '--base', '10', '--out', 'out', '--set', `hem_taper=${formula}`],
      ['skirtgrade: --set', 'parameter hem_taper', ...words],
    );
  });

  it('of a style file, with its row', async () => {
    place.write('style.csv', 'parameter,value,note\nhip_ease,1 in,\nhem_taper,2 hip_girth,\n');
    await expectRefused(typed('good.csv --base 10 --out out --style style.csv'), [
      'skirtgrade: style.csv, row 3 (parameter hem_taper): the product without a sign',
    ]);
  });
});

describe('calls', () => {
  it.each([
    [
      ['--set', 'hem_taper'],
      ['--set', 'an equals sign', 'Allowed:', 'Got: hem_taper'],
    ],
    [
      ['--set', 'hem=1'],
      ['--set', 'no parameter of this name', 'hem_taper', 'Got: hem'],
    ],
    [
      ['--set', 'hem_taper=1', '--set', 'hem_taper=2'],
      ['--set', 'set twice', 'Got: hem_taper'],
    ],
    [
      ['--sizes', '8,9'],
      ['--sizes', 'no such size', 'Allowed: 8, 10, 12', 'Got: 9'],
    ],
    [
      ['--round', '3in'],
      ['--round', 'rounding step', 'Allowed:', 'Got: 3in'],
    ],
    [
      ['--stack', 'nape'],
      ['--stack', 'stacked on a point', 'such as center_waist', 'Got: nape'],
    ],
    [
      ['--style', 'tulip'],
      ['--style', 'no style', 'Allowed: pencil', 'Got: tulip'],
    ],
    [
      ['--style', 'tulip.csv'],
      ['tulip.csv', 'there is no such file', 'Allowed:'],
    ],
    [
      ['--against', 'none'],
      ['--against', 'no published table', 'Allowed:', 'Got: none'],
    ],
    [
      ['--unit', 'ell'],
      ['--unit has no such choice', 'in, cm, mm', 'Got: ell'],
    ],
    [
      ['--style', 'shared-pencil', '--set', 'hem_taper=height/24'],
      ['"height"', 'Did you mean stature?', 'Got: height/24'],
    ],
    [['--repalce'], ['grade has no such option', 'Did you mean --replace?']],
    [
      ['--style', 'shared pencl'],
      ['--style', 'no style', 'Did you mean shared-pencil?', 'Got: shared pencl'],
    ],
    [
      ['--stack', 'side_hmi'],
      ['--stack', 'stacked on a point', 'Did you mean side_hip or side_hem?', 'Got: side_hmi'],
    ],
    [
      ['--against', 'home-mises-1968'],
      ['--against', 'Did you mean home-misses-1968?'],
    ],
    [
      ['--paper', 'lettr'],
      ['--paper', 'Did you mean letter?'],
    ],
    [['--frobnicate'], ['grade has no such option', 'Got: --frobnicate']],
    [['other.csv'], ['grade takes fewer files or names than it was given']],
  ])('with %j', async (more, words) => {
    await expectRefused(['good.csv', '--base', '10', '--out', 'out', ...more], words);
  });

  it('without a base, without a chart', async () => {
    await expectRefused(
      ['good.csv', '--out', 'out'],
      ['--base, good.csv: the chart has several sizes', 'Allowed: 8, 10'],
    );
    await expectRefused(['--base', '10'], ['grade lacks <chart.csv>']);
    await expectRefused(['--out', 'out'], ['grade lacks <chart.csv>', '--base <size>']);
  });

  it.each([
    ['a file', 'file', 'the results go into a folder'],
    ['below a file', 'file/results'],
    ['a folder with a folder in the way', 'blocked', 'a result would replace what is no file'],
  ])('whose results would go to %s', async (_, out, what = 'the results cannot be written') => {
    await expectRefused(
      ['good.csv', '--base', '10', '--out', out],
      [`skirtgrade: --out, ${out}: ${what}. Allowed: `, 'Got: '],
    );
  });

  it('whose results cannot all be written leave none of them', async () => {
    // No file system takes a name of 270 bytes, and the drawings come before the tables.
    place.write('long.csv', chart({}, ['8', '10', '\u6f22'.repeat(90)]));
    for (const out of ['out', 'new/folder'])
      await expectRefused(
        ['long.csv', '--base', '10', '--out', out],
        [`skirtgrade: --out, ${out}: the results cannot be written.`, 'Got: ENAMETOOLONG'],
      );
    expect(existsSync(join(place.path, 'new'))).toBe(false);
  });

  it('of a command that there is not', async () => {
    const { status, stderr } = await place.run('sew');
    expect(status).toBe(2);
    expect(stderr).toContain('there is no command of this name');
    expect((await place.run()).status).toBe(2);
  });
});
