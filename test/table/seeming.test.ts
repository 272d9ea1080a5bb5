import { describe, expect, it } from 'vitest';
import { readChart } from '../../src/chart/read-chart';
import { readSeams } from '../../src/seams/read-seams';
import { readStyle } from '../../src/draft/style-file';
import { readPattern } from '../../src/given/read-pattern';
import { readMeasures } from '../../src/measure/read-measures';
import { readRuleSheet } from '../../src/rule-sheet/read-rule-sheet';
import { gradeChart } from '../../src/index';
import { CANONICAL } from '../chart/charts';
import { expectRefusal } from '../expect-refusal';
import { FRONT, evenRules, graded } from '../given/sheets';

const RULES = '# sizes: 10,12,14\npiece,point,step_dx,step_dy\nfront,side_waist,1/4,0\n';
const gradedWith = (line: string, unit = '') => graded(FRONT, `${line}\n${unit}${RULES}`);
const pattern = (...lines: readonly string[]) =>
  readPattern(`${lines.join('\n')}\n${FRONT}`, 'base.csv');
const refusedSheet = (call: () => unknown, file: string, ...words: string[]) => {
  expectRefusal(call, 'sheet-malformed', { file, row: 1 }, ...words);
};

describe('a fraction of the unit in the words of a sheet', () => {
  const LINES = [
    ...['# all values x16', '# values /16', '# divide by 16', '# counted by the sixteenth'],
    ...[
      '# all numbers in 16ths',
      '# grade in 1/16"',
      '# 1/16 in',
      '# x 1/16 inch',
      '# thirty-seconds',
    ],
    ...[
      '# unit: in (sixteenths)',
      '# unit: in, sixteenths',
      '# 1/10 mm',
      '# in tenths of a millimeter',
    ],
    ...['# 16 = 1 in', '# 8 to the inch', '# eighths', '# numbers are 32nds', '# unit is 1/8 inch'],
    ...['# title: Sorrel skirt, all numbers in 16ths', '# quarter inches', 'in 1/16 inch,units'],
    ...['# values times ten', '# divide all by 16', '# moves in 1/8 in', '# tolerances: 1/16 in'],
    ...['# 1/16ths', '# multiply by 1/16"', '# in ¼ in', '# hundredths of an inch'],
  ];
  it.each(LINES)('"%s" is refused in rules and lists of measures', (line) => {
    const words = ['fraction', '# unit: in'];
    refusedSheet(() => gradedWith(line), 'rules.csv', ...words);
    refusedSheet(() => gradedWith(line, '# unit: in\n'), 'rules.csv', ...words);
    refusedSheet(() => pattern(line), 'base.csv', ...words);
    const list = `${line}\n# unit: in\ncode,measure,path,of\n`;
    refusedSheet(() => readMeasures(list, 'list.csv', [], undefined), 'list.csv', ...words);
    const seams = `${line}\nedge,sewn_to\n`;
    refusedSheet(
      () => readSeams(seams, 'seams.csv', readPattern(FRONT, '')),
      'seams.csv',
      ...words,
    );
    const style = `${line}\nparameter,value\nhip_ease,2\n`;
    refusedSheet(() => readStyle(style, 'style.csv'), 'style.csv', ...words);
    const sheet = `${line}\npoint,axis,10,12\nfront.side_hip,x,0,3\n`;
    const about = { plans: [], unit: undefined, sizes: undefined, base: undefined };
    refusedSheet(() => readRuleSheet(sheet, 'sheet.csv', about), 'sheet.csv', ...words);
  });

  it('is refused for the tolerances of a list', () => {
    const list = '# tolerance in 1/8"\n# unit: in\ncode,measure,path,of\n';
    refusedSheet(() => readMeasures(list, 'list.csv', [], undefined), 'list.csv');
  });
});

describe('another unit', () => {
  it.each([
    ...['# lengths in m', '# unit m', '# px', '# numbers in points'],
    ...['# meters', '# values in centimetros', '# feet', '# yards', '# all in yards', '# in feet'],
    ...['# numbers are meters', '# lengths (in metres)', '# values /cm', '# moves mostly cm'],
  ])('"%s" is refused beside inches', (line) => {
    refusedSheet(() => gradedWith(line, '# unit: in\n'), 'rules.csv', 'unit');
    refusedSheet(() => gradedWith(line), 'rules.csv', 'unit');
  });
});

describe('another unit than the one stated', () => {
  it.each([
    ...['# dims cm', '# dimensions: cm', '# use cm', '# using mm', '# mesures en cm'],
    ...['# metric', '# metric units', '# cm used throughout'],
  ])('"%s" is refused beside inches', (line) => {
    refusedSheet(() => pattern(line), 'base.csv', 'unit');
    refusedSheet(() => gradedWith(line, '# unit: in\n'), 'rules.csv', 'unit');
  });

  it.each(['# lengths: inches', '# typed as inches', '# imperial', '# Inch by Inch'])(
    '"%s" agrees with inches',
    (line) => {
      expect(pattern(line).unit).toBe('in');
    },
  );
});

describe('a remark', () => {
  const LINE = '# Not read: y up, press all seam allowances in 16ths, size 14, cm';
  it('that is said not to be read states nothing, in whatever words', () => {
    expect(pattern(LINE)).toMatchObject({ unit: 'in', base: '12', countsUp: false });
    expect(gradedWith(LINE).rules.sizes).toHaveLength(3);
    const chart = gradeChart({ chart: `${LINE}\n${CANONICAL}`, base: '12' });
    expect(chart.range.sizes.length).toBeGreaterThan(1);
  });

  it('is what a refusal tells whoever meant something else', () => {
    refusedSheet(() => pattern('# numbers in 16ths'), 'base.csv', '# not read:');
  });
});

describe('the size from which rules count', () => {
  it.each(['# size 14', '# master size 14', '# drafted in size 14', '# this is a 14'])(
    '"%s" is refused beside base 12',
    (line) => {
      refusedSheet(() => gradedWith(line), 'rules.csv', 'base 12');
    },
  );
});

describe('a direction of the axes in other words', () => {
  const UP = [
    ...[
      '# signs of y turned',
      '# hem moves are negative',
      '# x grows to the left',
      '# 0,0 at lower left',
    ],
    ...[
      '# dy up is plus',
      '# up and out are positive',
      '# plus = up',
      '# +: up and right',
      '# up = +',
    ],
    ...[
      '# up is negative',
      '# y axis flipped',
      '# positive dy raises the point',
      '# origin: bottom left',
    ],
    ...[
      '# vertical axis up',
      '# y increases toward the waist',
      '# y counted from the hem',
      '# - is down',
    ],
    ...[
      '# heights above the hem',
      '# axes mirrored',
      '# positive is left',
      '# y: down (up is plus)',
    ],
    ...[
      '# y from hem',
      '# y above the hem',
      '# hem is zero',
      '# bottom left origin',
      '# Cartesian',
    ],
    ...['# x from the side', '# dx positive toward center', '# negative x to the right'],
    ...['# minus means outwards', '# smaller sizes have reversed signs'],
    ...[
      '# vertical up',
      '# vertical: up',
      '# verticals count upward',
      '# height counts up',
      '# up',
    ],
    ...['# vertical coordinates increase upward', '# ordinate up', '# y points to the waist'],
  ];
  it.each(UP)('"%s" is refused', (line) => {
    refusedSheet(() => gradedWith(line), 'rules.csv', '# y: up');
    refusedSheet(() => pattern(line), 'base.csv', '# y: up');
  });

  it('may not contradict what is stated, and may repeat it', () => {
    refusedSheet(() => pattern('# y runs up from the hem', '# y: down'), 'base.csv', 'down');
    refusedSheet(() => pattern('# up is negative', '# y: up'), 'base.csv', 'besides');
    refusedSheet(() => pattern('# dy down is plus', '# y: up'), 'base.csv', 'besides');
    expect(pattern('# y runs up from the hem', '# y: up').countsUp).toBe(true);
    expect(pattern('# dy up is plus', '# y: up').countsUp).toBe(true);
    expect(pattern('# dy down is plus').countsUp).toBe(false);
  });
});

it.each([
  ...[
    '# vertical darts',
    '# vertical grain, nap up',
    '# height of the model 172 cm',
    '# right side up',
  ],
  ...['# vertical: down', '# verticals count downward', '# y points to the hem'],
])('"%s" states no other direction', (line) => {
  expect(pattern(line).countsUp).toBe(false);
});

describe('a unit with points', () => {
  it.each(['# unit: c.m.', '# c.m.', '# all in c.m.', '# Unit c.m', '# unit: C. M.'])(
    '"%s" is centimeters',
    (line) => {
      const own = FRONT.replace('# unit: in', line);
      expect(readPattern(own, 'base.csv').unit).toBe('cm');
      expectRefusal(() => pattern(line), 'unit-contradicted', { file: 'base.csv', row: 2 });
      const moves = gradedWith(line).rules.ruled[0]?.get(4)?.moves;
      // A quarter of a centimeter.
      expect(moves?.[2]?.x).toBeCloseTo(2.5, 9);
    },
  );

  it('is millimeters, stands behind labels, and is refused where a sentence has it', () => {
    expect(readPattern(FRONT.replace('# unit: in', '# unit: m.m.'), 'base.csv').unit).toBe('mm');
    const chart = 'measurement,1,2\nwaist_girth (c.m.),66,70\nhip_girth c.m.,92,96\n';
    expect(readChart(chart, 'chart.csv').rows.map(({ values }) => values[0])).toEqual([660, 920]);
    refusedSheet(() => pattern('# numbers c.m.'), 'base.csv', 'unit');
    expect(pattern('# designer: M.M. Smith').imprint?.designer).toBe('M.M. Smith');
  });
});

describe('the size from which moves count', () => {
  it.each([
    ...['# steps count from the largest size', 'steps count from the largest size'],
    ...['# title: steps count from the largest size', '# counted from the smallest'],
    ...['# base is the largest size', '# the largest size is the base', '# moves from 14'],
    ...['# steps relative to 10', '# relative to the smallest', '# graded down from 14'],
    ...['# steps run from large to small', '# each cell is the step from the next larger size'],
  ])('"%s" is refused beside base 12', (line) => {
    refusedSheet(() => gradedWith(line), 'rules.csv', 'base 12');
  });

  it.each([
    ...[
      '# from largest to smallest',
      '# largest first',
      '# sizes from the smallest to the largest',
    ],
    ...['# graded from the smallest to the largest', '# each step from the size before'],
    ...['# moves from 12', '# steps from the base', '# grading from 10 to 14', '# starts in May'],
  ])('"%s" is read', (line) => {
    expect(gradedWith(line).rules.sizes).toHaveLength(3);
  });
});

describe('a rule sheet that says no unit', () => {
  const typed = (dx: string, unit: string) =>
    graded(
      FRONT.replace('# unit: in', `# unit: ${unit}`),
      `# sizes: 10,12,14\npiece;point;step_dx;step_dy\nfront;side_waist;${dx};0\n`,
    );
  it.each(['0.6', '0.3', '1.2', '0,65', '-0.8', '1.55'])('with %s beside inches', (dx) => {
    const place = { file: 'rules.csv', row: 3, column: 3, point: 'front.side_waist' };
    expectRefusal(() => typed(dx, 'in'), 'unit-missing', place, dx, '# unit: cm');
    expect(typed(dx, 'cm').rules.sizes).toHaveLength(3);
  });

  it.each(['1/4', '3/16', '¼'])('with %s beside centimeters', (dx) => {
    const place = { file: 'rules.csv', row: 3, column: 3, point: 'front.side_waist' };
    expectRefusal(() => typed(dx, 'cm'), 'unit-missing', place, dx, '# unit: in');
    expect(typed(dx, 'in').rules.sizes).toHaveLength(3);
  });

  // A quarter of the body grows by some quarter inch, 1 cm or 10 mm: common practice, no source.
  it.each([
    ['1', 'in', 'cm'],
    ['-2', 'in', 'cm'],
    ['10', 'cm', 'mm'],
    ['5', 'cm', 'mm'],
    ['1', 'mm', 'cm'],
    ['0.75', 'mm', 'cm'],
  ])('with %s beside a pattern in %s', (dx, unit, other) => {
    const place = { file: 'rules.csv', row: 3, column: 3, point: 'front.side_waist' };
    expectRefusal(() => typed(dx, unit), 'unit-missing', place, dx, `# unit: ${other}`);
    expect(typed(`${dx} ${other}`, unit).rules.sizes).toHaveLength(3);
  });

  it.each(['0.5', '.25', '0.13', '.12', '0.06', '0.188', '0.031', '0.50', '1/4 in'])(
    'is in the inches of its pattern with %s',
    (dx) => {
      expect(typed(dx, 'in').rules.sizes).toHaveLength(3);
    },
  );
});

it('a skirt of 65 in fails, and one of 55 in is questioned, with what it would be in centimeters', () => {
  const long = FRONT.replace('9,25', '9,65').replace('0,25', '0,65');
  const found = (text: string) =>
    graded(text, `# unit: in\n${RULES}`).findings.filter(({ check }) => check === 'pattern-size');
  const [finding, ...others] = found(long);
  expect(others).toEqual([]);
  expect(finding).toMatchObject({ severity: 'fail', piece: 'front', subject: 'base.csv' });
  // 65 cm are 25.59 in.
  expect(finding?.message).toMatch(/65\S* in long.*25\.59\d* in$/u);
  expect(found(FRONT)).toEqual([]);
  expect(found(long.replace('# unit: in', '# unit: cm'))).toEqual([]);
  expect(found(FRONT.replace('9,25', '9,55').replace('0,25', '0,55'))[0]?.severity).toBe('warning');
  // The ends of a tie are as long.
  const tie = '# unit: in\n# base: 12\npiece,point,x,y\ntie,a,0,0\n,b,4,0\n,c,4,70\n,d,0,70\n';
  const still = '# unit: in\npoint,axis,10,12,14\ntie.b,x,-1/4,0,1/4\ntie.c,x,-1/4,0,1/4\n';
  const ties = graded(tie, still).findings.filter(({ check }) => check === 'pattern-size');
  expect(ties[0]?.severity).toBe('warning');
});

it('a pattern that is short in centimeters, or grows as centimeters do, is questioned', () => {
  const found = (text: string, step = '1/4') =>
    graded(text, `# unit: in\n${evenRules('10, 12, 14').replaceAll('1/4', step)}`).findings.filter(
      ({ check }) => check === 'pattern-size',
    );
  const [small] = found(FRONT.replace('# unit: in', '# unit: cm'));
  expect(small).toMatchObject({ severity: 'warning', subject: 'base.csv' });
  // 25 in are 63.5 cm.
  expect(small?.message).toMatch(/25 cm long.*inches.*63\.5 cm$/u);
  const ankle = FRONT.replace('9,25', '9,45').replace('0,25', '0,45');
  expect(found(ankle, '3/4')).toEqual([]);
  expect(found(ankle, '1')[0]?.message).toMatch(/45 in long.*centimeters.*17\.7/u);
});

describe('an allowance in other words', () => {
  const LINES = [
    ...[
      '# S.A. 1.5 cm',
      '# seam width 5/8 in',
      '# plus 1 cm',
      '# 1.5 cm all round',
      '# cutting lines',
    ],
    ...[
      '# hem allowance: 2 in',
      '# allowance at hem: 2 in',
      '# hem: 2 in',
      '# includes 5/8" seams',
    ],
    ...[
      '# SA: 5/8 in',
      '# seams: 5/8 in',
      '# turnings: 1 cm',
      '# with 1 cm allowances',
      '# SA 1 cm',
    ],
    ...[
      '# side seam allowance 1 cm',
      '# seams 1 cm',
      '# 5/8 in seams',
      '# seams included',
      '# hem 5 cm',
    ],
    ...[
      '# SA included',
      '# 1 cm SA',
      '# incl. seams',
      '# add 5/8 in for seams',
      '# title: Skirt, hem 2 in',
    ],
  ];
  it.each(LINES)('"%s" is refused', (line) => {
    refusedSheet(() => pattern(line), 'base.csv', 'column allowance');
    refusedSheet(() => pattern(line, '# allowance: 5/8 in'), 'base.csv', 'column allowance');
    const style = `${line}\nparameter,value\nhip_ease,2\n`;
    if (!line.includes('title')) refusedSheet(() => readStyle(style, 'style.csv'), 'style.csv');
  });
});

describe('another scale', () => {
  it.each([
    '# scale: 1:2',
    '# drawn at half scale',
    '# quarter scale',
    '# scale: half',
    '# scale 1/5',
    '# drawn at 1/2 scale',
    '# 1/2 size',
    '# reduced 50 %',
    '# at 50 %',
    '# 50 % of full size',
    '# reduced to a third',
    '# printed at 98 %',
  ])('"%s" is refused', (line) => {
    refusedSheet(() => pattern(line), 'base.csv', '1:1');
  });

  it.each(['# scale: 1:1', '# full size', '# scale: full size', '# drawn at 100 %', '# scale: 1'])(
    '"%s" is none',
    (line) => {
      expect(pattern(line).unit).toBe('in');
    },
  );
});

describe('another size of a pattern', () => {
  it.each([
    '# size: 14',
    '# drawn in size 14',
    '# title: Sorrel skirt, size 14',
    '# sample in size M',
    '# drawn in a 14',
    '# US 14',
    '# sample: 14',
    '# this is a 14',
    '# size of the base: 14',
  ])('"%s" is refused beside base 12', (line) => {
    refusedSheet(() => pattern(line), 'base.csv', '# base: 12');
    const unsized = `${line}\n${FRONT.replace('# base: 12\n', '')}`;
    refusedSheet(() => readPattern(unsized, 'base.csv'), 'base.csv', '# base: 12');
  });

  it.each([
    '# size: 12',
    '# drawn in size 12',
    '# size range 8-16',
    '# size 8 to 16',
    '# size of the paper',
    '# tested in size 8',
    '# size 16 needs a longer zip',
    '# fits size 14 with a belt',
  ])('"%s" agrees', (line) => {
    expect(pattern(line).base).toBe('12');
  });

  it('is refused as the base of a call', () => {
    const call = (base: string) => () => graded(FRONT, RULES, { base });
    expectRefusal(call('10'), 'rule-contradicted', { file: 'base.csv', field: 'base' }, '12', '10');
    expect(call(' 12 ')).not.toThrow();
  });
});

describe('a mark that may part thousands', () => {
  const box = (length: string) =>
    `# unit: mm\npiece,point,x,y\na,p,0,0\na,q,7.5,0\na,r,${length},900\na,s,0,900\n`;

  it.each(['1.090', '"1,090"', '-1.090', '"12,500"'])('%s is refused in mm', (length) => {
    const place = { file: 'base.csv', row: 5, column: 3 };
    const digits = length.replace(/\D/gu, '');
    expectRefusal(() => readPattern(box(length), 'base.csv'), 'cell-not-a-number', place, digits);
  });

  it.each(['0.090', '12.345', '109.05', '1090'])('%s is none', (length) => {
    expect(readPattern(box(length), 'base.csv').pieces).toHaveLength(1);
  });
});

describe('a chart', () => {
  const charted = (line: string) => () =>
    gradeChart({ chart: `${line}\n${CANONICAL}`, base: '12' });

  it.each([
    ...['# all numbers in 16ths', '# values in meters', '# scale: 1:2', '# x 1/16 inch'],
    ...['values in 16ths', '# moves mostly mm', 'all girths doubled', 'circumference / 2'],
    ...['# values are per half body', 'twice the body girths', 'Half body'],
    ...['Note: girths are halved, see page 2'],
  ])('is refused with "%s"', (line) => {
    expectRefusal(charted(line), 'sheet-malformed', { file: 'chart', row: 1 });
    // The same words below the table, or among its rows, are no row of it.
    const below = `${CANONICAL}${line}\n`;
    const row = below.trimEnd().split('\n').length;
    const call = () => gradeChart({ chart: below, base: '12' });
    expectRefusal(call, 'sheet-malformed', { file: 'chart', row });
  });

  it.each([
    ...[
      '# hem allowance: 5 cm',
      '# side seam allowance 1 cm',
      '# with 1 cm allowances',
      '# SA 1 cm',
    ],
    ...['# seams: 5/8 in', '# hem: 2 in', '# title: Quill skirt, SA 1 cm'],
  ])('is refused with "%s"', (line) => {
    expectRefusal(charted(line), 'bad-option', { file: 'chart', row: 1 }, 'side_allowance');
  });

  it.each([
    ...['# skirt length: 50 cm', '# hip ease: 4 cm', '# Skirt length 50 cm', '# hip_ease = 4'],
    ...['# title: Quill skirt, length: 50 cm', 'skirt length: 50 cm', '# waist to hip is 8 in'],
  ])('is refused with "%s", which belongs in a row', (line) => {
    expectRefusal(charted(line), 'bad-option', { file: 'chart', row: 1 }, 'a row');
  });

  it.each([
    '# ease: 2 in',
    '# with 2 in ease',
    '# includes ease',
    '# ease included in hips',
    '# finished measurements',
  ])('is refused with "%s", which no body has', (line) => {
    expectRefusal(charted(line), 'bad-option', { file: 'chart', row: 1 }, 'hip_ease');
  });

  it.each([
    ...[
      '# body measurements, not garment measurements',
      '# no ease',
      '# without ease',
      '# no ease added',
    ],
    ...[
      '# invented for the demo',
      '# waist measured over a slip',
      '# waist: snug',
      '# spring 2026',
    ],
    ...[
      '# waist_girth: at the natural indentation',
      '# hip taken 7 in below the waist',
      '# page 12',
    ],
    ...[
      '# source: a survey of 2208 women; two-decimal cells are rounded eighths',
      '# height as told',
    ],
    ...['# waistband doubled', '# lining: double the waistband', '# one dart per half'],
    ...['# hip grows 2 in a size', '# Quill skirt, spring', '# size 14 fits a model'],
  ])('is graded with "%s"', (line) => {
    expect(charted(line)().range.sizes.length).toBeGreaterThan(1);
  });
});

describe('prose', () => {
  it.each([
    ...[
      '# seam allowances not included',
      '# excluding seam allowances',
      '# seams are not included',
    ],
    ...['# cloth 10 x 12', '# drafted in 2026', '# moves with the side', '# from the US, 14 pages'],
    ...['# invented for the demo', '# Quill skirt, spring', '# waist measured over a slip'],
    ...[
      '# source: a table of 1968, rounded to 1/16 in',
      '# title: Sorrel skirt',
      '# hip taken 7 in below the waist',
    ],
    ...['# designer: Ansa Lindqvarn (an invented studio; an invented chart, not a standard)'],
    ...[
      '# plus sizes go up from 14W',
      '# sizes up to 24',
      '# quarter of a skirt front',
      '# the way up',
    ],
    ...['# to the nearest sixteenth', '# without seam allowances', '# seams are pressed open'],
    ...[
      '# front and back are alike',
      '# copied on May 10th',
      '# 2 yards of wool',
      '# presser foot no. 3',
    ],
    ...[
      '# hem 25 in below the waist',
      '# drawn from the old block',
      '# third version, 2 darts in each half',
    ],
    ...[
      '# side seam straight from the hip',
      '# drawn to scale',
      '# fits a waist of 28 in',
      '# no allowances',
    ],
    ...[
      '# dart tip moves half as far as the side',
      '# x runs from the center to the side',
      '# y runs down',
    ],
    ...[
      '# Exercise 7, even (invented, not a standard)',
      '# every seam is walked',
      '# net, no seam allowances',
    ],
    ...['# press seam allowances toward the back', '# seam allowance to be pressed open'],
    ...['# add piping in the seams', '# includes the center back seam', '# hem is 40 in wide'],
    ...['# waist lowered at center back by 1/2 in', '# taken in 1/2 in at the waist'],
    ...['# darts, each 1/2 in wide', '# notch every 1/2 in', '# dart: 1/2 in', '# cut in halves'],
    ...['# rounded to the nearest mm', '# rounded to half inch', '# 12 stitches per inch'],
    ...['# ease reduced to 1 in', '# reduced hem sweep', '# stretch at 10 %', '# shrinks to 98 %'],
    ...['# axes of darts square to the waist', '# no cut lines', '# Inch by Inch'],
    ...['# Foot Locker skirt', '# title: Base camp skirt', '# graded by hand on the table'],
    ...[
      '# hem turned up by hand',
      '# table: the misses of 1968, page 2',
      '# rules of the front, 2nd proof',
    ],
  ])('"%s" is left alone', (line) => {
    expect(pattern(line).pieces).toHaveLength(1);
    expect(gradedWith(line).rules.sizes).toHaveLength(3);
  });
});
