/** A list of bodies: each its own draft, none lost, and names where the user wrote them alone. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { PDFDocument } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { layersRead } from '../print/printing';
import { chartText } from '../skirts';
import { contents, workplace, typed } from './workplace';

const place = workplace();
const NAMES = ['Ada Quill', 'Bea Quill', 'Cleo Quill'];
const COLUMNS = 'name,waist,hip,waist_to_hip,skirt_length';
const ROWS = ['68,96,20,60', '74.5,101,21,62', '110,118,21,58'];
const list = (names: readonly string[], rows: readonly string[] = ROWS): string =>
  `# unit: cm\n${COLUMNS}\n${rows.map((row, i) => `${names[i] ?? ''},${row}\n`).join('')}`;
/** What the bodies of a list of sizes are called is a size. */
const ofSizes = (sizes: readonly string[], rows: readonly string[]): string =>
  list(sizes, rows).replace('name,', 'size,');
place.write('bodies.csv', list(NAMES));
const PENCIL = ['--style', 'pencil'];

/** The rows of a written table, its header first. */
function table(path: string): readonly string[] {
  return place.read(path).trimEnd().split('\n');
}

describe('a body', () => {
  it('that is a size alone drafts its bytes, in every style that is asked for', async () => {
    const sizes = ['12', '14'];
    place.write('sizes.csv', ofSizes(sizes, ROWS.slice(0, 2)));
    for (const style of ['pencil', 'shared-pencil']) {
      await place.run('draft', 'sizes.csv', '--style', style, '--out', 'sizes');
      for (const [i, label] of sizes.entries()) {
        const cells = (ROWS[i] ?? '').split(',').map((cell) => [Number(cell)]);
        const [waist = [], hip = [], depth = [], length = []] = cells;
        const chart = { waist, hip, waist_to_hip: depth, skirt_length: length };
        place.write('alone.csv', chartText('cm', chart, [label]));
        await place.run('grade', 'alone.csv', '--style', style, '--out', 'alone');
        expect(place.read(`sizes/body-${i + 3}.svg`)).toBe(place.read(`alone/size-${label}.svg`));
        const own = table('sizes/points.csv').filter((row) => row.startsWith(`row ${i + 3},`));
        const alone = table('alone/graded-points.csv').slice(1);
        expect(own).toEqual(alone.map((row) => row.replace(/^[^,]*/u, `row ${i + 3}`)));
      }
    }
  });

  it('has the lines of its size in a range whose rules are those of the quarter method', async () => {
    // Where the lines to lengthen at go is decided for a range, by its shortest and its longest size.
    const range = { waist: [68, 74.5], hip: [96, 101], waist_to_hip: [20, 20], length: [60, 60] };
    place.write('range.csv', chartText('cm', range, ['12', '14']));
    place.write('same.csv', ofSizes(['12', '14'], ['68,96,20,60', '74.5,101,20,60']));
    await place.run('grade', 'range.csv', '--base', '12', ...PENCIL, '--out', 'range');
    await place.run('draft', 'same.csv', ...PENCIL, '--out', 'of-range');
    expect(place.read('of-range/body-3.svg')).toBe(place.read('range/size-12.svg'));
    const own = table('of-range/points.csv').filter((row) => row.startsWith('row 4,'));
    const graded = table('range/graded-points.csv').filter((row) => row.startsWith('14,'));
    expect(own).toEqual(graded.map((row) => row.replace('14,', 'row 4,')));
  });

  it('may stand in a column, as a size does in a chart, or have no name', async () => {
    await place.run('draft', 'bodies.csv', ...PENCIL, '--out', 'in-rows');
    const columns = ['waist', 'hip', 'waist_to_hip', 'skirt_length'].map(
      (name, c) => `${name},${ROWS.map((row) => row.split(',')[c]).join(',')}`,
    );
    place.write(
      'turned.csv',
      `# unit: cm\nmeasurement,${NAMES.join(',')}\n${columns.join('\n')}\n`,
    );
    await place.run('draft', 'turned.csv', ...PENCIL, '--out', 'in-columns');
    expect(place.read('in-columns/body-2.svg')).toBe(place.read('in-rows/body-3.svg'));
    const nameless = list([]).replace('name,', '').replace(/^,/gmu, '');
    place.write('nameless.csv', nameless);
    const { status } = await place.run('draft', 'nameless.csv', ...PENCIL, '--out', 'nameless');
    expect(status).toBe(0);
    expect(table('nameless/finished-measurements.csv')).toEqual(
      table('in-rows/finished-measurements.csv'),
    );
    expect(place.read('nameless/body-3.svg')).toContain('Body in row 3');
  });

  it('measures body plus ease, a row a body', async () => {
    await place.run('draft', 'bodies.csv', '--style', 'shared-pencil', '--out', 'sums');
    const [header = '', ...rows] = table('sums/finished-measurements.csv');
    const cells = rows.map((row) => row.split(','));
    // The style brings 1 cm of ease to the waist and 4 cm to the hip.
    const column = (name: string): number[] =>
      cells.map((row) => Number(row[header.split(',').indexOf(name)]));
    expect(column('waist_cm')).toEqual([69, 75.5, 111]);
    expect(column('hip_cm')).toEqual([100, 105, 122]);
    expect(column('center_front_length_cm')).toEqual([60, 62, 58]);
  });
});

describe('a body of which something is not known', () => {
  it('walks as one of a list without that column, but a length that is cut is not made up', async () => {
    const known = `# unit: cm\n${COLUMNS},stature,knee_girth\n`;
    place.write(
      'half-known.csv',
      `${known}Ada,68,96,20,60,172,\nBea,68,96,20,60,  ,37\nCleo,68,96,20,60,,\nDee,68,96,20,,172,37\nEve,68,96,20,60,-,37\n`,
    );
    // Row 3 without a column for the knee, row 4 without one for the stature, row 5 without both.
    const alone = [
      `# unit: cm\n${COLUMNS},stature\nAda,68,96,20,60,172\n`,
      `# unit: cm\n${COLUMNS},knee_girth\nBea,68,96,20,60,37\n`,
      `# unit: cm\n${COLUMNS}\nCleo,68,96,20,60\n`,
    ];
    for (const more of [[], ['--stream', '--points', '--workers', '0']]) {
      const call = ['draft', 'half-known.csv', ...more, '--out', 'half-known', '--replace'];
      expect((await place.run(...call)).status).toBe(1);
      const refused = table('half-known/refused.csv').slice(1);
      expect(refused.map((row) => row.slice(0, 3))).toEqual(['6,5', '7,6']);
      for (const [i, text] of alone.entries()) {
        place.write('one.csv', text);
        await place.run('draft', 'one.csv', ...more, '--out', 'one', '--replace');
        for (const file of ['points.csv', 'finished-measurements.csv']) {
          const own = table(`half-known/${file}`).filter((row) => row.startsWith(`row ${i + 3},`));
          const expected = table(`one/${file}`).slice(1);
          expect(own.map((row) => row.replace(/^row \d+/u, 'row 3'))).toEqual(expected);
        }
      }
    }
  });

  it('is told of by the tables that are there, and by no drawing', async () => {
    place.write('nobody.csv', `# unit: cm\n${COLUMNS}\nAda,x,96,20,60\n`);
    place.write('bodies-chart.csv', chartText('cm', { waist: [68], hip: [96] }, ['36']));
    const { stdout } = await place.run(
      ...typed('draft nobody.csv --nearest bodies-chart.csv --out nobody'),
    );
    expect(stdout).toContain('findings.csv, refused.csv\n');
    expect(stdout).not.toMatch(/body-|nearest/u);
  });
});

describe('a list out of a spreadsheet', () => {
  it('sets aside a body with a cell below no heading, which may be the end of a number', async () => {
    const rows = 'Ada,68,96,20,60,5\nBea,74,101,21,62,\nCleo,80,106,21,62\n';
    place.write('parted.csv', `# unit: cm\n${COLUMNS}\n${rows}`);
    place.write('unnamed.csv', '# unit: cm\nname,waist,,hip\nAda,68,x,96\nBea,74,,101\n');
    for (const more of [[], ['--stream', '--workers', '0']]) {
      await place.run('draft', 'parted.csv', ...PENCIL, ...more, '--out', 'parted', '--replace');
      expect(table('parted/refused.csv').slice(1)).toEqual([
        expect.stringMatching(/^3,6,,"a cell stands below no heading\. .* Got: 5\."$/u),
      ]);
      await place.run('draft', 'unnamed.csv', ...PENCIL, ...more, '--out', 'parted', '--replace');
      expect(table('parted/refused.csv').slice(1)).toEqual([expect.stringMatching(/^3,3,,/u)]);
    }
  });

  it('calls its bodies by their names, whatever stands before them, and tells two of one name apart', async () => {
    place.write(
      'orders.csv',
      '# unit: cm\nOrder No,Customer Name,waist,hip\n12,Ada Quill,68,96\n12,Bea Quill,74,101\n14,Ada Quill,80,104\n',
    );
    await place.run('draft', 'orders.csv', ...PENCIL, '--out', 'orders');
    expect(table('orders/drafts.csv').map((row) => row.split(',')[1])).toEqual([
      ...['name', 'Ada Quill', 'Bea Quill', 'Ada Quill'],
    ]);
    const words = ['3', '4', '5'].map(
      (row) => /data-layer="([^"]*)/u.exec(place.read(`orders/body-${row}.svg`))?.[1],
    );
    expect(words).toEqual(['Ada Quill, row 3', 'Bea Quill', 'Ada Quill, row 5']);
  });

  it('sets aside figures made of its bodies, in any list of bodies, and drafts a person called so by a letter more', async () => {
    // Words of our own choice: no source.
    const words = ['AVERAGE:', 'Mean (cm)', 'Std. dev.', 'Grand total', 'Median of 3 bodies'];
    const others = ['Tolerance', 'Max', '95th percentile', 'Ease'];
    const persons = ['Max B.', 'Meany', 'Ada Page', '12'];
    const names = [...words, ...others, ...persons];
    place.write(
      'summed.csv',
      list(
        names,
        names.map(() => ROWS[0] ?? ''),
      ),
    );
    // Where a body has no name, beside it.
    const beside =
      'name,no,waist,hip\nAda,1,68,96\n,Average,71,98\nBea,2,74,100\n,status ok,74,100\n';
    place.write('beside.csv', `# unit: cm\n${beside}`);
    for (const more of [[], ['--stream', '--workers', '0']]) {
      const run = await place.run(
        'draft',
        'summed.csv',
        ...PENCIL,
        ...more,
        '--out',
        'summed',
        '--replace',
      );
      expect(run.status).toBe(1);
      const [, ...refused] = table('summed/refused.csv');
      expect(refused.map((row) => row.split(',')[0])).toEqual(
        [...words, ...others].map((_, i) => `${i + 3}`),
      );
      // It may be a name after all.
      expect(refused.join('\n')).toContain('as in ""Max B.""');
      expect(refused.join('\n')).not.toMatch(/Got|AVERAGE/u);
      await place.run('draft', 'beside.csv', ...PENCIL, ...more, '--out', 'beside', '--replace');
      expect(table('beside/refused.csv').slice(1)).toEqual([expect.stringMatching(/^4,,/u)]);
    }
    const column = 'measurement,Ada,Average,Bea\nwaist,68,71,74\nhip,96,98,101\n';
    place.write('columns.csv', `# unit: cm\n${column}`);
    await place.run('draft', 'columns.csv', ...PENCIL, '--out', 'columns');
    expect(table('columns/refused.csv').slice(1)).toEqual([expect.stringMatching(/^,3,/u)]);
  });

  it('is told of --stream where it is too long to be read as a whole', async () => {
    // The bound of cells is the engine's own: 500,000.
    place.write('long.csv', `# unit: cm\nname,waist,hip,a,b\n${'x,70,96,1,2\n'.repeat(100_000)}`);
    const { status, stderr } = await place.run('draft', 'long.csv');
    expect([status, stderr]).toEqual([2, expect.stringContaining('or --stream')]);
  });

  it('sets aside a body whose name begins as a remark does, and tells of a remark', async () => {
    const rows = '#1001,70,96\n# measured by 2 of us\nAda,72,98\n"#1002, twice",70,96\n';
    place.write('numbered.csv', `# unit: cm\nname,waist,hip\n${rows}Bea,74,100\n`);
    for (const [more, also] of [
      [[], []],
      [['--stream', '--workers', '0'], ['4']],
    ] as const) {
      const call = ['draft', 'numbered.csv', ...PENCIL, ...more, '--out', 'numbered', '--replace'];
      const { status, stdout } = await place.run(...call);
      expect(status).toBe(1);
      const refused = table('numbered/refused.csv').slice(1);
      expect(refused.map((row) => row.split(',')[0])).toEqual(['3', ...also, '6']);
      if (also.length === 0) expect(stdout).toContain('Not read: numbered.csv row 4.');
    }
    place.write('sizes-of.csv', chartText('cm', { waist: [72, 76], hip: [98, 102] }, ['36', '38']));
    const { stdout } = await place.run(...typed('coverage sizes-of.csv --bodies numbered.csv'));
    expect(stdout).toContain('2 set aside');
    expect(stdout).toContain('Not read: numbered.csv row 4.');
  });

  it('sets aside a body with a name that cannot be written, and refuses a heading that cannot', async () => {
    const names = ['Ada', 'Be\u0001a', '\u202EQuill', 'x'.repeat(2_001)];
    place.write(
      'unseen.csv',
      list(
        names,
        names.map(() => ROWS[0] ?? ''),
      ),
    );
    for (const more of [[], ['--stream', '--workers', '0']]) {
      const call = ['draft', 'unseen.csv', ...PENCIL, ...more, '--out', 'unseen', '--replace'];
      expect((await place.run(...call)).status).toBe(1);
      expect(table('unseen/refused.csv').slice(1)).toEqual([
        expect.stringMatching(/^4,,,.*Got: \\u0001\."$/u),
        expect.stringMatching(/^5,,,.*Got: \\u202E\."$/u),
        expect.stringMatching(/^6,,,.*too many characters.*$/u),
      ]);
    }
    place.write('turned.csv', '# unit: cm\nmeasurement,Ada,Be\u0001a\nwaist,68,74\nhip,96,101\n');
    await place.run('draft', 'turned.csv', ...PENCIL, '--out', 'turned');
    expect(table('turned/refused.csv').slice(1)).toEqual([expect.stringMatching(/^,3,,/u)]);
    place.write('heading.csv', list(['Ada']).replace('skirt_length', 'skirt_length\u0001'));
    expect((await place.run('draft', 'heading.csv')).stderr).toContain('row 2, column 5');
  });

  it('is refused as a whole where another header stands among its bodies', async () => {
    const rows = 'Ada,68,96,20,60\nname,hip,waist,waist_to_hip,skirt_length\nBea,101,74,21,62\n';
    place.write('turned.csv', `# unit: cm\n${COLUMNS}\n${rows}`);
    const { status, stderr } = await place.run('draft', 'turned.csv', '--out', 'turned');
    expect(status).toBe(2);
    expect(stderr.replace(/\s+/gu, ' ')).toContain(
      'turned.csv, row 4: a header stands among the bodies',
    );
  });

  it('tells no name of it where it is no list of bodies', async () => {
    place.write(
      'foreign.csv',
      '# unit: cm\nName,Taille,Becken\nAda Quill,68,96\nBea Quill,74,101\n',
    );
    const { status, stderr } = await place.run('draft', 'foreign.csv', '--out', 'foreign');
    expect(status).toBe(2);
    expect(stderr).not.toContain('Quill');
  });
});

describe('a row that cannot be used', () => {
  const bad = [
    ['x,96,20,60', '3,2,waist_girth,"a measurement is not a number'],
    ['68,,20,60', '3,3,hip_girth,"a measurement is missing'],
    ['27,39,20,60', "3,2,waist_girth,waist_girth is no adult's in centimeters; in inches it would"],
    ['68,96,,60', '3,4,waist_to_hip,"a measurement is missing'],
    ['68,96,20 in,60', '3,4,waist_to_hip,"a cell is in inches, its chart in centimeters'],
    ['68,96,20,-60', '3,5,skirt_length,"a measurement is not above zero'],
  ] as const;

  it.each(bad)(
    '%s is set aside with place and reason, and the others go on',
    async (row, words) => {
      place.write('bad.csv', list(NAMES, [row, ...ROWS.slice(1)]));
      const call = ['draft', 'bad.csv', ...PENCIL, '--out', 'bad'];
      const { status, stdout, stderr } = await place.run(...call);
      expect([status, stderr]).toEqual([1, '']);
      expect(stdout).toContain('3 bodies, 2 drafted');
      const [, refused = '', ...others] = table('bad/refused.csv');
      expect(refused.startsWith(words), refused).toBe(true);
      expect(others).toEqual([]);
      expect(table('bad/drafts.csv').map((line) => line.split(',')[0])).toEqual([
        ...['body', 'row 4', 'row 5'],
      ]);
      expect(readdirSync(join(place.path, 'bad'))).not.toContain('body-3.svg');
    },
  );

  it('is none where the list as a whole is wrong: that is refused, and nothing is written', async () => {
    const refusals = [
      [list(NAMES).replace('# unit: cm\n', ''), [], 'does not say in which unit'],
      [list(NAMES).replace(',hip,', ',head,'), [], 'no row hip_girth'],
      [list(NAMES), ['--set', 'hip_eas=2 cm'], 'Did you mean hip_ease?'],
      [list(NAMES), ['--rows', '3,9'], 'row 3 to row 5, by their numbers. Got: 9.'],
      ['', [], 'the list of bodies is empty'],
    ] as const;
    for (const [text, more, words] of refusals) {
      place.write('whole.csv', text);
      const { status, stdout, stderr } = await place.run(
        ...['draft', 'whole.csv', ...PENCIL, ...more, '--out', 'whole'],
      );
      expect([status, stdout]).toEqual([2, '']);
      expect(stderr).toContain(words);
      expect(readdirSync(place.path)).not.toContain('whole');
    }
  });
});

describe('names', () => {
  const print = [...typed('--paper a0 --booklet none --rows'), '3,row 4'];

  it('stand in drafts.csv, on the drawing and the sheets of their body, and nowhere else', async () => {
    const rows = list(NAMES, ['68,96,20,60', ...ROWS.slice(1)]);
    place.write('named.csv', `${rows}# measured by Ada Quill\n`);
    const { stdout, stderr } = await place.run(
      ...['draft', 'named.csv', ...PENCIL, ...print, '--verbose', '--out', 'named'],
    );
    expect(stdout + stderr).not.toContain('Quill');
    expect(stdout).toContain('Not read: named.csv row 6.');
    expect(place.read('named/findings.csv')).toContain('not read in row 6');
    const files = contents(join(place.path, 'named'));
    const having = [...files].filter(([, text]) => text.includes('Quill')).map(([path]) => path);
    expect(having.map((path) => path.replace(/^.*\//u, ''))).toEqual([
      ...['body-3.svg', 'body-4.svg', 'drafts.csv'],
    ]);
    expect(place.read('named/body-3.svg')).not.toContain('Bea');
    expect(place.read('named/body-3.svg')).not.toMatch(/Size|Base/u);
    const pdf = await PDFDocument.load(readFileSync(join(place.path, 'named/body-3-print-a0.pdf')));
    expect(layersRead(pdf).names[0]).toBe('Ada Quill');
    expect([...files.keys()].some((path) => /named\/.*(?:Ada|Quill)/u.test(path))).toBe(false);
  });

  it('are left out with --anonymous, and so is what was typed in a wrong cell', async () => {
    place.write(
      'private.csv',
      list(['Ada Quill', 'Bea Quill'], ['Ada Quill,Cy Quill,20,60', ...ROWS]),
    );
    const { stdout, stderr } = await place.run(
      ...['draft', 'private.csv', ...PENCIL, '--anonymous', '--json', '--out', 'private'],
    );
    expect(stdout + stderr).not.toContain('Quill');
    for (const [path, text] of contents(join(place.path, 'private')))
      expect(text.includes('Quill'), path).toBe(false);
    expect(place.read('private/body-4.svg')).toContain('Body in row 4');
  });

  it('that the font of printed files lacks give way to the row, and a line says so', async () => {
    place.write('letters.csv', list(['\u674e', 'Bea Quill'], ROWS.slice(0, 2)));
    const { status, stdout } = await place.run(
      ...['draft', 'letters.csv', ...PENCIL, ...print, '--out', 'letters'],
    );
    expect(status).toBe(0);
    expect(stdout).toMatch(/font lacks letters of\s+their names: row 3/u);
    for (const row of [3, 4]) {
      const bytes = readFileSync(join(place.path, `letters/body-${row}-print-a0.pdf`));
      expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
    }
  });
});

describe('--nearest', () => {
  it('refuses a bare length that list and chart would read in units of their own', async () => {
    place.write('inches.csv', chartText('in', { waist: [27, 29], hip: [38, 40] }, ['12', '14']));
    const call = ['draft', 'bodies.csv', ...PENCIL, '--nearest', 'inches.csv', '--out', 'bare'];
    const { status, stderr } = await place.run(...call, '--set', 'hip_ease=2');
    expect(status).toBe(2);
    expect(stderr.replace(/\s+/gu, ' ')).toContain(
      'hip_ease is a length without a unit: bodies.csv is in centimeters and inches.csv in inches',
    );
    expect((await place.run(...call, '--set', 'hip_ease=2 in')).status).not.toBe(2);
  });

  it('tells size, ease left and what is beyond the tolerance, as a hand works it out', async () => {
    place.write('sizes.csv', chartText('cm', { waist: [68, 74], hip: [96, 102] }, ['12', '14']));
    const rows = ['68,96', '69.5,97', '71,99', '80,102', '60,90', '74,107'];
    place.write(
      'orders.csv',
      `# unit: cm\nname,waist,hip\n${rows.map((row) => `x,${row}\n`).join('')}`,
    );
    const { stdout } = await place.run(
      ...typed('draft orders.csv --style shared-pencil --nearest sizes.csv --out near'),
    );
    const [header = '', ...found] = table('near/nearest.csv');
    const at = (name: string) => header.split(',').indexOf(name);
    const cells = found.map((row) => row.split(','));
    // Ease 1 cm and 4 cm; tolerances 2 cm and 4 cm, at the larger side of the waist no more than the ease.
    const column = (name: string) => cells.map((row) => row[at(name)]);
    expect(column('size')).toEqual(['12', '12', '14', '14', '12', '14']);
    expect(column('fits')).toEqual(['yes', 'no', 'no', 'no', 'no', 'no']);
    expect(column('waist_off_cm')).toEqual(['0', '1.5', '-3', '6', '-8', '0']);
    expect(column('waist_ease_left_cm')).toEqual(['1', '-0.5', '4', '-5', '9', '1']);
    expect(column('waist_beyond_cm')).toEqual(['0', '0.5', '-1', '5', '-6', '0']);
    expect(column('hip_ease_left_cm')).toEqual(['4', '3', '7', '4', '10', '-1']);
    expect(column('hip_beyond_cm')).toEqual(['0', '0', '0', '0', '-2', '1']);
    expect(column('waist_made_to_measure_cm')).toEqual(['0', '1.5', '-3', '6', '-8', '0']);
    expect(column('made_to_measure')).toEqual(['same', ...Array<string>(5).fill('differs')]);
    expect(stdout).toMatch(/1 of 6 fit a size of sizes\.csv; for 1 made to measure/u);
    expect(stdout).toMatch(/row 6: 14 is nearest, 5 cm too tight at the waist/u);
  });
});

describe('a remark that names another unit', () => {
  const REASON = 'a remark names another unit than';
  const LIST = 'name,waist,hip,waist_to_hip,remark\n';
  it.each([
    ['cm', '68,96,20,measured in inches', '68,96,20,'],
    ['cm', '68,96,20,in', '68,96,20,cm'],
    ['cm', '68,96,20,imperial', '68,96,20,metric'],
    // A length in a remark is no unit of the others.
    ['cm', '68,96,20,taken in inch', '68,96,20,hem 2 inches longer'],
    ['in', '28,38,8,all in cm', '28,38,8,zip 20 cm'],
  ])('sets its body aside in a list in %s: %s', async (unit, wrong, right) => {
    place.write('remarks.csv', `# unit: ${unit}\n${LIST}A,${wrong}\nB,${right}\n`);
    const { status } = await place.run('draft', 'remarks.csv', '--out', 'remarks', '--replace');
    expect(status).toBe(1);
    const refused = table('remarks/refused.csv').slice(1);
    expect(refused).toHaveLength(1);
    expect(refused[0]).toMatch(new RegExp(`^3,5,.*${REASON}`, 'u'));
  });

  it.each([
    ['beside its sizes', 'size,waist,hip,remark\n8,60,88,measured in inches\n10,64,92,\n', 3, 4],
    ['below its sizes', 'measurement,8,10\nwaist,60,64\nhip,88,92\nremark,,in inches\n', 5, 3],
  ])('refuses a chart in which it stands %s', async (_where, rows, row, column) => {
    place.write('remarked.csv', `# unit: cm\n${rows}`);
    const { status, stderr } = await place.run('grade', 'remarked.csv', '--base', '8');
    expect(status).toBe(2);
    expect(stderr.replace(/\s+/gu, ' ')).toContain(`row ${row}, column ${column}`);
    expect(stderr.replace(/\s+/gu, ' ')).toContain(`${REASON} centimeters`);
  });
});
