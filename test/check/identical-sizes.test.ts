/** Sizes that are the same under two names: steps read as moves, and columns of a chart. */
import { describe, expect, it } from 'vitest';
import { readChart } from '../../src/chart/read-chart';
import { checkChart } from '../../src/check/chart';
import type { Finding } from '../../src/check/finding';
import { gradeChart } from '../../src/jobs/grade-chart';
import { verdictOf } from '../../src/verdict/verdict';
import { graded } from '../given/sheets';

const SIZES = ['8', '10', '12', '14', '16'];
const INCHES = { unit: 'in', fractions: true } as const;

/** A quarter of a straight skirt, front and back; even numbers of our own. */
const PATTERN = `# unit: in
# base: 12
piece,point,x,y
${['front', 'back']
  .map(
    (piece) =>
      `${piece},waist_center,0,0\n${piece},waist_side,7,0\n${piece},hem_side,9,24\n${piece},hem_center,0,24\n`,
  )
  .join('')}`;

/** Every side point of both pieces moves alike; the centers stay. */
function sheet(axis: string, side: string): string {
  const rows = ['front', 'back'].flatMap((piece) => [
    `${piece}.waist_side,${axis},${side}`,
    `${piece}.hem_side,${axis},${side}`,
    `${piece}.waist_center,${axis},0,0,0,0,0`,
    `${piece}.hem_center,${axis},0,0,0,0,0`,
  ]);
  return `# unit: in\npoint,axis,${SIZES.join(',')}\n${rows.join('\n')}\n`;
}

function identical(findings: readonly Finding[]): string[] {
  return findings
    .filter(({ check }) => check.startsWith('identical'))
    .map(({ severity, check, size }) => `${severity} ${check} ${size}`);
}

// Growth of 1/4 in to the quarter a size: 1 in of girth; common practice, no source.
const STEPS = '-1/4,-1/4,0,1/4,1/4';
const MOVES = '-1/2,-1/4,0,1/4,1/2';

describe('sizes that come out identical in a given pattern', () => {
  it('are warned of where steps were typed and moves are read', () => {
    const { findings } = graded(PATTERN, sheet('dx', STEPS));
    expect(identical(findings)).toEqual([
      'warning identical-sizes 8-10',
      'warning identical-sizes 14-16',
    ]);
    const { kind, decisions } = verdictOf(findings, SIZES, INCHES);
    expect(kind).toBe('decide');
    const [text = ''] = decisions.map((own) => own.text);
    expect(text).toContain('8 = 10 and 14 = 16');
    expect(text).toContain('step_dx');
  });

  it('are told, too, where a point of two neighbors has another number', () => {
    // A slip in one cell of steps, and a hem that is longer in every second size of true moves.
    const more = PATTERN.replaceAll(/^(\w+),hem_side.*$/gmu, '$1,hip,8,8\n$&\n$1,knee,8,20');
    const typed = (side: string) =>
      `${sheet('dx', side)}${['front', 'back'].flatMap((piece) => [`${piece}.hip,dx,${side}\n`, `${piece}.knee,dx,${side}\n`]).join('')}`;
    const found = (rules: string) =>
      graded(more, rules).findings.filter(({ check }) => check === 'alike-sizes');
    const slip = typed(STEPS).replace(`hip,dx,${STEPS}`, `hip,dx,${STEPS.replace(/.$/u, '8')}`);
    expect(found(slip).map(({ severity, size }) => `${severity} ${size}`)).toEqual(['warning 16']);
    expect(found(typed(MOVES))).toEqual([]);
    const long = `${typed(MOVES)}front.hem_side,dy,0,0,0,1,1\nfront.hem_center,dy,0,0,0,1,1\n`;
    expect(found(long)).toEqual([]);
  });

  it('are one run where three are the same', () => {
    const { findings } = graded(PATTERN, sheet('dx', '-1/4,-1/4,0,0,0'));
    expect(identical(findings)).toEqual([
      'warning identical-sizes 8-10',
      'warning identical-sizes 12-16',
    ]);
  });

  it.each([
    ['moves', sheet('dx', MOVES)],
    ['steps that are read as steps', sheet('step_dx', STEPS)],
  ])('are none in a sheet of %s', (_, rules) => {
    expect(identical(graded(PATTERN, rules).findings)).toEqual([]);
  });

  it('are left to what is told of rules that are all zero', () => {
    const { findings } = graded(PATTERN, sheet('dx', '0,0,0,0,0'));
    expect(findings.map(({ check }) => check)).toContain('nothing-grows');
    expect(identical(findings)).toEqual([]);
  });

  it('are told of the rounding where it alone makes them so', () => {
    // To 1/2 in, 1/8 in is 0.
    const { findings } = graded(PATTERN, sheet('dx', '-1/2,-1/8,0,1/8,1/2'), { round: '1/2in' });
    const [first] = findings.filter(({ check }) => check === 'identical-sizes');
    expect(first).toMatchObject({ size: '10-14', severity: 'warning', byRounding: true });
    expect(first?.message).toContain('by rounding alone');
  });

  it('are not told where one point of one piece differs', () => {
    const rules = sheet('dx', STEPS).replace(
      `back.hem_side,dx,${STEPS}`,
      `back.hem_side,dx,${MOVES}`,
    );
    expect(identical(graded(PATTERN, rules).findings)).toEqual([]);
  });
});

describe('sizes of a chart with the same measurements', () => {
  const textOf = (waists: string) =>
    `# unit: in\nmeasurement,8,10,12\nwaist_girth,${waists}\nhip_girth,36,36,38\nwaist_to_hip,8,8,8\n`;
  const chartOf = (waists: string) => readChart(textOf(waists), 'chart.csv');

  it('are warned of once, of the chart and not of its skirt', () => {
    const chart = textOf('26,26,28');
    const expected = ['warning identical-measurements 8-10'];
    expect(identical(checkChart(chartOf('26,26,28'), INCHES))).toEqual(expected);
    expect(identical(gradeChart({ chart, base: '12' }).findings)).toEqual(expected);
  });

  it('are not told where one measurement differs', () => {
    expect(identical(checkChart(chartOf('25,26,28'), INCHES))).toEqual([]);
  });
});
