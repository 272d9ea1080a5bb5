/** Two charts, patterns or rule sheets held against each other; all numbers are worked by hand. */
import { describe, expect, it } from 'vitest';
import { rowsOf } from '../csv-tables';
import { FRONT_AND_BACK, evenRules } from '../given/sheets';
import { workplace } from './workplace';

const place = workplace();
const CHART = `# title: Quill skirt
# unit: in
measurement,10,12,14
waist_girth,28,30,32
hip_girth,38,40,42
`;
const RULES = `# unit: in\n# base: 12\n${evenRules('10, 12, 14')}`;
const DRAWN = FRONT_AND_BACK.replace(
  '# base',
  '# allowance: 1/2 in\n# title: Sorrel skirt\n# base',
);
const files: Readonly<Record<string, string>> = {
  'chart.csv': CHART,
  'wider.csv': CHART.replace('Quill', 'Sedge').replace('38,40,42', '38,40,42 1/2'),
  'longer.csv': CHART.replace(/14$/mu, '14,16').replace('30,32', '30,32,34').replace('42', '42,44'),
  // An inch is 2.54 cm (international yard and pound agreement of 1959).
  'metric.csv':
    '# title: Quill skirt\n# unit: cm\nmeasurement,10,12,14\n' +
    'waist_girth,71.12,76.2,81.28\nhip_girth,96.52,101.6,106.68\n',
  'base.csv': DRAWN,
  'up.csv': DRAWN.replace('# unit', '# y: up\n# unit').replace(
    /^(\w+,\w+,[\d.]+),([1-9][\d.]*)/gmu,
    '$1,-$2',
  ),
  'deeper.csv': DRAWN.replaceAll('9,25', '9,26').replaceAll('0,25', '0,26'),
  'marked.csv': DRAWN.replace('front,side_hem', 'front,mark,9,16,corner,,\nfront,side_hem'),
  'notched.csv': DRAWN.replace('front,side_hem', 'front,mark,9,16,notch,,\nfront,side_hem'),
  'rules.csv': RULES,
  // The same steps as moves from the base.
  'moves.csv':
    '# unit: in\n# base: 12\n# sizes: 10, 12, 14\npoint,axis,10,14\n' +
    evenRules('')
      .split('\n')
      .slice(3, -1)
      .map((line) => line.split(','))
      .flatMap(([piece = '', point = '', x = '', y = '']) => [
        `${piece}.${point},dx,${x === '0' ? 0 : `-${x}`},${x}`,
        `${piece}.${point},dy,${y === '0' ? 0 : `-${y}`},${y}`,
      ])
      .join('\n'),
  'rules-2.csv': RULES.replace('front,side_hip,1/4', 'front,side_hip,3/8'),
  'bare.csv': evenRules('10, 12, 14'),
  'bare-2.csv': evenRules('10, 12, 14').replace('front,side_hip,1/4', 'FRONT,Side hip,3/8'),
  'shares.csv': '# unit: in\npoint,dx,dy\nfront.side,1/4 waist_girth,0\n',
  'shares-up.csv': '# unit: in\n# y: up\npoint,dx,dy\nfront.side,1/4 waist_girth,1/8 hip_girth\n',
  'shares-down.csv': '# unit: in\npoint,dx,dy\nfront.side,1/4 waist_girth,1/8 hip_girth\n',
};
for (const [name, text] of Object.entries(files)) place.write(name, text);

async function changes(before: string, now: string, ...more: readonly string[]) {
  const out = `of-${before}-${now}`;
  const { status, stdout, stderr } = await place.run('compare', before, now, '--out', out, ...more);
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  return {
    words: stdout.replace(/\s+/gu, ' '),
    rows: rowsOf(place.read(`${out}/changes.csv`)),
    out,
  };
}

describe('comparing files', () => {
  it.each(Object.keys(files).filter((name) => !name.startsWith('bare')))(
    'finds nothing between %s and itself',
    async (name) => {
      const { words, rows } = await changes(name, name);
      expect(words).toContain('nothing changed.');
      expect(rows).toEqual([]);
    },
  );

  it.each([
    ['chart.csv', 'metric.csv'],
    ['base.csv', 'up.csv'],
    ['rules.csv', 'moves.csv'],
  ])('finds nothing between %s and %s, which say the same', async (before, now) => {
    expect((await changes(before, now)).rows).toEqual([]);
  });

  it('tells each measure of a chart that changed, and its title', async () => {
    const { words, rows } = await changes('chart.csv', 'wider.csv');
    expect(words).toContain('changed: 1 title, 1 measure.');
    expect(words).toContain('The title was Quill skirt, now Sedge skirt.');
    expect(words).toContain('hip_girth: length of 14 was 42 in, now 42.5 in.');
    expect(rows.at(-1)).toEqual({
      ...{ of: 'measure', name: 'hip_girth', size: '14', value: 'length' },
      ...{ before: '42 in', after: '42.5 in', growth_in: '0.5' },
    });
  });

  it('tells a size that came by its name, and its numbers in the table', async () => {
    const { words, rows } = await changes('chart.csv', 'longer.csv');
    expect(words).toContain('- Sizes added: 16. Written');
    expect(rows.map(({ of, name, size, after }) => [of, name, size, after])).toEqual([
      ['size', '16', '', '16'],
      ['measure', 'waist_girth', '16', '34 in'],
      ['measure', 'hip_girth', '16', '44 in'],
    ]);
  });

  it('tells points and edges of a pattern, and draws it over the old one', async () => {
    const { words, rows, out } = await changes('base.csv', 'deeper.csv');
    // Both hem points of both pieces an inch lower; the side and the center an inch longer, the hem as it was.
    expect(words).toContain('changed: 4 points, 4 edges.');
    expect(
      rows.map(({ name, value, growth_in }) => `${name ?? ''} ${value ?? ''} ${growth_in ?? ''}`),
    ).toEqual(
      ['front', 'back'].flatMap((piece) => [
        `${piece}.side_hem y 1`,
        `${piece}.center_hem y 1`,
        `${piece}.side length 1`,
        `${piece}.center_${piece} length 1`,
      ]),
    );
    expect(place.read(`${out}/changes.svg`)).toContain('Base size: two versions');
  });

  it('tells what a point has become though it lies where it lay', async () => {
    const { rows } = await changes('marked.csv', 'notched.csv');
    expect(rows.map(({ name, value, before, after }) => [name, value, before, after])).toEqual([
      ['front.mark', 'kind', 'corner', 'notch'],
    ]);
  });

  it('tells the moves of a rule that changed', async () => {
    const { words, rows } = await changes('rules.csv', 'rules-2.csv');
    expect(words).toContain(
      'front: 1 rule changed, most side_hip dx of 10: was -0.25 in, now -0.375 in.',
    );
    expect(rows.map(({ size, value, growth_in }) => [size, value, growth_in])).toEqual([
      ['10', 'dx', '-0.125'],
      ['14', 'dx', '0.125'],
    ]);
  });

  it('takes unit, base and names of rules from their pattern', async () => {
    const { rows } = await changes('bare.csv', 'bare-2.csv', '--pattern', 'base.csv');
    expect(rows.map(({ name, before, after }) => [name, before, after])).toEqual([
      ['front.side_hip', '-0.25 in', '-0.375 in'],
      ['front.side_hip', '0.25 in', '0.375 in'],
    ]);
  });

  it('tells a formula whose direction was turned', async () => {
    const { rows } = await changes('shares-down.csv', 'shares-up.csv');
    expect(rows.map(({ name, value, before, after }) => [name, value, before, after])).toEqual([
      ['front.side', 'dy', '1/8 hip_girth', 'minus (1/8 hip_girth)'],
    ]);
  });

  it('holds a drawing and its rule table against those of another', async () => {
    place.write(
      'base-rules.csv',
      `${RULES}${evenRules('').split('\n').slice(3).join('\n').replace(/front/gu, 'back')}`,
    );
    for (const [out, sheet] of [
      ['one', 'base.csv'],
      ['two', 'deeper.csv'],
    ] as const)
      await place.run(
        'grade',
        '--pattern',
        sheet,
        '--rules',
        'base-rules.csv',
        '--dxf',
        '--quiet',
        '--out',
        out,
      );
    const same = await place.run('compare', 'one/pattern.dxf', 'one/pattern.dxf');
    expect(same.stdout).toContain('nothing changed.');
    const { stdout } = await place.run(
      'compare',
      'one/pattern.dxf',
      'two/pattern.dxf',
      '--out',
      'drawn',
    );
    const rows = rowsOf(place.read('drawn/changes.csv'));
    const lengths = rows.filter(({ of, value }) => of === 'edge' && value === 'length');
    expect(lengths.map(({ growth_cm }) => Number(growth_cm))).toEqual([2.54, 2.54, 2.54, 2.54]);
    expect(rows.filter(({ of }) => of === 'rule')).toEqual([]);
    expect(stdout).toContain('4 edges');
  });

  it.each([
    [
      ['chart.csv', 'rules.csv'],
      'one is a chart, the other a rule sheet. Allowed: two versions of one',
    ],
    [['bare.csv', 'bare.csv'], 'does not say its unit. Allowed: columns such as dx_in or dx_cm'],
    [['bare.csv', 'bare.csv'], 'or --pattern'],
    [
      ['chart.csv', 'chart.csv', '--pattern', 'base.csv'],
      'for two rule sheets, and this is a chart',
    ],
    [['chart.csv', '.'], 'one is a folder of results, the other a file'],
    [['.', '.', '--pattern', 'base.csv'], 'the option is for two rule sheets'],
    [
      ['chart.csv', 'chart.csv', '--size', '12'],
      'Allowed: two folders of results to draw a size of',
    ],
    [['chart.csv', 'missing.csv'], 'there is no such file'],
  ])('refuses %j', async (args, words) => {
    const { status, stderr, stdout } = await place.run('compare', ...args);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr.replace(/\s+/gu, ' ')).toContain(words);
  });
});
