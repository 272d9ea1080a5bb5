import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { COMMON_PARAMETERS } from '../../src/draft/parameter-table';
import { gradeSpec } from '../../src/jobs/grade-spec';
import { specFiles } from '../../src/files/spec-files';
import { sampleTable } from '../../src/files/spec-tables';
import type { SpecRequest } from '../../src/jobs/grade-spec';
import { STYLES } from '../../src/draft/styles';
import { measureOf } from '../../src/grade/graded-pattern';
import { finishedMeasures } from '../../src/measure/finished';
import { deviations, sampleFits } from '../../src/measure/sample';
import type { Spec } from '../../src/measure/spec';
import { skirtPoints } from '../../src/measure/skirt-points';
import { USUAL_TOLERANCES, toleranceSettings, usualTolerance } from '../../src/measure/tolerances';
import { parseLength } from '../../src/table/number-cell';
import { toMillimeters } from '../../src/units';
import { rowsOf } from '../csv-tables';
import { expectRefusal } from '../expect-refusal';
import { FRONT_AND_BACK, graded } from '../given/sheets';
import { chartText } from '../skirts';
import { gradeLazily } from '../graded';

const inch = (value: number): number => toMillimeters(value, 'in');

const RULES = `# sizes: 8, 10, 12, 14, 16
rule,piece,point,step_dx,step_dy
side,,,1/4,0
side,front,side_waist,,
side,front,side_hip,,
low,,,1/4,1/4
low,front,side_hem,,
,front,center_hem,0,1/4
,front,center_waist,0,0
side,back,side_waist,,
side,back,side_hip,,
low,back,side_hem,,
,back,center_hem,0,1/4
,back,center_waist,0,0
`;
const MEASURES = `# unit: in
code,measure,path,of,times,taken,minus,plus
W,waist,along,front.waist + back.waist,2,girth,,
F,flat waist,along,front.waist + back.waist,2,flat,,
H,hip,across,front.side_hip + back.side_hip,2,girth,,
D,dart level,across,front.note_level,2,girth,,
L,length,between,front.center_waist to front.center_hem,,length,1/16,1/16
`.replace(/^D.*\n/mu, '');

const RESULT = graded(FRONT_AND_BACK, RULES);
const spec = (request: SpecRequest): ReturnType<typeof gradeSpec> =>
  gradeSpec({ ...RESULT, display: { unit: 'in', fractions: false } }, request);
const measures = { text: MEASURES, file: 'measures.csv' };

describe('points of measure of a given pattern', () => {
  const { rows } = spec({ measures }).spec;
  it.each([
    // The waist is 7.5 in less a dart of 1 in, in each of four quarters.
    ['W', [24, 25, 26, 27, 28]],
    ['F', [12, 12.5, 13, 13.5, 14]],
    ['H', [34, 35, 36, 37, 38]],
    ['L', [24.5, 24.75, 25, 25.25, 25.5]],
  ])('%s', (code, inches) => {
    const row = rows.find((candidate) => candidate.code === code);
    row?.values.forEach((value, i) => expect(value).toBeCloseTo(inch(inches[i] ?? NaN), 6));
    expect(row?.values).toHaveLength(5);
  });

  it('leaves an open dart out of a width', () => {
    const level = MEASURES.replace('front.side_hip + back.side_hip,2', 'front.dart_in,1');
    const { spec: found } = spec({ measures: { text: level, file: 'measures.csv' } });
    expect(found.rows[2]?.values[2]).toBeCloseTo(inch(6.5), 6);
  });

  it.each([
    ['an edge', 'along,front.waist', 'along,front.yoke', 'edge-unknown', 4],
    ['a point', 'front.center_hem', 'front.cuff', 'point-unknown', 4],
    ['a path', 'between,', 'around,', 'bad-option', 3],
    ['a second code', 'F,flat', 'W,flat', 'measurement-twice', 1],
  ] as const)('refuses %s that it does not know', (_, right, wrong, code, column) => {
    const text = MEASURES.replace(right, wrong);
    const row = text.split('\n').findIndex((line, i) => line !== MEASURES.split('\n')[i]) + 1;
    expectRefusal(() => spec({ measures: { text, file: 'measures.csv' } }), code, {
      file: 'measures.csv',
      row,
      column,
    });
  });
});

describe('names in a list and in a sample', () => {
  it('are found in any case and spelling, in any order of columns', () => {
    const loose = `code;path;measure;of;times;taken;minus;plus
W;Along;waist;FRONT.Waist + Back.waist;2;Girth;;
F;along;flat waist;front.waist+back.waist;2;FLAT;;
H;across;hip;Front.Side Hip + back side-hip;2;girth;;
L;Between;length;front.Center-Waist TO front center hem;;length;1/16;+1/16
`;
    const own = spec({ measures: { text: loose, file: 'loose.csv' } }).spec;
    expect(own.rows.map(({ values }) => values)).toEqual(
      spec({ measures }).spec.rows.map(({ values }) => values),
    );
    const text = 'size;value;measure\n10;25;w\n10;12,5;Flat-Waist\n';
    const { sample } = spec({ measures, measured: { text, file: 'sample.csv' } });
    expect(sample.map(({ row, size }) => [row.code, size])).toEqual([
      ['W', 1],
      ['F', 1],
    ]);
  });

  it('are refused where more than one can be meant', () => {
    const two = `${MEASURES}w,hip,along,front.waist,2,girth,,\n`;
    const text = 'measure,size,value\nHip,10,25\n';
    expectRefusal(
      () => spec({ measures: { text: two, file: 'm.csv' }, measured: { text, file: 's.csv' } }),
      'measure-unknown',
      { file: 's.csv', row: 2, column: 1 },
      'more than one',
      'H (hip), w (hip)',
    );
  });

  it.each([
    ['-1/4', '+1/2', [0.25, 0.5]],
    ['±1/4', '', [0.25, 0.25]],
    ['', '+/- 1/4', [0.25, 0.25]],
    ['\u22121/4', '1/2', [0.25, 0.5]],
  ])('take tolerances as people sign them: %s and %s', (minus, plus, inches) => {
    const text = MEASURES.replace('1/16,1/16', `${minus},${plus}`);
    const row = spec({ measures: { text, file: 'm.csv' } }).spec.rows.at(-1);
    expect(row?.tolerance).toEqual({ minus: inch(inches[0] ?? NaN), plus: inch(inches[1] ?? NaN) });
  });

  it.each([
    ['+1/4', '1/4', 7, 'minus has the other sign'],
    ['1/4', '-1/4', 8, 'plus has the other sign'],
  ])(
    'refuse tolerances with the sign of the other column: %s and %s',
    (minus, plus, column, words) => {
      const text = MEASURES.replace('1/16,1/16', `${minus},${plus}`);
      const place = { file: 'm.csv', row: 6, column };
      expectRefusal(() => spec({ measures: { text, file: 'm.csv' } }), 'bad-option', place, words);
    },
  );

  it('give blanks no meaning of their own', () => {
    const text = `# blank: 0\n${MEASURES}`;
    expectRefusal(() => spec({ measures: { text, file: 'm.csv' } }), 'bad-option', {
      ...{ file: 'm.csv', row: 1 },
    });
  });

  it('need a unit where lengths are shown in another than the pattern is in', () => {
    const shown = { ...RESULT, display: { unit: 'cm', fractions: false } } as const;
    const text = 'measure,size,value\nW,10,25\n';
    const place = { file: 's.csv' };
    const call = (unit: string) => (): unknown =>
      gradeSpec(shown, { measures, measured: { text: unit + text, file: 's.csv' } });
    expectRefusal(call(''), 'unit-missing', place);
    expect(call('# unit: in\n')).not.toThrow();
  });
});

describe('tolerances', () => {
  it('follow the grade step of a girth, and halve for what is laid flat', () => {
    const at = (step: number): number => usualTolerance('girth', 'girth', inch(step)).plus;
    expect([0.75, 1, 1.25, 1.5, 2].map(at)).toEqual([0.25, 0.375, 0.375, 0.5, 0.5].map(inch));
    expect(usualTolerance('girth', 'flat', inch(1))).toEqual({
      minus: inch(3 / 16),
      plus: inch(3 / 16),
    });
  });

  it('warn where neighboring sizes overlap, at the limit too', () => {
    const overlaps = (minus: string, plus: string): readonly string[] => {
      const text = MEASURES.replace('2,girth,,\nF', `2,girth,${minus},${plus}\nF`);
      return spec({ measures: { text, file: 'measures.csv' } })
        .findings.filter(
          ({ check, severity }) => check === 'tolerance-overlap' && severity === 'warning',
        )
        .map(({ subject }) => subject);
    };
    expect(overlaps('1/2', '1/2')).toContain('W waist');
    expect(overlaps('1/2', '7/16')).not.toContain('W waist');
  });
});

describe('the tables of a spec', () => {
  const { files } = specFiles(
    { ...RESULT, display: { unit: 'in', fractions: false } },
    { measures },
  );
  const read = (name: string) => rowsOf(files.find((file) => file.name === name)?.text ?? '');

  it('have numbers as numbers and mark the base', () => {
    const rows = read('spec.csv');
    expect(rows).toHaveLength(4 * 5);
    for (const row of rows) {
      for (const column of ['in', 'cm', 'minus_in', 'plus_in', 'minus_cm', 'plus_cm']) {
        expect(Number(row[column]), column).not.toBeNaN();
      }
      expect(row.base).toBe(row.size === '12' ? 'base' : '');
      expect(Math.abs(Number(row.cm) - Number(row.in) * 2.54)).toBeLessThan(0.006);
    }
    const sheet = read('grade-sheet.csv');
    expect(Object.keys(sheet[0] ?? {})).toContain('12 (base)');
    expect(sheet.map(({ unit }) => unit).slice(0, 3)).toEqual(['in', 'in_fraction', 'cm']);
    for (const { unit, tolerance_minus, step_least, '12 (base)': value } of sheet) {
      if (unit === 'in_fraction') continue;
      for (const cell of [tolerance_minus, step_least, value]) expect(Number(cell)).not.toBeNaN();
    }
  });

  it('write no fraction that a spreadsheet takes for a date', () => {
    for (const row of read('grade-sheet.csv')) {
      for (const cell of Object.values(row)) expect(cell).not.toMatch(/^-?\d+\/\d+$/u);
    }
  });

  it('are those of the usual points for a drafted skirt, with the tolerances of its style', () => {
    const chart = chartText(
      'in',
      { waist_girth: ['26', '28', '30'], hip_girth: ['36', '38', '40'] },
      ['S', 'M', 'L'],
    );
    const result = gradeLazily({
      style: 'pencil',
      chart,
      base: 'M',
      set: { hem_tolerance: '3/4 in' },
    });
    const found = gradeSpec(result, {}).spec;
    expect(found.rows.map(({ measure }) => measure)).toEqual([
      ...['waist', 'hip', 'hem', 'center_front_length', 'center_back_length', 'side_seam_front'],
      'zip_length',
    ]);
    expect(found.rows[0]?.tolerance.plus).toBeCloseTo(inch(1 / 2), 9);
    expect(found.rows[2]?.tolerance.plus).toBeCloseTo(inch(3 / 4), 9);
  });
});

describe('the usual points of a skirt', () => {
  const chart = chartText('in', { waist_girth: ['26', '28'], hip_girth: ['36', '38'] });

  it('are those of the finished measurements, in a spec with a code', () => {
    for (const { name: style } of STYLES) {
      const result = gradeLazily({ chart, base: '1', style });
      const { range } = result;
      const { rows } = gradeSpec(result, {}).spec;
      const codes = rows.map(({ code }) => code);
      expect(codes).toEqual([...new Set(codes)].sort());
      for (const { measure, values } of rows) {
        expect(values, `${style} ${measure}`).toEqual(
          range.sizes.map((size) => measureOf(size, measure)),
        );
      }
      // Every dart of every panel is measured, whatever it is called and however many there are.
      const darts = range.plans.flatMap((plan) =>
        plan.part === 'panel' ? plan.darts.map((dart) => `${plan.name}_${dart.name}`) : [],
      );
      const intakes = (range.sizes[0]?.measures ?? [])
        .filter(({ name }) => name.endsWith('_intake'))
        .map(({ name }) => name.replace('_intake', ''));
      expect(intakes).toEqual(darts);
      expect(darts.length).toBeGreaterThan(0);
    }
  });

  it('are none for a pattern that declares no parts of a skirt', () => {
    const { plans, sizes } = RESULT.range;
    expect(finishedMeasures(skirtPoints(plans), sizes[0]?.pieces ?? [])).toEqual([]);
  });

  it('measure what a list of the same paths measures', () => {
    const result = gradeLazily({ chart, base: '1', style: 'shared-pencil' });
    const { range } = result;
    const list = `code,measure,path,of,times
1,waist,along,waistband.waist,1
2,hip,across,front.center_hip + back.center_hip,2
3,hem,along,front.hem + back.hem,2
4,center_back_length,between,back.center_waist to back.center_hem,1
5,skirt_waist_edge,along,front.waist + back.waist,2
`;
    const request = { measures: { text: list, file: 'list.csv' } };
    for (const { measure, values } of gradeSpec(result, request).spec.rows) {
      expect(values, measure).toEqual(range.sizes.map((size) => measureOf(size, measure)));
    }
  });

  it('have the tolerances that a block proposes, for any pattern', () => {
    // Proposals: common practice, no source.
    expect(USUAL_TOLERANCES).toEqual({
      market: 'in',
      girth: 0,
      hem: inch(1 / 2),
      length: inch(3 / 8),
      band: inch(1 / 8),
      opening: inch(1 / 4),
    });
  });

  it('are round in the unit of the pattern', () => {
    // Proposals: common practice, no source.
    const metric = toleranceSettings(new Map(), 'cm');
    expect(metric).toEqual({
      ...{ market: 'metric', girth: 0, hem: 12, length: 10, band: 3, opening: 6 },
    });
    const at = (step: number): number => usualTolerance('girth', 'girth', step, metric).plus;
    expect([20, 25, 40].map(at)).toEqual([6, 10, 12]);
    const centimeters = gradeLazily({
      chart: chartText('cm', { waist_girth: ['66', '70'], hip_girth: ['92', '96'] }),
      base: '1',
      style: 'pencil',
    });
    for (const { tolerance } of gradeSpec(centimeters, {}).spec.rows)
      expect(tolerance.plus % 1).toBe(0);
  });

  it('of girths are those that their parameter tells in words', () => {
    const { meaning = '' } = COMMON_PARAMETERS.find(({ name }) => name === 'girth_tolerance') ?? {};
    const told = [...meaning.matchAll(/([\d.]+) cm \(([\d /]+) in\)/gu)].map(([, cm, words]) => ({
      metric: 10 * Number(cm),
      in: parseLength(words ?? '', 'in'),
    }));
    const [small, step, middle, large, far] = told;
    const market = { metric: toleranceSettings(new Map(), 'cm'), in: toleranceSettings() };
    for (const unit of ['metric', 'in'] as const) {
      const at = (mm: number): number => usualTolerance('girth', 'girth', mm, market[unit]).plus;
      const [from = NaN, to = NaN] = [step?.[unit], far?.[unit]];
      const wanted = [small, middle, middle, large].map((one) => one?.[unit]);
      // A step counts as reached where it is short by no more than a ruler shows.
      expect([from - 2, from, to - 2, to].map(at)).toEqual(wanted);
    }
  });
});

describe('a measured sample', () => {
  const sample = (rows: string) =>
    spec({
      measures,
      measured: { text: `# unit: in\nmeasure,size,value\n${rows}`, file: 'sample.csv' },
    });

  it('passes, or is out by so much', () => {
    // Waist 26 in at the base, 3/8 in tolerance at a step of 1 in.
    const { sample: found, findings } = sample('waist,12,26 3/8\nW,14,27 1/2\n');
    expect(found.map(({ beyond }) => beyond)).toEqual([0, expect.closeTo(inch(1 / 8), 6)]);
    expect(
      findings.filter(({ check }) => check === 'sample').map(({ severity }) => severity),
    ).toEqual(['ok', 'fail']);
  });

  it('tells a base that is off from a grade that is off', () => {
    const verdict = (rows: string): string | undefined =>
      sample(rows).findings.find(({ check }) => check === 'sample-fit')?.message;
    expect(verdict('W,8,24 1/2\nW,12,26 1/2\nW,16,28 1/2\n')).toMatch(
      /^the base is off: all sizes \+0.5 in; the grade adds 0 in/u,
    );
    expect(verdict('W,8,23\nW,12,26\nW,16,29\n')).toMatch(
      /^the grade is off: all sizes 0 in; the grade adds \+2 in from 8 to 16 \(50 % of the growth\)/u,
    );
    expect(verdict('W,12,26\n')).toMatch(/one size says nothing about the grade/u);
  });

  it('is fitted exactly where base and grade err by straight lines', () => {
    const error = fc.double({ min: -20, max: 20, noNaN: true });
    const slope = fc.double({ min: -0.5, max: 0.5, noNaN: true });
    const own: Spec = spec({ measures }).spec;
    const [row] = own.rows;
    if (row === undefined) throw new Error('no row');
    fc.assert(
      fc.property(error, slope, (constant, grade) => {
        const found = deviations(
          row.values.map((value, size) => ({
            row,
            size,
            value: value + constant + grade * (value - (row.values[own.base] ?? NaN)),
            when: { wash: undefined, date: undefined },
          })),
        );
        const [fit] = sampleFits(found, own);
        expect(fit?.constant).toBeCloseTo(constant, 6);
        expect(fit?.slope).toBeCloseTo(grade, 6);
        expect(fit?.rest).toBeLessThan(1e-6);
      }),
    );
  });

  it('names a size that alone lies off the line of the others, and blames neither base nor grade', () => {
    const fit = (rows: string) => sample(rows).findings.find(({ check }) => check === 'sample-fit');
    // The waist is 24, 25, 26, 27 and 28 in, and 3/8 in may be off: 14 is 3/4 in too large, all else as it should be.
    const one = fit('W,8,24\nW,10,25\nW,12,26\nW,14,27 3/4\nW,16,28\n');
    expect(one).toMatchObject({ severity: 'warning', size: '14' });
    expect(one?.message).toMatch(
      /^size 14 alone is \+0.75 in off the line of the others, .* without it neither base nor grade is off by more than the tolerance: all sizes 0 in; the grade adds 0 in/u,
    );
    // Beside a base that is half an inch too small, too.
    const both = fit('W,8,23 1/2\nW,10,24 1/2\nW,12,25 1/2\nW,14,27 1/4\nW,16,27 1/2\n');
    expect(both?.message).toMatch(
      /^size 14 alone is \+0.75 in .* the base is off: all sizes -0.5 in/u,
    );
  });

  it.each([
    ['a grade that is off', 'W,8,23\nW,10,24 1/2\nW,12,26\nW,14,27 1/2\nW,16,29\n'],
    ['three sizes, of which any may be it', 'W,8,24\nW,12,26 3/4\nW,16,28\n'],
    ['a size within its tolerance', 'W,8,24\nW,10,25\nW,12,26\nW,14,27 5/16\nW,16,28\n'],
    ['sizes that scatter', 'W,8,24 1/2\nW,10,24 1/2\nW,12,26 1/2\nW,14,26 1/2\nW,16,28 3/4\n'],
  ])('names none for %s', (_, rows) => {
    for (const { message } of sample(rows).findings) expect(message).not.toContain('alone');
  });

  it('judges each time by itself, and tells what was lost from the first to the last', () => {
    const text =
      '# unit: in\nmeasure,size,value,wash,date\n' +
      'W,12,25,5,2026-03-20\nW,16,27,5,2026-03-20\nW,12,26,0,2026-03-01\nW,16,28,0,2026-03-01\n';
    const { findings, sample: found } = spec({ measures, measured: { text, file: 'sample.csv' } });
    const messages = (check: string) =>
      findings.filter((own) => own.check === check).map(({ message }) => message);
    expect(messages('sample-fit')).toEqual([
      expect.stringMatching(/^2026-03-01, unwashed: neither base nor grade is off/u),
      expect.stringMatching(/^2026-03-20, after 5 washes: the base is off: all sizes -1 in/u),
    ]);
    // An inch of 26 is 3.8 %.
    expect(messages('sample-change')).toEqual([
      'from the first time to the last -1 in, -3.8 % of 26 in in the base: ' +
        '0 in 2026-03-01, unwashed; -1 in 2026-03-20, after 5 washes',
    ]);
    expect(rowsOf(sampleTable(found, spec({ measures }).spec))[0]).toMatchObject({
      ...{ code: 'W', size: '12', result: 'out', date: '2026-03-20', wash: '5' },
    });
  });

  it.each([
    ['W,12,26,some,2026-03-01', 4],
    ['W,12,26,,2026-03-01', 4],
    ['W,12,26,0,3/1/26', 5],
    ['W,12,26,0,2026-02-30', 5],
  ])('refuses a time that is not clear: %s', (row, column) => {
    const text = `# unit: in\nmeasure,size,value,wash,date\n${row}\n`;
    expectRefusal(
      () => spec({ measures, measured: { text, file: 's.csv' } }),
      'bad-option',
      { file: 's.csv', row: 3, column },
      'it is not clear when',
    );
  });

  it.each([
    ['a measure', 'cuff,12,3\n', 'measure-unknown', 1],
    ['a size', 'W,13,3\n', 'size-unknown', 2],
    ['a length', 'W,12,wide\n', 'cell-not-a-number', 3],
  ] as const)('is refused with %s that is not known', (_, rows, code, column) => {
    expectRefusal(() => sample(rows), code, { file: 'sample.csv', row: 3, column });
  });
});
