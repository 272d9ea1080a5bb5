import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { board, markdown } from '../../../src/study/explain/board';
import { derivation } from '../../../src/study/explain/derivation';
import { exactText, shareFraction } from '../../../src/study/explain/exact';
import { ladderDrawing } from '../../../src/study/explain/ladder-drawing';
import { svg } from '../../../src/render/svg';
import { anyChart, inches, quarterByHand, sixteenthsText } from '../../skirts';
import { expectRefusal } from '../../expect-refusal';
import { runs, some } from '../../samples';
import { STYLE_NAMES } from '../../styles';
import { formulaChain } from '../../../src/study/explain/formula-chain';
import { needValues } from '../../../src/chart/need-values';
import { gradeLazily } from '../../graded';

const INCHES = { unit: 'in', fractions: true } as const;

/** A whole number of 3840ths of `3`, `1 3/8` or `-7/16`: every share of a sixteenth there is. */
function parts(text: string): number {
  const [, sign, whole, mixedTop, mixedBottom, top, bottom] =
    /^(-?)(?:(\d+)(?: (\d+)\/(\d+))?|(\d+)\/(\d+))$/.exec(text) ?? [];
  const value =
    top === undefined
      ? Number(whole) * 3840 +
        (mixedTop === undefined ? 0 : (Number(mixedTop) * 3840) / Number(mixedBottom))
      : (Number(top) * 3840) / Number(bottom);
  expect(Number.isInteger(value), `${text} is a fraction of 3840ths`).toBe(true);
  return sign === '-' ? -value : value;
}

describe('a derivation', () => {
  it('adds up to what the draft by hand gives, in whole numbers', () => {
    fc.assert(
      fc.property(
        anyChart,
        fc.constantFrom('side_waist', 'side_hip', 'dart_tip', 'side_hem'),
        (chart, point) => {
          const base = chart.waist.length > 2 ? '2' : '1';
          const result = gradeLazily({ style: 'pencil', chart: sixteenthsText(chart), base });
          const derived = derivation(result, `front.${point}`, 25.4 / 16);
          const place = (i: number) =>
            quarterByHand('front', {
              waist: (chart.waist[i] ?? NaN) / 16,
              hip: (chart.hip[i] ?? NaN) / 16,
              hipDepth: (chart.hipDepth[i] ?? NaN) / 16,
              length: (chart.length[i] ?? NaN) / 16,
            })[point] ?? [NaN, NaN];
          const from = place(Number(base) - 1);
          derived.axes.forEach(({ steps }, axis) => {
            for (const { to, sum, terms } of steps) {
              const by = (place(Number(to) - 1)[axis] ?? NaN) - (from[axis] ?? NaN);
              expect(sum.top / sum.bottom).toBeCloseTo(by, 10);
              for (const { before, after, growth } of terms)
                expect(parts(exactText(growth, 'in'))).toBe(
                  parts(exactText(after, 'in')) - parts(exactText(before, 'in')),
                );
            }
          });
        },
      ),
      { numRuns: runs(8) },
    );
  });

  it('writes products and sums that are true, read back from its own words', () => {
    fc.assert(
      fc.property(anyChart, (chart) => {
        const result = gradeLazily({ style: 'pencil', chart: sixteenthsText(chart), base: '1' });
        const derived = derivation(result, 'back.dart_outer', 25.4 / 16);
        const cells = board(derived, INCHES).flatMap((line) =>
          line.kind === 'table' ? line.rows.flat() : [],
        );
        for (const cell of cells) {
          const [, a = '', sign, b = '', c = ''] =
            /^(\S+(?: \S+\/\S+)?) ([x+-]) (.+) = (.+)$/.exec(cell) ?? [];
          if (sign === 'x') expect(parts(c) * 3840).toBe(parts(a) * parts(b));
          if (sign === '+') expect(parts(c)).toBe(parts(a) + parts(b));
          if (sign === '-') expect(parts(c)).toBe(parts(a) - parts(b));
        }
      }),
      { numRuns: runs(6) },
    );
  });

  it.each(['pencil', 'shared-drop', 'fixed-dart'])(
    'of %s has the slopes between the neighbors of the base',
    (style) => {
      // Neighbors a sixteenth on both sides of the base: what sizes take from the base, such as the
      // direction of a dart's axis, stays as it is.
      const same = (value: number): readonly number[] => [value, value, value];
      const graded = gradeLazily({
        chart: sixteenthsText({
          waist: [415, 416, 417],
          hip: same(576),
          hipDepth: same(128),
          length: same(402),
        }),
        base: '2',
        style,
      });
      const share = derivation(graded, 'front.side_waist', 1).axes[0]?.terms.find(
        ({ measurement }) => measurement === 'waist_girth',
      )?.share;
      const [up] = inches(graded, '3', 'front', 'side_waist');
      const [down] = inches(graded, '1', 'front', 'side_waist');
      expect((share?.top ?? NaN) / (share?.bottom ?? NaN)).toBeCloseTo((up - down) * 8, 5);
    },
  );

  it('tells the formula, the share and one size in words', () => {
    const chart = sixteenthsText({
      waist: [400, 416, 448],
      hip: [560, 576, 600],
      hipDepth: [128, 128, 128],
      length: [400, 400, 400],
    });
    const derived = derivation(
      gradeLazily({ style: 'pencil', chart, base: '1' }),
      'front.side_waist',
      25.4 / 8,
      '3',
    );
    expect(markdown(board(derived, INCHES))).toContain(
      '    side_waist.x = waist_girth/4 + waist_ease/4 + front_dart_intake',
    );
    const text = markdown(board(derived, INCHES));
    expect(text).toContain("dx is a quarter of the waist's step.");
    expect(text).toContain('(As derivatives: by waist_girth 1/4, in inches for one inch.)');
    expect(text).toContain('| 2 to 3 | waist_girth | 28 - 26 = 2 | 1/4 x 2 = 1/2 |');
    expect(text).toContain('| 3 | 1/4 + 1/2 = 3/4 | 3/4 |');
    expect(text).toContain('dy is 0 in every size');
  });

  it.each(['pencil', 'shared-pencil', 'fixed-dart'])(
    'of %s names every measurement that moves a point when it alone grows, and no other',
    (style) => {
      const body = { waist_girth: 26, hip_girth: 37, waist_to_hip: 8, skirt_length: 25 };
      const chartOf = (grows: string | undefined): string =>
        [
          '# unit: in',
          'measurement,1,2',
          ...Object.entries(body).map(
            ([name, length]) => `${name},${length},${name === grows ? length + 0.5 : length}`,
          ),
        ].join('\n');
      const all = gradeLazily({ chart: chartOf(undefined), base: '1', style });
      const grown = Object.keys(body).map((name) => ({
        name,
        moves: gradeLazily({ chart: chartOf(name), base: '1', style }).range.exactRules.moves[1],
      }));
      let points = 0;
      all.range.plans.forEach((plan, p) => {
        plan.pointNames.forEach((point, k) => {
          // Each derivation drafts a dozen bodies.
          if (points++ % 9 !== 0) return;
          for (const { axis, reached } of derivation(all, `${plan.name}.${point}`, 1).axes)
            expect([point, axis, [...reached].sort()]).toEqual([
              ...[point, axis],
              grown
                .filter(({ moves }) => Math.abs(moves?.[p]?.[k]?.[axis] ?? NaN) > 0.001)
                .map(({ name }) => name)
                .sort(),
            ]);
        });
      });
      expect(points).toBeGreaterThan(18);
    },
  );

  it.each(some(STYLE_NAMES))(
    'of %s puts formulas together that give what the draft gives',
    (style) => {
      const chart = [
        ...['# unit: in', 'measurement,1,2', 'waist_girth,27,30', 'hip_girth,38,41'],
        ...['waist_to_hip,8,8.25', 'skirt_length,25,25.5', 'knee_height,18,18.5'],
      ].join('\n');
      const { range, chart: read } = gradeLazily({ chart, base: '1', style });
      const { drafter } = range.draft;
      const body = drafter.measurements.map((name) => needValues(read, name)[0] ?? NaN);
      const draft = drafter.draft(body, '1');
      let summed = 0;
      for (const { plan, points } of draft.pieces)
        plan.pointNames.forEach((name, k) => {
          for (const axis of ['x', 'y'] as const) {
            const key = `${plan.name}/${name}.${axis}`;
            const { together } = formulaChain(drafter, draft, key);
            if (together === undefined) continue;
            summed++;
            const valueOf = (own: string): number => {
              const i = drafter.measurements.indexOf(own);
              return i >= 0
                ? (body[i] ?? NaN)
                : ([`${plan.name}/${own}`, own, own.replace('base.', `base.${plan.name}/`)]
                    .map(draft.valueOf)
                    .find((value) => !Number.isNaN(value)) ?? NaN);
            };
            const sum = [...together.terms].reduce(
              (all, [own, { top, bottom }]) => all + (top / bottom) * valueOf(own),
              together.constant.top / together.constant.bottom,
            );
            expect([key, sum]).toEqual([key, expect.closeTo(points[k]?.[axis] ?? NaN, 9)]);
          }
        });
      expect(summed).toBeGreaterThan(10);
    },
  );

  it('draws every size with its moves, the same bytes twice', () => {
    const chart = sixteenthsText({
      waist: [400, 416, 448],
      hip: [560, 576, 600],
      hipDepth: [128, 129, 130],
      length: [400, 400, 400],
    });
    const draw = (point: string) =>
      svg(
        ladderDrawing(
          derivation(gradeLazily({ style: 'pencil', chart, base: '1' }), point, 1),
          INCHES,
        ),
      );
    expect(draw('front.side_hip')).toContain('3: dx 5/8, dy 1/8');
    expect(draw('front.side_hip')).toBe(draw('front.side_hip'));
    for (const point of ['front.center_waist', 'front.center_hip'])
      expect(draw(point)).not.toContain('NaN');
    expect(draw('front.center_waist')).toContain('the point lies in one place in all sizes');
    expect(draw('front.center_waist')).not.toContain('times as large');
    expect(draw('front.side_hip')).toMatch(/drawn \d[\d.]* times as large/);
  });

  it('refuses a point or a size that is not there', () => {
    const chart = sixteenthsText({
      waist: [400, 416],
      hip: [560, 576],
      hipDepth: [128, 128],
      length: [400, 400],
    });
    const result = gradeLazily({ style: 'pencil', chart, base: '1' });
    for (const [point, code] of [
      ['front.knee', 'point-unknown'],
      ['sleeve.knee', 'piece-unknown'],
      ['knee', 'sheet-malformed'],
    ] as const)
      expectRefusal(() => derivation(result, point, 1), code, { point });
    for (const point of ['FRONT.Side Hip', 'front side-hip'])
      expect(derivation(result, point, 1)).toEqual(derivation(result, 'front.side_hip', 1));
    expectRefusal(() => derivation(result, 'front.side_hip', 1, '9'), 'size-unknown', {
      field: 'size',
    });
  });
});

it('shares are found as fractions', () => {
  for (const [top, bottom] of [
    [1, 4],
    [1, 12],
    [-7, 48],
    [1, 1],
  ] as const)
    expect(shareFraction(top / bottom)).toEqual({ top, bottom });
  expect(exactText(shareFraction(0.123456789), 'in')).toBe('0.1235');
});
