/** What `check`, and `grade` for bare numbers and turned sheets, say and end with. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import demo from '../../size-charts/demo.csv';
import misses2011 from '../../size-charts/standards/astm-d5585-11e1-misses.csv';
import misses1995 from '../../size-charts/standards/astm-d5585-95-misses.csv';
import plus2004 from '../../size-charts/standards/astm-d6960-04-plus.csv';
import plus2016 from '../../size-charts/standards/astm-d6960-16-plus.csv';
import en13402 from '../../size-charts/standards/en-13402-3-women.csv';
import home1968 from '../../size-charts/standards/home-pattern-misses-1968.csv';
import homePre1958 from '../../size-charts/standards/home-pattern-pre-1958.csv';
import jis from '../../size-charts/standards/jis-l-4005-women-a-type.csv';
import survey from '../../size-charts/standards/survey-ansur-1988-women-by-hip.csv';
import { indentedBlocks } from './typed-blocks';
import { typed } from './workplace';
import { main } from '../../src/cli/main';
import { publishedTables } from '../../src/standards/published-tables';

interface Told {
  readonly code: number;
  readonly out: string;
  readonly error: string;
}

/** Runs one call on files that are texts; line breaks of the terminal become blanks. */
async function call(files: Readonly<Record<string, string>>, ...argv: string[]): Promise<Told> {
  const told = { out: '', error: '' };
  const code = await main(argv, {
    out: (text) => void (told.out += text),
    error: (text) => void (told.error += text),
    pathOf: (path) => path,
    exists: (path) => path in files,
    isFolder: () => false,
    filesIn: () => undefined,
    readText: (path) => files[path] ?? '',
    earlier: () => new Map(),
    write: (folder) =>
      Promise.resolve({ folder, names: [], leftovers: [], outdated: [], dropped: [] }),
    color: false,
    progress: () => undefined,
  });
  const flat = (text: string) => text.replace(/\s+/gu, ' ');
  return { code, out: flat(told.out), error: flat(told.error) };
}

const check = (text: string, ...more: string[]) =>
  call({ 'a.csv': text }, 'check', 'a.csv', '--verbose', ...more);

/** One body of the edition that tabulates two. */
function body(kind: string): string {
  const other = kind === 'curvy' ? 'straight' : 'curvy';
  return misses2011
    .split('\n')
    .filter((line) => !line.includes(`girth_${other},`))
    .join('\n')
    .replaceAll(`girth_${kind},`, 'girth,');
}

describe('every published table fed back as a chart', () => {
  const TABLES: Readonly<Record<string, readonly [text: string, name: string]>> = {
    'astm-d5585-11e1-curvy': [body('curvy'), 'ASTM D5585-11e1, curvy body'],
    'astm-d5585-11e1-straight': [body('straight'), 'ASTM D5585-11e1, straight body'],
    'astm-d5585-95': [misses1995, 'ASTM D5585-95'],
    'astm-d6960-04': [plus2004, 'ASTM D6960-04'],
    'astm-d6960-16': [plus2016, 'ASTM D6960/D6960M-16'],
    'en-13402-3': [en13402, 'EN 13402-3:2004'],
    'home-misses-1968': [home1968, 'US home-pattern misses sizing of 1968'],
    'home-pre-1958': [homePre1958, 'US home-pattern sizing before 1958'],
    // Only these four sizes have a waist.
    'jis-l-4005': [jis.replace(/^(\w+(?:,[\d.]+){4}).*$/gmu, '$1'), 'JIS L 4005 (2001)'],
    'ansur-1988': [survey, '1988 survey of US Army women'],
  };

  it('is all there are', () => {
    const usable = publishedTables().filter(({ unusable }) => unusable === undefined);
    expect(Object.keys(TABLES).sort()).toEqual(usable.map(({ id }) => id).sort());
  });

  it.each(Object.entries(TABLES))('%s gives itself and no warning', async (id, [text, name]) => {
    const { code, out } = await check(text);
    expect(code).toBe(0);
    expect(out).toContain('Findings: 0 fail, 0 warning');
    expect(out).toContain(`In the sizes they share your chart is ${name}, cell for cell`);
    expect(/Against ([\w-]+):/u.exec(out)?.[1]).toBe(id);
    // Few tables cover more than a third of the plus sizes of 2016.
    expect(out.match(/Against /gu)).toHaveLength(id === 'astm-d6960-16' ? 2 : 3);
    expect(out.match(/cell for cell/gu)).toHaveLength(1);
  });
});

describe('check', () => {
  it('knows the table behind other names of sizes, and gives reasons and totals', async () => {
    // The demo chart is invented, but its 2 to 18 have the girths of 4 to 20 of ASTM D5585-95. That
    // covers 25 to 36 1/2 of its 25 to 43 1/2 in; ASTM D6960-04 covers 31 1/2 on, 12 of 18 1/2.
    const { code, out } = await check(demo);
    expect(code).toBe(0);
    expect(out).toContain('Findings: 0 fail, 0 warning');
    expect(out).toContain('ASTM D5585-95, cell for cell: 2 to 18, called 4 to 20 there.');
    expect(out).toContain('2 to 18 11 1/2 11 1/2 in all 11 1/2 0 agrees');
    expect(out).toContain("ASTM D6960-04 covers 65 % of the chart's waist range");
    expect(out).not.toContain('straight body');
    expect(out).not.toContain('Against astm-d6960-16');
  });

  it.each([
    ['in', '1/16 in'],
    ['cm', '0.16 cm'],
    ['mm', '1.6 mm'],
  ])('says in %s how near a hip step agrees', async (unit, least) => {
    expect((await check(demo, '--unit', unit)).out).toContain(
      `a quarter of the hip due, ${least} at least`,
    );
  });

  it('warns where the nearest table would label a size otherwise', async () => {
    // Hips that grow 1/2 in for each inch of waist, where every table has about 1 in.
    const chart = '# unit: in\nsize,8,10,12,14,16\nwaist,26,27,28,29,30\nhip,37,37.5,38,38.5,39\n';
    const { code, out } = await check(chart);
    expect(code).toBe(0);
    expect(out.match(/warning range-against-standard/gu)).toHaveLength(1);
    expect(out).toContain('half a hip step of the chart is 0.25 in, so some sizes would change');
  });

  it('says how many steps of the table one step of the chart spans', async () => {
    const chart = '# unit: in\nsize,S,M,L\nwaist,25,28,31\nhip,35.5,38.5,41.5\n';
    const { out } = await check(chart, '--against', 'astm-d5585-95');
    // 4, 6, 8, 10 and then 10, 12, 14.
    expect(out).toContain('S to M 3 3 4 to 10 (3) 3 3 3 0 agrees');
    expect(out).toContain('M to L 3 3 10 to 14 (2) 3 3 3 0 agrees');
  });

  it('fails a chart whose larger sizes are smaller, by name', async () => {
    const chart = '# unit: in\nsize,8,10,12,14,16\nwaist,30,29,28,27,26\nhip,40,39,38,37,36\n';
    const { code, out } = await check(chart);
    expect(code).toBe(1);
    expect(out).toContain(
      'fail larger-is-smaller (size 8-16, waist_girth): larger sizes get smaller: from 8 to 16 the ' +
        'waist falls from 30 in to 26 in',
    );
    expect(out).toContain('from 8 to 16 the hip falls from 40 in to 36 in');
  });

  it('fails a chart with one girth that falls in a step, and passes one listed from large to small', async () => {
    const falling = '# unit: cm\nsize,36,38,40\nwaist,68,72,76\nhip,98,94,106\n';
    expect((await check(falling)).code).toBe(1);
    expect((await check(falling)).out).toContain('from 36 to 38 the hip falls from 98 cm to 94 cm');
    const down = '# unit: cm\nsize,40,38,36\nwaist,76,72,68\nhip,106,102,98\n';
    expect((await check(down)).code).toBe(0);
  });

  it.each([
    [
      '# unit: in\nsize,8,10,12\nwaist,26,270,28\nhip,36,37,38',
      'row 3, column 3 (waist_girth, size 10)',
      '27?',
    ],
    [
      '# unit: cm\nsize;36;38;40\nhip;94;98;102\nwaist;68;72;7,2',
      'row 4, column 4 (waist_girth, size 40)',
      '72?',
    ],
    [
      '# unit: mm\nsize,36,38\nwaist,680,720\nhip,980,1.020',
      'row 4, column 3 (hip_girth, size 38)',
      '1020?',
    ],
    [
      '# unit: in\nsize,8,10,ease\nwaist,26,27,0.5\nhip,36,37,0.5',
      'row 2, column 4 (size ease)',
      '',
    ],
  ])('refuses %j with its cell', async (chart, place, meant) => {
    const { code, out, error } = await check(chart);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(error).toContain(`skirtgrade: a.csv, ${place}: `);
    if (meant !== '') expect(error).toContain(`did you mean ${meant}`);
  });
});

describe('grade', () => {
  const OF_CHART = typed('grade a.csv --base 12 --out /nowhere');

  it.each([
    [demo, ['--round', '0.5'], '--round', '0.5in or 0.5mm'],
    [demo, ['--round', '1/16'], '--round', '1/16in or 1/16mm'],
    [
      '# unit: cm\nsize,10,12\nwaist,64,68\nhip,94,98',
      ['--round', '0.5'],
      '--round',
      '0.5cm or 0.5mm',
    ],
    [demo, ['--paper', 'a4', '--margin', '0.5'], '--margin', '0.5in or 0.5mm'],
    [demo, ['--paper', 'roll=36'], '--paper', '36in or 36mm'],
  ])('%# asks for the unit of %j', async (chart, more, option, readings) => {
    const { code, out, error } = await call({ 'a.csv': chart }, ...OF_CHART, ...more);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(error).toBe(
      `skirtgrade: ${option}: a length does not say its unit. Allowed: ${readings}. ` +
        `Got: ${readings.replace(/(?:in|cm) or .*$/u, '')}. `,
    );
  });

  it('asks for the unit of a tolerance when it marks', async () => {
    const sheet = '# unit: in\npoint,axis,10,12\nfront.side_waist,dx,-1/4,0\n';
    const files = { 'a.csv': demo, 's.csv': sheet };
    const { code, error } = await call(
      files,
      'assess',
      'a.csv',
      's.csv',
      '--base',
      '12',
      '--tolerance',
      '1/16',
    );
    expect(code).toBe(2);
    expect(error).toContain(
      '--tolerance: a length does not say its unit. Allowed: 1/16in or 1/16mm.',
    );
  });
});

describe('The own pattern of the help', () => {
  const help = readFileSync('src/cli/help/own-pattern.txt', 'utf8');
  const block = (first: string) =>
    indentedBlocks(help).find(({ text }) => text.startsWith(first))?.text ?? '';
  const pattern = block('# title: Sorrel skirt');
  const rules = block('# sizes: 8, 10, 12, 14, 16');
  /** Every move and step with its sign turned. */
  const turned = rules.replace(/(?<=,)(-?)(\d\/\d)/gu, (_, sign: string, move: string) =>
    sign === '' ? `-${move}` : move,
  );
  const graded = async (sheet: string) => {
    const files = { 'base.csv': pattern, 'rules.csv': sheet };
    const asked = typed('grade --pattern base.csv --rules rules.csv --verbose');
    return call(files, ...asked);
  };

  it('passes as it stands', async () => {
    const { code, out } = await graded(rules);
    expect(code).toBe(0);
    expect(out).not.toContain('larger');
  });

  it('fails with all signs turned, in the waist that falls from 30 to 26 in', async () => {
    // Half the waist of size 12 is 7 1/2 - 1 in of front and 7 1/2 in of back; two sizes at a quarter
    // inch each are 1/2 in more or less of either: 2 (7 + 8) = 30 in at 8 and 2 (6 + 7) = 26 in at 16.
    const { code, out } = await graded(turned);
    expect(code).toBe(1);
    for (const [piece, from, to] of [
      ['front', '7', '6'],
      ['back', '8', '7'],
    ])
      expect(out).toContain(
        `fail larger-is-smaller (size 8-16, ${piece}, waist): larger sizes get smaller: ` +
          `from 8 to 16 its edge waist falls from ${from} in to ${to} in`,
      );
  });
});
