/** The course of `help grading`: its numbers worked out by hand, and as the program has them. */
import { describe, expect, it } from 'vitest';
import { SCREENS } from '../../src/cli/grading-course';
import { TOPICS } from '../../src/cli/help-topics';
import { rowsOf } from '../csv-tables';
import { workplace } from './workplace';

const place = workplace();

/** The chart that the course has typed. */
const CHART = (TOPICS.get('grading') ?? '')
  .split('\n')
  .filter((line) => line.startsWith('    '))
  .map((line) => `${line.slice(4)}\n`)
  .join('');

/** Hand-worked from the chart, in inches: the quarter method is common practice, no source. */
const BY_HAND: readonly (readonly [screen: number, said: string])[] = [
  [1, `29/4 + 1 for the dart     = ${29 / 4 + 1 === 8.25 ? '8 1/4' : ''} in`],
  [1, `39/4 + 2/4 for ease       = ${39 / 4 + 2 / 4 === 10.25 ? '10 1/4' : ''} in`],
  [2, `1 1/2 / 4 = ${(30.5 - 29) / 4 === 3 / 8 ? '3/8' : ''} in outward`],
  [5, `3/8 / 2 = ${(30.5 - 29) / 8 === 3 / 16 ? '3/16' : ''} in`],
  [6, `6 to 8: 1/4 of 1 = ${(27.5 - 26.5) / 4 === 1 / 4 ? '1/4' : ''} `],
  [9, `10 to 14: 2 x 3/16 = ${(32 - 29) / 8 === 3 / 8 ? '3/8' : ''} `],
];

describe('the course of grading', () => {
  it('has ten screens that go on from one to the next', async () => {
    expect(SCREENS).toHaveLength(10);
    for (const [i, screen] of SCREENS.entries()) {
      const { status, stdout } = await place.run('help', 'grading', `${i + 1}`);
      expect(status).toBe(0);
      expect(stdout.startsWith(screen.trimEnd())).toBe(true);
      expect(stdout.includes(`help grading ${i + 2}\n`)).toBe(i < 9);
      expect(stdout).toMatch(/^ {2}skirtgrade /mu);
      const lines = stdout.trimEnd().split('\n');
      expect(lines.length).toBeLessThanOrEqual(22);
      for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(80);
      const title = screen.split('\n')[0]?.replace(/^\d+\. /u, '') ?? '';
      expect(TOPICS.get('grading')).toContain(`${i + 1}  ${title}`);
    }
  });

  it.each(BY_HAND)('screen %i says %s', (screen, said) => {
    expect(SCREENS[screen - 1]).toContain(said);
  });

  it('has the moves and steps that grade writes', async () => {
    place.write('my-chart.csv', CHART);
    const call = ['my-chart.csv', '--base', '10', '--style', 'pencil', '--out', 'out'] as const;
    expect((await place.run('grade', ...call)).status).toBe(0);
    const rows = rowsOf(place.read('out/grade-rules.csv')).filter(
      ({ piece, point }) => piece === 'front' && point === 'side_waist',
    );
    expect(rows.map(({ size }) => size)).toEqual(['6', '8', '10', '12', '14']);
    expect(rows.map(({ dx_in }) => Number(dx_in))).toEqual([-5 / 8, -3 / 8, 0, 3 / 8, 3 / 4]);
    expect(rows.map((row) => Number(row.step_dx_in))).toEqual([-1 / 4, -3 / 8, 0, 3 / 8, 3 / 8]);
    expect(SCREENS[3]).toMatch(/moves, from the base +-5\/8 +-3\/8 +0 +3\/8 +3\/4\n/u);
    expect(SCREENS[3]).toMatch(/nearer to the base +-1\/4 +-3\/8 +0 +3\/8 +3\/8\n/u);
  });

  it('has the zips that are bought', () => {
    const [, ...zips] = place
      .read('out/finished-measurements.csv')
      .split('\n')
      .filter((line) => line.startsWith('zip_length,'))
      .flatMap((line) => line.split(',').slice(1));
    expect(zips).toEqual(['7', '7', '8', '8', '8']);
    expect(SCREENS[7]).toContain('7 in for 6 and 8, 8 in for the rest');
  });

  it('refuses a screen that is not there', async () => {
    const { status, stderr } = await place.run('help', 'grading', '11');
    expect(status).toBe(2);
    expect(stderr).toContain('Allowed: 1 to 10. Got: 11.');
  });
});
