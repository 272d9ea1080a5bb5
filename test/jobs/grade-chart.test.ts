import { readFileSync } from 'node:fs';
import { draftedSizes } from '../../src/grade/graded-pattern';
import { describe, expect, it } from 'vitest';
import { STYLES, gradeChart, measureOf, resultFiles } from '../../src/index';
import type { GradeRequest } from '../../src/index';
import { VERSION } from '../../src/render/version';
import { expectRefusal } from '../expect-refusal';
import { rowsOf } from '../csv-tables';
import { chartText, farthest, sizeRowsText } from '../skirts';

const SIZES = ['8', '10', '12', '14'];
const ROWS = {
  waist_girth: [25, 26.5, 28, 30],
  hip_girth: [35, 36.5, 38.5, 40.5],
  waist_to_hip: [7.75, 7.875, 8, 8.125],
};
const CHART = chartText('in', ROWS, SIZES);

function grade(request: Partial<GradeRequest> = {}) {
  return gradeChart({ style: 'pencil', chart: CHART, base: '10', ...request });
}

function fileOf(request: Partial<GradeRequest>, name: string): string {
  return resultFiles(grade(request)).find((file) => file.name === name)?.text ?? '';
}

describe('a request', () => {
  it('reads the chart in either layout alike', () => {
    const other = gradeChart({
      style: 'pencil',
      chart: sizeRowsText('in', ROWS, SIZES),
      base: '10',
    });
    expect(farthest(grade(), other)).toBe(0);
    expect(other.chart.layout).toBe('size-rows');
  });

  it('shows the sizes asked for, with the rules of the whole chart', () => {
    const all = grade();
    const some = grade({ sizes: ['14', ' 8 '] });
    expect(some.shown.map(({ label }) => label)).toEqual(['8', '14']);
    expect(some.range.sizes.map(({ label }) => label)).toEqual(SIZES);
    expect(some.range.rules).toEqual(all.range.rules);
    const table = rowsOf(fileOf({ sizes: ['8', '14'] }, 'grade-rules.csv'));
    expect([...new Set(table.map(({ size }) => size))]).toEqual(['8', '14']);
    expect(table).toEqual(
      rowsOf(fileOf({}, 'grade-rules.csv')).filter(({ size }) => size === '8' || size === '14'),
    );
  });

  it("is answered in the chart's unit or another, with the same lengths", () => {
    const inches = rowsOf(fileOf({}, 'graded-points.csv'));
    const mm = rowsOf(fileOf({ unit: 'mm' }, 'graded-points.csv'));
    expect(Object.keys(mm[0] ?? {})).toEqual(['size', 'piece', 'point', 'x_mm', 'y_mm']);
    mm.forEach(({ x_mm, y_mm }, i) => {
      expect(Math.abs(Number(x_mm) - Number(inches[i]?.x_in) * 25.4)).toBeLessThan(0.001);
      expect(Math.abs(Number(y_mm) - Number(inches[i]?.y_in) * 25.4)).toBeLessThan(0.001);
    });
  });

  it('finds no failure in any style of the engine for an ordinary body', () => {
    for (const { name } of STYLES) {
      const { findings, range } = grade({ style: name });
      expect(
        findings.filter(({ severity }) => severity === 'fail'),
        name,
      ).toEqual([]);
      for (const size of range.sizes) expect(measureOf(size, 'waist')).toBeGreaterThan(0);
    }
  });

  it('has its findings with the gravest first', () => {
    const order = grade().findings.map(({ severity }) =>
      ['fail', 'warning', 'note', 'ok'].indexOf(severity),
    );
    expect(order).toEqual(order.toSorted((a, b) => a - b));
  });

  it('carries the measurements and parameters of every size in millimeters', () => {
    draftedSizes(grade().range).forEach(({ draft, parameters }, i) => {
      expect(draft.body.get('waist_girth')).toBe(((ROWS.waist_girth[i] ?? NaN) * 254) / 10);
      expect(parameters.get('waist_to_hip')).toBe(((ROWS.waist_to_hip[i] ?? NaN) * 254) / 10);
      expect(parameters.get('hip_ease')).toBeCloseTo(50.8, 9);
    });
  });
});

describe('refused requests', () => {
  it.each([
    ['size-unknown', { base: '11' }, { field: 'base', file: 'chart' }, ['8, 10, 12, 14', '11']],
    ['size-unknown', { base: '' }, { field: 'base', file: 'chart' }, ['Got: nothing']],
    ['size-unknown', { sizes: ['8', '9'] }, { field: 'sizes', file: 'chart' }, ['Got: 9']],
    ['point-unknown', { stack: 'zip_waist' }, { field: 'stack' }, ['side_hip', 'zip_waist']],
    ['point-unknown', { stack: 'nape' }, { field: 'stack' }, ['Got: nape']],
    ['bad-option', { round: '0' }, { field: 'round' }, ['1/16in', 'Got: 0']],
    ['bad-option', { round: '-1mm' }, { field: 'round' }, ['Got: -1mm']],
    ['bad-option', { round: '13mm' }, { field: 'round' }, ['up to 1/2 in']],
    ['bad-option', { round: 'fine' }, { field: 'round' }, ['Got: fine']],
    ['bad-option', { round: '' }, { field: 'round' }, ['Got: nothing']],
  ] as const)('%s: %j', (code, request, place, words) => {
    expectRefusal(() => grade(request), code, place, ...words);
  });

  it('a base that only other charts have is refused before anything is drafted', () => {
    const set = { hem_taper: 'nonsense +' };
    expectRefusal(() => grade({ base: '99', set }), 'size-unknown', {
      field: 'base',
      file: 'chart',
    });
  });
});

describe('result files', () => {
  it('have their names in a fixed order', () => {
    expect(resultFiles(grade()).map(({ name }) => name)).toEqual([
      'nest.svg',
      ...['size-8.svg', 'size-10.svg', 'size-12.svg', 'size-14.svg'],
      'drawing.svg',
      'graded-points.csv',
      'grade-rules.csv',
      'finished-measurements.csv',
      'seams.csv',
      'findings.csv',
    ]);
  });

  it('have names that every file system takes, and no two alike', () => {
    const rows = { waist_girth: [25, 26, 27, 28, 29], hip_girth: [35, 36, 37, 38, 39] };
    const chart = chartText('in', rows, ['8/10', '8:10', '8_10_2', 'XL', 'xl']);
    const names = resultFiles(gradeChart({ style: 'pencil', chart, base: 'XL' })).map(
      ({ name }) => name,
    );
    expect(names.filter((name) => name.startsWith('size-'))).toEqual([
      'size-8_10.svg',
      'size-8_10_2.svg',
      'size-8_10_2_2.svg',
      'size-XL.svg',
      'size-xl_2.svg',
    ]);
  });

  it('are the same on every run', () => {
    const texts = () =>
      resultFiles(grade({ round: '1/16in' })).map(({ name, text }) => [name, text]);
    expect(texts()).toEqual(texts());
  });

  it('have the columns that were promised', () => {
    const header = (name: string) => fileOf({}, name).split('\n')[0];
    expect(header('graded-points.csv')).toBe('size,piece,point,x_in,y_in');
    expect(header('grade-rules.csv')).toMatch(
      /^piece,point,size,dx_in,dy_in,step_dx_in,step_dy_in\b/,
    );
    expect(header('finished-measurements.csv')).toBe('measure,unit,8,10,12,14');
    expect(header('findings.csv')).toBe(
      'severity,check,size,piece,subject,measured,expected,tolerance,unit,source,message,what_to_do',
    );
    const measures = rowsOf(fileOf({}, 'finished-measurements.csv')).map(({ measure }) => measure);
    expect(measures.slice(0, 7)).toEqual([
      ...['waist', 'hip', 'hem', 'center_front_length', 'center_back_length'],
      ...['side_seam_front', 'side_seam_back'],
    ]);
  });

  it('agree with each other: base plus rule is the graded point', () => {
    const points = rowsOf(fileOf({}, 'graded-points.csv'));
    const place = new Map(
      points.map(({ size, piece, point, x_in, y_in }) => [
        `${size} ${piece} ${point}`,
        [Number(x_in), Number(y_in)] as const,
      ]),
    );
    const rules = rowsOf(fileOf({}, 'grade-rules.csv'));
    expect(rules).toHaveLength(points.length);
    for (const { piece, point, size, dx_in, dy_in } of rules) {
      const [x, y] = place.get(`${size} ${piece} ${point}`) ?? [NaN, NaN];
      const [baseX, baseY] = place.get(`10 ${piece} ${point}`) ?? [NaN, NaN];
      expect(Math.abs(baseX + Number(dx_in) - x)).toBeLessThan(2e-5);
      expect(Math.abs(baseY + Number(dy_in) - y)).toBeLessThan(2e-5);
    }
  });
});

describe('the library', () => {
  it('has the version of its package', () => {
    const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
    expect(VERSION).toBe(version);
  });
});
