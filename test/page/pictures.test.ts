/** Pictures show the numbers of the chart, of the findings and of the finished skirt, and no others. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { pictures } from '../../src/page/engine/pictures';
import { measureOf } from '../../src/grade/graded-pattern';
import { gradeLazily } from '../graded';

const result = gradeLazily({
  chart: readFileSync('size-charts/demo.csv', 'utf8'),
  base: '12',
  style: 'shared-pencil',
  against: ['astm-d5585-95'],
});
const shown = pictures(result);

function series(title: string, name: string): readonly (number | null)[] {
  const picture = shown.find((one) => one.title === title);
  return picture?.series.find((one) => one.name === name)?.values ?? [];
}

it('growth is the step of the chart, and of the table after its standard', () => {
  // The demo's hips as they are typed, in inches.
  const hips = [35.5, 36.5, 37.5, 38.5, 40, 41.5, 43, 45, 47, 49, 51.25, 53.5];
  const steps = hips.slice(1).map((hip, i) => (hip - (hips[i] ?? NaN)) * 25.4);
  series('Growth from size to size', 'hip').forEach((value, i) => {
    expect(value).toBeCloseTo(steps[i] ?? NaN, 9);
  });
  const table = series('Growth from size to size', 'hip after astm-d5585-95');
  // ASTM D5585-95, sizes 4 to 6: the hip grows by 1 in where the waist does.
  expect(table[0]).toBeCloseTo(25.4, 9);
  expect(table).toHaveLength(11);
  expect(table.at(-1)).toBeNull();
});

it('the finished hip and the step allowed are those that were measured', () => {
  const hip = series('Finished hip over the body', 'finished');
  const allowed = series('Step that the skirt allows', 'allowed');
  result.range.sizes.forEach((size, i) => {
    expect(hip[i]).toBeCloseTo(measureOf(size, 'hip'), 6);
    expect(allowed[i]).toBeCloseTo(measureOf(size, 'stride'), 6);
  });
});
