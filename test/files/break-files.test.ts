/** The breaks of a sheet worked by hand, beside those of its chart. */
import { expect, it } from 'vitest';
import { breakFiles } from '../../src/files/break-files';
import { rowsOf } from '../csv-tables';
import { FRONT, graded } from '../given/sheets';

const RULES = `# sizes: 8, 10, 12, 14, 16, 18
point,axis,8,10,12,14,16,18
front.center_waist,dx,0,0,0,0,0,0
front.side_waist,dx,-1/2,-1/4,0,1/4,5/8,1
front.side_hip,dx,-1/2,-1/4,0,1/4,5/8,1
front.side_hem,dx,-1/2,-1/4,0,1/4,1/2,3/4
front.center_hem,dx,0,0,0,0,0,0
`;
const CHART = `# unit: in
measurement,8,10,12,14,16,18
waist,24,25,26,27,28 1/2,30
hip,34,35,36,37,38,39
`;

function breaks(chart?: string) {
  const more = chart === undefined ? {} : { chart: { file: 'chart.csv', text: chart } };
  const { files } = breakFiles(graded(FRONT, RULES, more));
  return rowsOf(files[0]?.text ?? '').filter(({ axis }) => axis === 'x');
}

it('parts the steps of a point where they change, and tells what changes with it', () => {
  const of = (name: string) => breaks(CHART).filter(({ point }) => point === name);
  expect(of('side_hip').map(({ from, to, step_in }) => [from, to, step_in])).toEqual([
    ['8', '14', '0.25'],
    ['14', '18', '0.375'],
  ]);
  // With the waist of the chart and of the piece, and the three points of the dart that go along; the hem goes on by quarters, the hip of the chart too.
  expect(of('side_hip')[1]).toMatchObject({ breaks: '14', others: '4', chart: 'waist_girth' });
  expect(of('side_hem').map(({ from, to, breaks: at }) => [from, to, at])).toEqual([
    ['8', '18', ''],
  ]);
  expect(of('center_hem')).toEqual([]);
});

it('counts the dart that goes along and not the hip that does not, and says nothing of a chart that is not there', () => {
  const alone = RULES.replace(
    'front.side_hip,dx,-1/2,-1/4,0,1/4,5/8,1',
    'front.side_hip,dx,-1/2,-1/4,0,1/4,1/2,3/4',
  );
  const { files } = breakFiles(graded(FRONT, alone));
  const found = rowsOf(files[0]?.text ?? '').filter(
    ({ point, breaks: at }) => point === 'side_waist' && at !== '',
  );
  expect(found).toHaveLength(1);
  expect(found[0]).toMatchObject({
    breaks: '14',
    others: '3',
    chart: '',
  });
});
