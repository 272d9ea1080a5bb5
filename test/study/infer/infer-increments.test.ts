import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestTables } from '../../../src/study/infer/compare-tables';
import { inferIncrements } from '../../../src/study/infer/infer-increments';
import { leastSquares } from '../../../src/study/infer/least-squares';
import { longFile } from '../../../src/files/result-file';
import { gradeRulesRows } from '../../../src/files/tables';
import type { GradeRequest } from '../../../src/index';
import { anyChart, sixteenthsText } from '../../skirts';
import { expectRefusal } from '../../expect-refusal';
import { gradeLazily } from '../../graded';
import { runs } from '../../samples';

function rulesOf(request: GradeRequest): string {
  // Without the drawings, which nobody looks at here.
  const { range, ruleTexts, shown, display } = gradeLazily(request);
  return longFile('grade-rules.csv', () => gradeRulesRows(range, ruleTexts, shown, display)).text;
}

describe('least squares', () => {
  it('refuses a sheet that is still to be filled in', () => {
    const sheet = '# unit: in\n# base: 12\npoint,axis,10,12,14\nfront.side_waist,dx,,,\n';
    expectRefusal(() => inferIncrements({ sheet, file: 'blank.csv' }), 'sheet-malformed', {
      file: 'blank.csv',
    });
  });

  it('solves equations worked out by hand, and tells what is free', () => {
    // The line through (0, 1), (1, 3), (2, 4) by the normal equations: 1.5 x + 7/6.
    const fit = leastSquares(
      [
        [0, 1],
        [1, 1],
        [2, 1],
      ],
      [1, 3, 4],
    );
    expect(fit.values[0]).toBeCloseTo(1.5, 10);
    expect(fit.values[1]).toBeCloseTo(7 / 6, 10);
    expect(fit.residuals.map((one) => Math.round(one * 6))).toEqual([1, -2, 1]);
    // Only the sum of the first two is given.
    const open = leastSquares(
      [
        [1, 1, 0],
        [2, 2, 0],
        [0, 0, 1],
      ],
      [3, 6, 5],
    );
    expect(open.values.slice(0, 2)).toEqual([undefined, undefined]);
    expect(open.values[2]).toBeCloseTo(5, 10);
  });
});

describe('increments behind a sheet', () => {
  it('are those of the chart that the sheet was graded from', () => {
    fc.assert(
      fc.property(anyChart, (chart) => {
        const text = sixteenthsText(chart);
        const base = 0;
        const { sizes, measurements } = inferIncrements({
          style: 'pencil',
          sheet: rulesOf({ style: 'pencil', chart: text, base: '1' }),
          base: '1',
        });
        for (const { label, increments, residual } of sizes) {
          const i = Number(label) - 1;
          const grown = {
            waist_girth: chart.waist,
            hip_girth: chart.hip,
            waist_to_hip: chart.hipDepth,
            skirt_length: chart.length,
          };
          for (const [name, row] of Object.entries(grown))
            expect((increments[measurements.indexOf(name)] ?? NaN) * 16).toBeCloseTo(
              ((row[i] ?? NaN) - (row[base] ?? NaN)) * 25.4,
              1,
            );
          expect(residual).toBeLessThan(0.001);
        }
      }),
      { numRuns: runs(6) },
    );
  });

  it('come near in a style whose rules bend, and say so', () => {
    const chart = sixteenthsText({
      waist: [424, 440, 456],
      hip: [592, 608, 624],
      hipDepth: [128, 128, 128],
      length: [400, 404, 408],
    });
    const sheet = rulesOf({ chart, base: '2', style: 'shared-drop' });
    const { sizes, measurements, atStandIn } = inferIncrements({ sheet, style: 'shared-drop' });
    expect(atStandIn).toBe(true);
    expect((sizes[2]?.increments[measurements.indexOf('waist_girth')] ?? NaN) / 25.4).toBeCloseTo(
      1,
      1,
    );
  });

  it.each([
    ['1', ['dart_tip']],
    ['2', ['inner_dart_tip', 'outer_dart_tip']],
  ])(
    'take the number of darts in back, %s, from the points that the sheet names',
    (darts, tips) => {
      // An inch a size at waist and hip, in sixteenths; invented.
      const chart = sixteenthsText({
        waist: [424, 440, 456],
        hip: [592, 608, 624],
        hipDepth: [128, 128, 128],
        length: [400, 404, 408],
      });
      const style = 'shared-pencil';
      const sheet = rulesOf({ chart, base: '2', style, set: { back_darts: darts } });
      const told = inferIncrements({ sheet, style });
      const points = new Set(
        told.sheet.cells.filter(({ piece }) => piece === 'back').map(({ point }) => point),
      );
      expect([...points].filter((point) => point.endsWith('dart_tip')).sort()).toEqual(tips);
      const at = (name: string): number => told.measurements.indexOf(name);
      for (const name of ['waist_girth', 'hip_girth'])
        expect((told.sizes[2]?.increments[at(name)] ?? NaN) / 25.4).toBeCloseTo(1, 1);
      // What the caller says of the darts goes before the sheet, which then names points that are not there.
      const other = darts === '1' ? '2' : '1';
      const row =
        sheet.split('\n').findIndex((line) => /^back,(inner_|outer_)?dart/u.test(line)) + 1;
      expectRefusal(
        () => inferIncrements({ sheet, style, set: { back_darts: other } }),
        'point-unknown',
        { file: 'sheet', row, column: 2 },
        'the piece back has no such point',
      );
    },
  );

  it('stay open where no cell tells them', () => {
    const sheet = '# unit: in\npoint,axis,8,10\nfront.side_waist,dx,0,1/4\n';
    const inference = inferIncrements({ style: 'pencil', sheet });
    expect(inference.base).toBe('8');
    expect(inference.measurements).toEqual(['waist_girth']);
    expect(inference.unseen).toContain('hip_girth');
    expect(inference.sizes[1]?.increments[0]).toBeCloseTo(25.4, 9);
    // Only the handle between waist and hip: neither is told.
    const between = inferIncrements({
      style: 'pencil',
      sheet: sheet.replace('side_waist', 'side_waist_handle'),
    });
    expect(between.sizes[1]?.increments).toEqual([undefined, undefined]);
  });

  it('name the cell that contradicts the others', () => {
    const sheet =
      '# unit: in\npoint,axis,8,10\nfront.side_waist,dx,0,1/4\nfront.dart_tip,dx,0,1/8\n' +
      'back.side_waist,dx,0,1/4\nback.dart_tip,dx,0,1/2\n';
    const { sizes } = inferIncrements({ style: 'pencil', sheet });
    expect(sizes[1]?.leftOut).toEqual([
      {
        cell: 'back.dart_tip dx',
        given: expect.closeTo(12.7, 9) as number,
        meant: expect.closeTo(25.4 / 8, 9) as number,
        why: 'against',
      },
    ]);
    // The mean of all four would be 1.3 in: (2 * 2 + 1 + 2 * 2 + 4) / (4 + 1 + 4 + 1) eighths for 1/8.
    expect((sizes[1]?.increments[0] ?? NaN) / 25.4).toBeCloseTo(1, 9);
  });

  it('are open where two cells contradict each other and nothing tells which is wrong', () => {
    const sheet =
      '# unit: in\npoint,axis,8,10\nfront.side_waist,dx,0,1/4\nback.side_waist,dx,0,1/2\n';
    const { sizes } = inferIncrements({ style: 'pencil', sheet });
    expect(sizes[1]?.increments).toEqual([undefined]);
    expect(sizes[1]?.leftOut.map(({ cell, why }) => `${cell} ${why}`)).toEqual([
      'front.side_waist dx either',
      'back.side_waist dx either',
    ]);
  });

  it('show a mean only where no few cells are to blame, and leave nothing out then', () => {
    const sheet =
      '# unit: in\npoint,axis,8,10\n' +
      ['front.side_waist', 'front.dart_inner', 'back.side_waist', 'back.dart_inner']
        .map((point, i) => `${point},dx,0,${[0.25, 0.5, 0.75, 1][i] ?? 0}\n`)
        .join('');
    const { sizes } = inferIncrements({ style: 'pencil', sheet });
    expect(sizes[1]?.leftOut).toEqual([]);
    // Normal equations in eighths: (2 * 2 + 4 + 2 * 6 + 8) / 10 for 1/8 of the waist.
    expect((sizes[1]?.increments[0] ?? NaN) / 25.4).toBeCloseTo(2.8, 9);
    expect(sizes[1]?.worst?.miss).toBeGreaterThan(1);
  });

  it('are read from the steps, from another zero, and from the large size down', () => {
    const steps = '# unit: in\npoint,axis,12,10,8\nfront.side_hip,step_dx,1/4,1/2,0\n';
    const read = inferIncrements({ style: 'pencil', sheet: steps, base: '8' });
    expect(read.sizes.map(({ label }) => label)).toEqual(['8', '10', '12']);
    expect(read.sizes.map(({ increments }) => Math.round((increments[0] ?? NaN) / 25.4))).toEqual([
      0, 2, 3,
    ]);
    const side =
      '# unit: in\n# zero: side_hip\npoint,axis,8,10\nfront.side_hip,dx,0,0\nfront.center_hip,dx,0,-1/4\n' +
      'front.side_waist,dx,0,1/8\n';
    const { measurements, sizes } = inferIncrements({ style: 'pencil', sheet: side });
    const at = (name: string) =>
      (sizes.at(-1)?.increments[measurements.indexOf(name)] ?? NaN) / 25.4;
    expect(at('hip_girth')).toBeCloseTo(1, 9);
    expect(at('waist_girth')).toBeCloseTo(1.5, 9);
  });

  it('are refused where the order of the sizes is not told, with words of the sheet alone', () => {
    const sheet = '# unit: in\npoint,axis,S,M\nfront.side_waist,dx,1/4,1/2\n';
    const way = 'Allowed: a line such as `# sizes: XS, S, M, L` in it.';
    const infer = () => inferIncrements({ style: 'pencil', sheet, base: 'XS' });
    expectRefusal(infer, 'size-missing', { file: 'sheet' }, way);
  });

  it('stay open where the cells hold and do not tell them apart', () => {
    // In the shaped styles the corner at the waist moves with hip, waist and hip depth at once.
    const sheet =
      '# unit: in\npiece,point,axis,8,10,12\nfront,side_waist,dx,-0.25,0,0.25\n' +
      'front,side_hip,dx,-0.25,0,0.25\n';
    const request = { style: 'shared-pencil', sheet, base: '10' };
    const { measurements, sizes } = inferIncrements(request);
    expect([...measurements].sort()).toEqual(['hip_girth', 'waist_girth', 'waist_to_hip']);
    for (const { label, increments, residual, worst, leftOut } of sizes) {
      const known = Object.fromEntries(measurements.map((name, k) => [name, increments[k]]));
      expect(leftOut).toEqual([]);
      expect(residual).toBeLessThan(1e-9);
      if (label === '10') continue;
      // A quarter of the hip is on each half panel, so that 1/4 in there is 1 in of hip.
      expect(known.hip_girth).toBeCloseTo(label === '12' ? 25.4 : -25.4, 6);
      expect([known.waist_girth, known.waist_to_hip]).toEqual([undefined, undefined]);
      expect(worst?.miss).toBeLessThan(1e-9);
    }
  });

  it('need a base', () => {
    const sheet = '# unit: in\npoint,axis,8,10\nfront.side_waist,dx,1/4,1/2\n';
    expectRefusal(() => inferIncrements({ style: 'pencil', sheet }), 'size-missing', {
      file: 'sheet',
    });
    expect(
      inferIncrements({ style: 'pencil', sheet, base: '6' }).sizes.map(({ label }) => label),
    ).toEqual(['6', '8', '10']);
  });
});

// sewingscholar.blogspot.com (2011-02), US pattern-industry misses sizing: waist 23 to 34, hip 32 1/2
// to 44 in sizes 6 to 20; its steps, typed here.
it('the steps of a published chart are nearest to the table of that chart', () => {
  const waist = [1, 1, 1.5, 1.5, 2, 2, 2];
  const hip = [1, 1, 1.5, 2, 2, 2, 2];
  const steps = waist.map((step, i) => ({ waist: step * 25.4, hip: (hip[i] ?? NaN) * 25.4 }));
  const [nearest] = nearestTables(steps);
  expect(nearest).toMatchObject({ from: '6', to: '20', count: 7 });
  expect(nearest?.table.id).toBe('home-misses-1968');
  expect(nearest?.largest).toBeCloseTo(0, 6);
});
