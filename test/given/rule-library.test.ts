/** Named rules in a file of their own; moves are worked by hand from steps of a quarter inch, 6.35 mm. */
import { describe, expect, it } from 'vitest';
import { expectRefusal } from '../expect-refusal';
import { FRONT, graded, move } from './sheets';

const LIBRARY = `# unit: in
# sizes: 10, 12, 14
rule,size,dx,dy,step_dx,step_dy
side,,,,1/4,0
low,,,,1/4,1/4
hem,10,0,-1/4
hem,14,0,1/2
share,,1/4 waist_girth,0
`;
const SHEET = `rule,piece,point
side,front,side_waist
side,front,side_hip
low,front,side_hem
hem,front,center_hem
`;

function withLibrary(sheet: string, library: string, pattern = FRONT) {
  return graded(pattern, sheet, { namedRules: { text: library, file: 'named.csv' } });
}

describe('a library of rules', () => {
  it('gives its rules to the points that use them, and its sizes to the sheet', () => {
    const result = withLibrary(SHEET, LIBRARY);
    expect(result.range.sizes.map(({ label }) => label)).toEqual(['10', '12', '14']);
    expect(move(result, '14', 'front', 'side_hem')).toEqual({
      x: expect.closeTo(6.35, 9) as number,
      y: expect.closeTo(6.35, 9) as number,
    });
    expect(move(result, '14', 'front', 'center_hem').y).toBeCloseTo(12.7, 9);
    expect(move(result, '10', 'front', 'center_hem').y).toBeCloseTo(-6.35, 9);
  });

  it('goes with rules of the sheet and with names in the pattern', () => {
    const pattern = FRONT.replace('kind,edge,seam', 'kind,edge,seam,rule').replace(
      'front,side_hip,9,8,corner,,',
      'front,side_hip,9,8,corner,,,low',
    );
    const sheet = SHEET.replace('side,front,side_hip\n', '').replace(
      'rule,piece,point',
      'rule,piece,point,step_dx,step_dy',
    );
    const result = withLibrary(`${sheet}own,,,1/8,0\nown,front,center_waist\n`, LIBRARY, pattern);
    expect(move(result, '14', 'front', 'side_hip').y).toBeCloseTo(6.35, 9);
    expect(move(result, '14', 'front', 'center_waist').x).toBeCloseTo(3.175, 9);
  });

  it('tells its sizes by its rows, the base among them', () => {
    const { range } = withLibrary(SHEET, LIBRARY.replace('# sizes: 10, 12, 14\n', ''));
    expect(range.sizes.map(({ label }) => label)).toEqual(['10', '12', '14']);
  });

  it('says what two styles change with it', () => {
    // Half an inch where a quarter was, in whichever sheet uses the rule.
    const wider = LIBRARY.replace('side,,,,1/4,0', 'side,,,,1/2,0');
    for (const sheet of [SHEET, 'rule,piece,point\nside,front,side_waist\nhem,front,center_hem\n'])
      expect(move(withLibrary(sheet, wider), '14', 'front', 'side_waist').x).toBeCloseTo(12.7, 9);
  });

  it.each([
    [
      'a rule that the sheet defines again',
      'rule,piece,point,step_dx,step_dy\nSide,,,1/8,0\n',
      LIBRARY,
      'rule-twice',
      { file: 'rules.csv', row: 2, column: 1 },
      'in the library, too',
    ],
    [
      'a name that neither has',
      'rule,piece,point\nwide,front,side_hip\n',
      LIBRARY,
      'rule-unknown',
      { file: 'rules.csv', row: 2, column: 1 },
      'Allowed: side, low, hem, share',
    ],
    [
      'a point in the library',
      SHEET,
      `${LIBRARY.replace('rule,size', 'rule,piece,point,size').replace(/^(side|low|hem|share),/gmu, '$1,,,')},front,hip,10,1,0\n`,
      'sheet-malformed',
      { file: 'named.csv', row: 9, column: 3 },
      'no point; points stand in the rule sheet',
    ],
    [
      'another base',
      SHEET,
      `# base: 10\n${LIBRARY}`,
      'rule-contradicted',
      { file: 'named.csv', row: 1 },
      'another base size',
    ],
    [
      'other sizes',
      `# sizes: 10, 12, 14, 16\n${SHEET}`,
      LIBRARY,
      'rule-contradicted',
      { file: 'rules.csv', row: 1 },
      'other sizes than the library has',
    ],
    [
      'the other direction of y',
      SHEET,
      `# y: up\n${LIBRARY}`,
      'rule-contradicted',
      { file: 'rules.csv' },
      'count y in opposite ways',
    ],
    [
      'a share without a chart, where it is used',
      `${SHEET}share,front,dart_in\n`,
      LIBRARY,
      'measurement-missing',
      { file: 'named.csv', row: 8, column: 3, point: 'front.dart_in' },
      'a formula needs a chart',
    ],
  ] as const)('refuses %s', (_, sheet, library, code, place, words) => {
    expectRefusal(() => withLibrary(sheet, library), code, place, words);
  });
});
