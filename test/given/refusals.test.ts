import { describe, expect, it } from 'vitest';
import type { InputErrorCode, Place } from '../../src/errors';
import { readSeams } from '../../src/seams/read-seams';
import { readPattern } from '../../src/given/read-pattern';
import { expectRefusal } from '../expect-refusal';
import { FRONT, FRONT_AND_BACK, graded } from './sheets';

const RULES = 'piece,point,step_dx,step_dy\nfront,side_waist,1/4,0\n';
const SIZED = `# sizes: 10,12,14\n${RULES}`;

describe('a pattern that cannot be used', () => {
  const base = { file: 'base.csv' };
  it.each<[string, string, InputErrorCode, Place]>([
    ['no unit', FRONT.replace('# unit: in\n', ''), 'unit-missing', base],
    [
      'an unknown unit',
      FRONT.replace('unit: in', 'unit: ell'),
      'unit-unknown',
      { ...base, row: 1 },
    ],
    ['no column x', FRONT.replace(',x,', ',ax,'), 'column-unknown', { ...base, row: 3, column: 3 }],
    ['a column missing', FRONT.replace(',x,y,', ',x,note,'), 'column-missing', { ...base, row: 3 }],
    [
      'an unknown kind',
      FRONT.replace('4,dart', '4,tuck'),
      'outline-malformed',
      { ...base, row: 6, column: 5 },
    ],
    [
      'a blank length',
      FRONT.replace('dart_in,3', 'dart_in,'),
      'cell-missing',
      { ...base, row: 5, column: 3 },
    ],
    [
      'no number',
      FRONT.replace('dart_in,3', 'dart_in,three'),
      'cell-not-a-number',
      { ...base, row: 5, column: 3 },
    ],
    [
      'a point twice',
      FRONT.replace('dart_out', 'dart_in'),
      'point-twice',
      { ...base, row: 7, column: 2 },
    ],
    [
      'a piece in two parts',
      `${FRONT_AND_BACK}front,z,1,1,,,\n`,
      'outline-malformed',
      { ...base, row: 20, column: 1 },
    ],
    [
      'a dotted name',
      FRONT.replace('dart_in', 'dart.in'),
      'outline-malformed',
      { ...base, row: 5, column: 2 },
    ],
    [
      'two tips',
      FRONT.replace('dart_out,4,0,,', 'dart_out,4,0,dart,'),
      'outline-malformed',
      { ...base, row: 6, column: 2, point: 'dart_tip' },
    ],
    [
      'a curve first',
      FRONT.replace('0,0,corner', '0,0,curve'),
      'outline-malformed',
      { ...base, row: 4, column: 2, point: 'center_waist' },
    ],
    [
      'one grain point',
      `${FRONT}front,g,2,2,grain,,\n`,
      'outline-malformed',
      { ...base, row: 12, column: 2, point: 'g' },
    ],
    ['an unclear y', `# y: left\n${FRONT}`, 'bad-option', { ...base, row: 1 }],
    ['no rows', FRONT.slice(0, FRONT.indexOf('front,')), 'outline-malformed', base],
    [
      'a named rule that is not there',
      FRONT.replace('edge,seam', 'edge,seam,rule').replace('waist,\n', 'waist,,r9\n'),
      'rule-unknown',
      { ...base, row: 4, column: 8 },
    ],
  ])('%s', (_, pattern, code, place) => {
    expectRefusal(() => graded(pattern, SIZED), code, place);
  });
});

describe('a rule sheet that cannot be used', () => {
  const file = 'rules.csv';
  const sized = (rows: string): string => `# sizes: 10,12,14\npiece,point,size,dx,dy\n${rows}\n`;
  it.each<[string, string, InputErrorCode, Place]>([
    ['no sizes', RULES, 'size-missing', { file }],
    [
      'an unknown piece',
      SIZED.replace('front', 'sleeve'),
      'piece-unknown',
      { file, row: 3, column: 1 },
    ],
    [
      'an unknown point',
      SIZED.replace('side_waist', 'cuff'),
      'point-unknown',
      { file, row: 3, column: 2 },
    ],
    [
      'no number and no chart',
      SIZED.replace('1/4', '1/4 waist_girth'),
      'measurement-missing',
      { file, row: 3, column: 3, point: 'front.side_waist' },
    ],
    [
      'a forbidden formula',
      SIZED.replace('1/4', 'waist_girth = 3'),
      'formula-not-allowed',
      { file, row: 3, column: 3, point: 'front.side_waist' },
    ],
    [
      'an unknown size',
      sized('front,side_hip,11,1,0'),
      'size-unknown',
      { file, row: 3, column: 3 },
    ],
    [
      'a size left out',
      sized('front,side_hip,10,-1/2,0'),
      'rule-missing',
      { file, row: 3, size: '14', point: 'front.side_hip' },
    ],
    [
      'a size twice',
      sized('front,side_hip,10,1,0\nfront,side_hip,10,2,0'),
      'rule-twice',
      { file, row: 4, column: 4, size: '10', point: 'front.side_hip' },
    ],
    [
      'a moved base',
      sized('front,side_hip,10,1/2,0\nfront,side_hip,12,1,0\nfront,side_hip,14,1,0'),
      'rule-moves-base',
      { file, row: 4, column: 4, size: '12', point: 'front.side_hip' },
    ],
    [
      'a move for no size',
      sized('front,side_hip,,1,0'),
      'size-missing',
      { file, row: 3, column: 3 },
    ],
    ['a base that is no size', SIZED.replace('10,12,14', '10,14'), 'size-unknown', { file }],
    ['one size', SIZED.replace('10,12,14', '12'), 'sizes-too-few', { file }],
    ['a size stated twice', SIZED.replace('10,12,14', '10,12,12'), 'size-twice', { file, row: 1 }],
    [
      'an unknown rule',
      '# sizes: 10,12\npiece,point,rule\nfront,side_hip,wide\n',
      'rule-unknown',
      { file, row: 3, column: 3 },
    ],
    [
      'an unknown column',
      SIZED.replace('step_dy', 'step_dz'),
      'column-unknown',
      { file, row: 2, column: 4 },
    ],
  ])('%s', (_, rules, code, place) => {
    expectRefusal(() => graded(FRONT, rules), code, place);
  });

  it('a base that nobody states', () => {
    expectRefusal(() => graded(FRONT.replace('# base: 12\n', ''), SIZED), 'base-missing', { file });
  });

  it.each<[string, string, InputErrorCode]>([
    ['a row that the chart lacks', '1/4 bust_girth', 'formula-unknown-name'],
    ['a plain number of nothing', 'waist_girth * waist_girth', 'formula-dimension'],
    ['a move where nothing grows', '1/4 waist_girth + 1/8 in', 'rule-moves-base'],
  ])('a formula with %s', (_, formula, code) => {
    const chart = {
      file: 'chart.csv',
      text: '# unit: in\nmeasurement,12,14\nwaist_girth,28,30\nhip_girth,38,40\n',
    };
    const rules = `piece,point,dx,dy\nfront,side_waist,${formula},0\n`;
    expectRefusal(() => graded(FRONT, rules, { chart }), code, {
      ...{ file, row: 2, column: 3, point: 'front.side_waist' },
    });
  });
});

describe('a list of seams that cannot be used', () => {
  const pattern = readPattern(FRONT_AND_BACK, 'base.csv');
  const file = 'seams.csv';
  it.each<[string, string, InputErrorCode, Place]>([
    ['an unknown edge', 'front.side,back.yoke,', 'edge-unknown', { file, row: 2, column: 2 }],
    [
      'an ease that is no length',
      'front.side,back.side,much',
      'cell-not-a-number',
      { file, row: 2, column: 3 },
    ],
  ])('%s', (_, row, code, place) => {
    expectRefusal(() => readSeams(`edge,sewn_to,ease\n${row}\n`, file, pattern), code, place);
  });

  it('takes several edges for one side', () => {
    const {
      pairs: [pair],
    } = readSeams('edge,sewn_to,ease\nfront.side + front.hem,back.side,-1/4\n', file, pattern);
    expect(pair?.sides[0].edges).toHaveLength(2);
    expect(pair?.ease).toBeCloseTo(-6.35, 9);
  });
});

describe('a pattern all of which lies above its zero', () => {
  const panel = (way: string) =>
    `# unit: cm\n${way}piece,point,x,y\na,waist,0,0\na,side,20,0\na,hem,25,-60\na,center,0,-60\n`;

  it('is asked which way its y runs, since it may be upside down', () => {
    expectRefusal(
      () => readPattern(panel(''), 'base.csv'),
      'sheet-malformed',
      { file: 'base.csv', row: 5, column: 2 },
      '# y: up',
    );
  });

  it('or whose hem lies above its waist is asked, too', () => {
    const turned = panel('')
      .replaceAll('-60', '0')
      .replace('0,0\na,side,20,0', '0,60\na,side,20,60');
    const place = { file: 'base.csv', row: 5, column: 2 };
    const read = (text: string) => readPattern(text, 'base.csv');
    expectRefusal(() => read(turned), 'sheet-malformed', place, '# y: up');
    expect(read(`# y: up\n${turned}`).countsUp).toBe(true);
  });

  it.each(['# y: up\n', '# y: down\n'])('is read with %j', (way) => {
    expect(readPattern(panel(way), 'base.csv').pieces).toHaveLength(1);
  });
});
