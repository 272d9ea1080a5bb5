/** Whom a size fits, at the ends of its tolerance and where there is no ease: sums by hand. */
import { describe, expect, it } from 'vitest';
import type { FitRules } from '../../src/bodies/fit';
import { fittedSize, misfit, missOf, placeIn } from '../../src/bodies/fit';
import { toMillimeters } from '../../src/units';
import { workplace } from '../cli/workplace';

const place = workplace();
const inches = (value: number): number => toMillimeters(value, 'in');

/** The chart of the README. */
const CHART =
  '# unit: in\nmeasurement,6,8,10,12,14\nwaist_girth,26 1/2,27 1/2,29,30 1/2,32\n' +
  'hip_girth,36 1/2,37 1/2,39,40 1/2,42\nwaist_to_hip,7 3/4,7 3/4,8,8,8 1/4\n';

describe('a body in a size', () => {
  it('fits at the very end of a tolerance in inches', () => {
    const rules: FitRules = {
      waist: { ease: inches(3 / 8), tolerance: inches(3 / 4), give: 0 },
      hip: { ease: inches(1.5), tolerance: inches(1.5), give: 0 },
    };
    for (const hip of [36.5, 37.5, 38.5, 39, 40.5, 41, 42, 43.5]) {
      const size = fittedSize({ label: 'one', waist: inches(30.5), hip: inches(hip) }, rules);
      for (const waist of [30.5, 30.5 + 3 / 8, 30.5 - 3 / 4])
        for (const off of [-1.5, 0, 1.5]) {
          const body = { waist: inches(waist), hip: inches(hip + off) };
          expect(placeIn([size], body)).toBe(0);
          expect(misfit(body, size)).toBeLessThanOrEqual(1);
        }
      const wider = { waist: inches(30.5), hip: inches(hip + 1.5 + 1 / 64) };
      expect(placeIn([size], wider)).not.toBe(0);
    }
  });

  it('misses by more the tighter it is, also without any ease', () => {
    const tolerance = { larger: 0, smaller: 20 };
    expect([0, 5, 20, 170].map((tight) => missOf(700 + tight, 700, tolerance))).toEqual([
      0, 1.25, 2, 9.5,
    ]);
    expect([10, 20, 30].map((loose) => missOf(700 - loose, 700, tolerance))).toEqual([0.5, 1, 1.5]);
  });

  it.each([
    // A quarter of an inch too tight in the one, 1 1/4 in and more off in the others.
    ['32 1/4,42', '14'],
    ['33,44', '14'],
    ['29 1/4,39', '10'],
    ['27 5/8,37 1/2', '8'],
  ])('of %s is nearest to %s in a style without ease', async (girths, label) => {
    place.write('chart.csv', CHART);
    place.write('one.csv', `# unit: in\nwaist_girth,hip_girth,waist_to_hip\n${girths},8\n`);
    const { status, stdout } = await place.run(
      ...['draft', 'one.csv', '--nearest', 'chart.csv', '--style', 'pencil', '--out', 'out'],
      '--replace',
    );
    expect(status).toBeLessThanOrEqual(1);
    expect(stdout).toContain(`${label} is nearest`);
  });

  it('is counted at the end of a tolerance', async () => {
    place.write(
      'twelve.csv',
      '# unit: in\nmeasurement,12\nwaist_girth,30 1/2\nhip_girth,40 1/2\nwaist_to_hip,8\n',
    );
    place.write(
      'four.csv',
      '# unit: in\nwaist_girth,hip_girth\n30 1/2,39\n30 1/2,39\n30 1/2,42\n29 3/4,40 1/2\n',
    );
    const { stdout } = await place.run('coverage', 'twelve.csv', '--bodies', 'four.csv', '--quiet');
    expect(stdout).toContain('100 %');
  });

  it('whose knee cannot be read is set aside, and without one is drafted', async () => {
    const head = '# unit: in\nwaist_girth,hip_girth,waist_to_hip,waist_to_knee,stature\n';
    place.write(
      'knees.csv',
      `${head}29,39,8,abc,65\n29,39,8,,65\n29,39,8,23,65\n29,39,8,1'11,65\n`,
    );
    for (const more of [[], ['--stream']]) {
      await place.run('draft', 'knees.csv', ...more, '--out', `knees${more.length}`);
      const refused = place.read(`knees${more.length}/refused.csv`).trimEnd().split('\n');
      expect(refused.slice(1).map((line) => line.split(',').slice(0, 3).join())).toEqual([
        '3,4,waist_to_knee',
        '6,4,waist_to_knee',
      ]);
    }
  });
});
