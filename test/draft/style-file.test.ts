import { describe, expect, it } from 'vitest';
import { readStyle } from '../../src/index';
import { expectRefusal } from '../expect-refusal';
import { chartText, inches } from '../skirts';
import { gradeLazily } from '../graded';

const file = 'house/my-style.csv';
const CHART = chartText('in', { waist_girth: [24, 26], hip_girth: [36, 38] });

function hemWidth(text: string): number {
  const skirt = gradeLazily({ chart: CHART, base: '1', style: readStyle(text, file) });
  return inches(skirt, '1', 'front', 'side_hem')[0];
}

describe('style files', () => {
  it('change the style that is drafted by default unless they name another', () => {
    expect(hemWidth('parameter,value,note\nhip_ease,4 in,roomy\n')).toBeCloseTo(9.25, 12);
    expect(hemWidth('# based on: straight\nparameter,value,note\nhip_ease,4 in,\n')).toBeCloseTo(
      10,
      12,
    );
  });

  it('go by the name of their file', () => {
    const { style } = readStyle('# based on: straight\nparameter,value\n', file);
    expect(style.name).toBe('my-style');
    expect(style.description).toContain('straight');
  });

  it.each([
    '# based on straight',
    '# Based on: straight; ours',
    '# style: straight',
    '# style straight',
    'based on,straight',
    '# based on,straight',
  ])('are based on what "%s" says', (line) => {
    const { style } = readStyle(`${line}\nparameter,value\nhip_ease,2 in\n`, file);
    expect(style.description).toContain('straight');
  });

  it.each([
    '# like shared-drop, but roomier',
    '# the Shared Drop of spring',
    'shared-a-line',
    '# seam allowance: 5/8 in',
    '# allowances 1 cm',
    '# with the allowances of the trade',
    '# base: shared-drop',
    '# title: our straight skirt',
  ])('are refused where "%s" does not say what of it', (line) => {
    const call = (): unknown => readStyle(`${line}\nparameter,value\nhip_ease,2 in\n`, file);
    expectRefusal(call, 'sheet-malformed', { file, row: 1 });
  });

  it('are refused where a unit stands as a note', () => {
    const call = (line: string) => () =>
      readStyle(`${line}parameter,value,note\nhip_ease,5,cm\n`, file);
    expectRefusal(call(''), 'unit-contradicted', { file, row: 2, column: 3 });
    expect(call('# unit: cm\n')).not.toThrow();
  });

  it.each([
    ['semicolons', 'parameter;value;note\nhem_taper;1,5 cm;x\n'],
    ['a byte order mark and CRLF', '\uFEFFparameter,value,note\r\nhem_taper,1.5 cm,x\r\n'],
    ['capitals and blanks', 'Parameter , Value , Note\n hem_taper , 1.5 cm ,  x  \n'],
    ['blank rows and trailing columns', 'parameter,value,note,,\n\n,,,,\nhem_taper,1.5 cm,x,,\n'],
    ['no notes', 'parameter,value\nhem_taper,1.5 cm\n'],
    [
      'comments with semicolons',
      '# ours; of the spring\nparameter,value\n# x;y\nhem_taper,15 mm\n',
    ],
    ['its own unit', '# unit: cm\nparameter,value\nhem_taper,1.5\n'],
    [
      'its own unit, saved by a spreadsheet',
      '# unit: cm,,\nparameter,value,note\nhem_taper,1.5,\n',
    ],
    ['its columns in any order', 'note;value;parameter\nx;1,5 cm;hem_taper\n'],
    ['tabs and title lines', 'Our hems\nunit\tcm\nvalue\tparameter\n1.5\them_taper\n'],
    ['its unit in words', '# Unit: centimeters\nparameter,value\nhem_taper,1.5\n'],
    ['quotes', '"parameter","value","note"\n"hem_taper","1,5 cm","a, b"\n'],
  ])('may have %s', (_, text) => {
    // A quarter of a hip of 36 with the 1 1/2 in of ease that the style has.
    expect(hemWidth(text)).toBeCloseTo(37.5 / 4 - 1.5 / 2.54, 9);
  });

  it('keep notes, rows and the unit of their numbers', () => {
    const { settings } = readStyle(
      '# unit: mm\nparameter,value,note\n# why\nhem_taper,20,"soft, narrow"\nhip_ease,40,\n',
      file,
    );
    expect(settings).toEqual([
      {
        ...{ parameter: 'hem_taper', value: '20', note: 'soft, narrow', unit: 'mm' },
        place: { file, row: 4 },
      },
      {
        ...{ parameter: 'hip_ease', value: '40', note: `style file ${file}`, unit: 'mm' },
        place: { file, row: 5 },
      },
    ]);
  });
});

describe('refused style files', () => {
  it.each([
    ['column-missing', '', { file, row: 1 }, 'parameter, value, note'],
    ['column-unknown', 'hem_taper,1 in\n', { file, row: 1, column: 1 }, 'Got: hem_taper'],
    ['column-missing', '# x\nparameter,note\nhem_taper,a', { file, row: 2 }, 'value'],
    ['column-unknown', 'parameter,value\nhem_taper,1,5 cm', { file, row: 2, column: 3 }, '5 cm'],
    ['parameter-unknown', 'parameter,value\nhem,1 in', { file, row: 2 }, 'Got: hem'],
    ['parameter-unknown', 'parameter,value\n,1 in', { file, row: 2 }, 'Got: nothing'],
    [
      'parameter-twice',
      'parameter,value\nhem_taper,1 in\n\nhem_taper,2 in',
      { file, row: 4 },
      'hem_taper',
    ],
    ['unit-unknown', '# unit: ell\nparameter,value\nhem_taper,1', { file, row: 1 }, 'in, cm, mm'],
    ['style-unknown', '# based on: tulip\nparameter,value', { file, row: 1 }, 'pencil, straight'],
    ['csv-malformed', 'parameter,value\nhem_taper,"1 in\n', { file, row: 2 }, 'quote'],
  ] as const)('%s: %j', (code, text, place, words) => {
    expectRefusal(() => readStyle(text, file), code, place, words);
  });

  it('a bad formula is told with its file and row', () => {
    const style = readStyle('parameter,value\n\nhem_taper,2 hip_girth', file);
    expectRefusal(
      () => gradeLazily({ chart: CHART, base: '1', style }),
      'formula-not-allowed',
      { file, row: 3, parameter: 'hem_taper' },
      '2 hip_girth',
    );
  });

  it('styles that the engine does not have are named with those it has', () => {
    expectRefusal(
      () => gradeLazily({ chart: CHART, base: '1', style: 'tulip' }),
      'style-unknown',
      { field: 'style' },
      'pencil',
      'straight',
      'tulip',
    );
  });
});
