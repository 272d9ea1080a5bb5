/** Two versions of a style held against each other; the numbers are worked by hand from a flat pattern. */
import { describe, expect, it } from 'vitest';
import { segmentLength } from '../../src/geometry/segment';
import { writtenOutlines } from '../../src/render/written-outlines';
import { rowsOf } from '../csv-tables';
import { FRONT_AND_BACK, evenRules } from '../given/sheets';
import { workplace } from './workplace';

const place = workplace();
place.write('base.csv', FRONT_AND_BACK);
const RULES =
  evenRules('10, 12, 14') +
  evenRules('').split('\n').slice(3).join('\n').replace(/front/gu, 'back');
place.write('rules.csv', RULES);
// The front hem falls an eighth more with each size.
place.write('rules-2.csv', RULES.replace('front,center_hem,0,1/4', 'front,center_hem,0,3/8'));

async function graded(rules: string, out: string, ...more: readonly string[]): Promise<void> {
  const given = ['--pattern', 'base.csv', '--rules', rules, '--out', out, '--quiet', ...more];
  const { stderr } = await place.run('grade', ...given);
  expect(stderr).toBe('');
}
await graded('rules.csv', 'one');
await graded('rules.csv', 'metric', '--unit', 'cm');
await graded('rules.csv', 'fractions', '--fractions');
await graded('rules-2.csv', 'two');

describe('compare', () => {
  it.each([
    ['one', 'one'],
    ['one', 'metric'],
    ['fractions', 'metric'],
  ])('finds nothing between %s and %s', async (before, now) => {
    const { status, stdout } = await place.run('compare', before, now);
    expect(status).toBe(0);
    expect(stdout).toContain(`${before} to ${now}: nothing changed.`);
  });

  it('tells each number that a changed rule moves, whatever the unit', async () => {
    const { stdout } = await place.run('compare', 'metric', 'two', '--out', 'changes');
    expect(stdout).toContain('changed: 1 point, 1 rule');
    const rows = rowsOf(place.read('changes/changes.csv'));
    expect(rows.filter(({ of }) => of === 'point')).toEqual([
      {
        ...{ of: 'point', name: 'front.center_hem', size: '10', value: 'y' },
        ...{ before: '62.865 cm', after: '24.625 in', growth_in: '-0.125' },
      },
      {
        ...{ of: 'point', name: 'front.center_hem', size: '14', value: 'y' },
        ...{ before: '64.135 cm', after: '25.375 in', growth_in: '0.125' },
      },
    ]);
    const signed = place.read('changes/changes.md');
    expect(signed).toContain('front: 1 point moved, most center\\_hem of 10 by 0.12 in (0.32 cm).');
    expect(signed).toContain('| Checked by | Date | Released by | Date |');
  });

  it('draws both versions of the size asked for', async () => {
    await place.run('compare', 'one', 'two', '--size', '14', '--out', 'drawn');
    const drawing = place.read('drawn/changes.svg');
    expect(drawing).toContain('Size 14: two versions');
    expect(drawing).toContain('1 point moved in this size, at most by 0.32 cm along an axis.');
    expect(drawing.match(/data-part="before"/gu)).toHaveLength(2);
    expect(drawing.match(/data-part="after"/gu)).toHaveLength(2);
  });

  it('tells of a square that is cut wider, or more often, though no point moved', async () => {
    const square = (allowance: number, count: number): string =>
      `# unit: cm\n# base: M\n# allowance: ${allowance} cm\npiece,point,x,y,kind,edge,cut\n` +
      `flap,a,0,0,corner,top,${count}\nflap,b,10,0,corner,right,\nflap,c,10,20,corner,low,\n` +
      'flap,d,0,20,corner,left,\n';
    const rules = '# sizes: S, M\npiece,point,step_dx,step_dy\n';
    const still = ['a', 'b', 'c', 'd'].map(
      (at) => `flap,${at},${at === 'a' || at === 'd' ? 0 : 1},0`,
    );
    place.write('flap-rules.csv', rules + still.join('\n'));
    for (const [name, allowance, count] of [
      ['thin', 1, 2],
      ['wide', 2, 4],
    ] as const) {
      place.write(`${name}.csv`, square(allowance, count));
      const given = ['--pattern', `${name}.csv`, '--rules', 'flap-rules.csv', '--quiet'];
      await place.run('grade', ...given, '--out', name);
    }
    const { stdout } = await place.run('compare', 'thin', 'wide', '--out', 'wider');
    const rows = rowsOf(place.read('wider/changes.csv'));
    // In M 10 + 2 by 20 + 2 cm, then 14 by 24; in S a centimeter narrower.
    // A sheet without a title has the name of its file on every drawing; that findings name it is no change.
    expect(rows.map(({ size, before, after }) => [size, before, after])).toEqual([
      ['', 'thin', 'wide'],
      ['S', '66 cm around 242 cm²', '74 cm around 312 cm²'],
      ['M', '68 cm around 264 cm²', '76 cm around 336 cm²'],
      ['', 'Cut 2', 'Cut 4'],
    ]);
    expect(stdout.replace(/\s+/gu, ' ')).toContain('flap: its label said Cut 2, now Cut 4.');
    expect(stdout).not.toContain('Nothing changed');
  });

  it.each([
    [['one', '.'], 'this has no graded-points.csv. Allowed: a folder of results'],
    [['one', 'two', '--size', '11'], 'no such size in common. Allowed: 10, 12, 14. Got: 11'],
  ])('refuses %j', async (args, words) => {
    const { status, stderr, stdout } = await place.run('compare', ...args);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr.replace(/\s+/gu, ' ')).toContain(words);
  });
});

it('a nest is read back from its drawing', () => {
  const outlines = writtenOutlines(place.read('one/nest.svg'));
  expect(outlines.map(({ size, piece }) => `${piece} ${size}`).toSorted()).toEqual(
    ['back', 'front'].flatMap((piece) => ['10', '12', '14'].map((size) => `${piece} ${size}`)),
  );
  // Waist 3 + 4 + 3.5, dart 2 x sqrt(16.25), side sqrt(66.25) + 17, hem 9, center 25 in.
  const [first] = outlines.filter(({ size, piece }) => size === '12' && piece === 'front');
  const long = (first?.segments ?? []).reduce((sum, one) => sum + segmentLength(one), 0);
  const hand = 3 + 3.5 + 2 * Math.sqrt(16.25) + Math.sqrt(1.5 ** 2 + 64) + 17 + 9 + 25;
  expect(long / 25.4).toBeCloseTo(hand, 3);
});
