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
await graded('rules-2.csv', 'two');

describe('compare', () => {
  it.each([
    ['one', 'one'],
    ['one', 'metric'],
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
    expect(signed).toContain('front: 1 point moved, most center\\_hem of 10 by 0.32 cm (0.12 in).');
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
