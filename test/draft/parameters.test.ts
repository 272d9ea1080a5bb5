import { describe, expect, it } from 'vitest';
import { readStyle } from '../../src/index';
import type { GradeRequest } from '../../src/index';
import { expectRefusal } from '../expect-refusal';
import { chartText, inches } from '../skirts';
import { gradeLazily } from '../graded';

const CHART = chartText('in', {
  waist_girth: [24, 26],
  hip_girth: [36, 38],
  waist_to_knee: [23, 23.25],
  skirt_length: [25, 25.5],
});

function length(request: Partial<GradeRequest>, size = '1'): number {
  const skirt = gradeLazily({ style: 'pencil', chart: CHART, base: '1', ...request });
  return inches(skirt, size, 'front', 'center_hem')[1];
}

function taper(request: Partial<GradeRequest>): number {
  const skirt = gradeLazily({ style: 'pencil', chart: CHART, base: '1', ...request });
  return 9.5 - inches(skirt, '1', 'front', 'side_hem')[0];
}

const styleFile = (...lines: string[]) =>
  readStyle(
    ['# based on: pencil', 'parameter,value,note', ...lines].join('\n'),
    'house/my-style.csv',
  );

describe('which value a parameter takes', () => {
  it('the default, where nothing else is said', () => {
    const chart = chartText('in', { waist_girth: [24, 26], hip_girth: [36, 38] });
    expect(length({ chart })).toBeCloseTo(27, 12);
  });

  it("the chart's row before the default, in every size", () => {
    expect(length({})).toBeCloseTo(25, 12);
    expect(length({}, '2')).toBeCloseTo(25.5, 12);
  });

  it('the style file before the chart', () => {
    expect(length({ style: styleFile('skirt_length,24 in,') })).toBeCloseTo(24, 12);
  });

  it('the caller before the style file', () => {
    const style = styleFile('skirt_length,24 in,', 'hem_taper,2 in,');
    expect(length({ style, set: { skirt_length: '23 in' } })).toBeCloseTo(23, 12);
    expect(taper({ style, set: { skirt_length: '23 in' } })).toBeCloseTo(2, 12);
  });

  it('is told with where it comes from', () => {
    const { range } = gradeLazily({
      chart: CHART,
      base: '1',
      style: styleFile('hem_taper,2 in,as in the sample'),
      set: { zip_allowance: '5/8 in' },
    });
    const origins = new Map(
      range.draft.parameters.map(({ definition, origin, text, source }) => [
        definition.name,
        [origin, text, source],
      ]),
    );
    expect(origins.get('skirt_length')).toEqual(['chart', 'skirt_length', 'the chart']);
    expect(origins.get('hem_taper')).toEqual(['setting', '2 in', 'as in the sample']);
    expect(origins.get('zip_allowance')?.slice(0, 2)).toEqual(['setting', '5/8 in']);
    expect(origins.get('waist_ease')?.slice(0, 2)).toEqual(['default', '0 in']);
  });
});

describe('values', () => {
  it.each([
    ['1 1/2 in', 1.5],
    ['1½', 1.5],
    ['1-1/2"', 1.5],
    ['1.5', 1.5],
    ['1,5', 1.5],
    ['3.81 cm', 1.5],
    ['3,81 cm', 1.5],
    ['38.1mm', 1.5],
    ['-1 in', -1],
    ['3 in/2', 1.5],
    ['hip_girth/24', 1.5],
    ['hem_length - hem_length + 1.5 in', 1.5],
    ['(hip_girth - waist_girth)/8', 1.5],
    ['min(hip_girth/24, 40 cm)', 1.5],
  ])('%s', (hem_taper, expected) => {
    const chart = `${CHART}hem_length,1,1\n`;
    expect(taper({ chart, set: { hem_taper } })).toBeCloseTo(expected, 12);
  });

  it('are formulas of measurements that differ by size', () => {
    const set = { skirt_length: 'waist_to_knee - 2 in' };
    expect(length({ set })).toBeCloseTo(21, 12);
    expect(length({ set }, '2')).toBeCloseTo(21.25, 12);
  });

  it('are formulas of other parameters', () => {
    expect(taper({ set: { hem_taper: 'zip_allowance/2 + hip_ease/4' } })).toBeCloseTo(1, 12);
  });

  it("take the chart's unit where they name none", () => {
    const chart = chartText('cm', { waist_girth: [61, 66], hip_girth: [91, 96] });
    expect(length({ chart, set: { skirt_length: '60' } }) * 2.54).toBeCloseTo(60, 9);
  });

  it("take the style file's unit before the chart's", () => {
    const style = readStyle('# unit: cm\nparameter,value\nskirt_length,60', 'cm.csv');
    expect(length({ style }) * 2.54).toBeCloseTo(60, 9);
    expect(length({ style, set: { skirt_length: '20' } })).toBeCloseTo(20, 9);
  });
});

describe('refused values', () => {
  const setting = (parameter: string, value: string) => () =>
    gradeLazily({ style: 'pencil', chart: CHART, base: '1', set: { [parameter]: value } });
  const place = { field: 'set', parameter: 'hem_taper' };

  it.each([
    ['formula-malformed', '1 in +'],
    ['formula-malformed', ''],
    ['formula-malformed', '  '],
    ['formula-not-allowed', '2 hip_girth'],
    ['formula-not-allowed', '5%'],
    ['formula-unknown-name', 'hip_grith/24'],
    ['formula-unknown-name', 'constructor.x'],
    ['formula-unknown-name', '__proto__'],
    ['formula-unknown-name', 'toString'],
    ['formula-dimension', 'hip_girth - 2'],
    ['formula-dimension', 'hip_girth/waist_girth'],
    ['formula-dimension', '2*3'],
    ['formula-cycle', 'hem_taper + 1 in'],
  ] as const)('%s: %s', (code, value) => {
    expectRefusal(setting('hem_taper', value), code, place, value === '' ? 'nothing' : value);
  });

  it('name those that can be used', () => {
    expectRefusal(
      setting('hem_taper', 'knee'),
      'formula-unknown-name',
      place,
      ...['the formula takes knee_girth', 'a row knee_girth in the chart'],
    );
  });

  it('name the size where only some sizes are refused', () => {
    expectRefusal(
      setting('hem_taper', '1 in * (hip_girth - 965.2 mm)/(hip_girth - 965.2 mm)'),
      'formula-not-finite',
      { ...place, size: '2' },
    );
    expectRefusal(
      setting('hem_taper', 'hip_girth - 31.5 in'),
      'parameter-out-of-range',
      { ...place, size: '2' },
      ...['hem_taper', '6 in', '6.5 in'],
    );
  });

  it('cycles over several parameters are told whole', () => {
    const set = { hem_taper: 'zip_allowance', zip_allowance: 'back_dart_intake + hem_taper' };
    expectRefusal(
      () => gradeLazily({ style: 'pencil', chart: CHART, base: '1', set }),
      'formula-cycle',
      place,
      'hem_taper -> zip_allowance -> hem_taper',
    );
  });

  it.each([
    ['waist_ease', '-4.1 in'],
    ['hip_ease', '13 in'],
    ['waist_to_hip', '20 cm + 20 cm'],
    ['skirt_length', '7 in'],
    ['front_dart_intake', '-1 in'],
    ['back_dart_length', '0 in'],
    ['zip_allowance', '8 cm'],
  ])('%s = %s is out of range', (parameter, value) => {
    expectRefusal(
      setting(parameter, value),
      'parameter-out-of-range',
      { field: 'set', parameter, size: '1' },
      `${parameter} is out of its range`,
      'Allowed:',
      'Got:',
    );
  });

  it('unknown parameters name those there are', () => {
    expectRefusal(
      setting('hem_tapper', '1 in'),
      'parameter-unknown',
      { field: 'set' },
      'Did you mean hem_taper?',
      'Got: hem_tapper',
    );
    expectRefusal(setting('__proto__x', '1'), 'parameter-unknown', { field: 'set' });
  });

  it('a blank cell of a row that the draft uses is refused', () => {
    const chart = chartText('in', {
      waist_girth: [24, 26],
      hip_girth: [36, 38],
      skirt_length: [25, ''],
    });
    expectRefusal(() => gradeLazily({ style: 'pencil', chart, base: '1' }), 'cell-missing', {
      ...{ file: 'chart', row: 5, column: 3, size: '2', measurement: 'skirt_length' },
    });
    const set = { skirt_length: '25 in' };
    expect(() => gradeLazily({ style: 'pencil', chart, base: '1', set })).not.toThrow();
  });
});
