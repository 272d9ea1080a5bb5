/** What must hold of the shaped skirt in every size of any sensible chart. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/index';
import { gradeChart, measureOf, pointOf } from '../../src/index';
import { expectRefusal } from '../expect-refusal';
import { runs } from '../samples';
import { SHAPED_NAMES } from '../styles';

/** Lengths in cm. */
interface Body {
  readonly waist: number;
  readonly hip: number;
}

function chart(bodies: readonly Body[]): string {
  const row = (name: string, of: (body: Body) => number): string =>
    [name, ...bodies.map((body) => of(body).toFixed(2))].join(',');
  return [
    '# unit: cm',
    ['measurement', ...bodies.map((_, i) => `z${i}`)].join(','),
    row('waist_girth', ({ waist }) => waist),
    row('hip_girth', ({ hip }) => hip),
  ].join('\n');
}

/** A range from small to large whose drop wanders between 14 and 30 cm. */
const RANGE = fc
  .record({
    waist: fc.double({ min: 55, max: 95, noNaN: true }),
    drop: fc.double({ min: 16, max: 28, noNaN: true }),
    steps: fc.array(
      fc.record({
        waist: fc.double({ min: 1, max: 6, noNaN: true }),
        drop: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
      }),
      { minLength: 1, maxLength: 4 },
    ),
  })
  .map(({ waist, drop, steps }) => {
    const bodies = [{ waist, hip: waist + drop }];
    for (const step of steps) {
      const last = bodies.at(-1) ?? { waist, hip: waist + drop };
      const w = last.waist + step.waist;
      bodies.push({ waist: w, hip: w + (last.hip - last.waist) + step.drop });
    }
    return bodies;
  });

const failures = (findings: readonly Finding[]): readonly string[] =>
  findings.filter(({ severity }) => severity === 'fail').map(({ message }) => message);

describe.each(SHAPED_NAMES)('%s over random ranges', (style) => {
  test('sewn waist on target, side seams equal, nothing overlaps, grade equals redraft', () => {
    fc.assert(
      fc.property(RANGE, fc.nat(), (bodies, pick) => {
        const base = `z${pick % bodies.length}`;
        const { range, findings } = gradeChart({ chart: chart(bodies), base, style });
        range.sizes.forEach((size, i) => {
          // 1 cm of ease in the band, and 1 cm more to ease into it.
          const target = (Number((bodies[i]?.waist ?? NaN).toFixed(2)) + 2) * 10;
          expect(Math.abs(measureOf(size, 'skirt_waist_edge') - target)).toBeLessThan(0.1);
          expect(Math.abs(measureOf(size, 'waist') - target + 10)).toBeLessThan(1e-6);
          expect(
            Math.abs(measureOf(size, 'side_seam_front') - measureOf(size, 'side_seam_back')),
          ).toBeLessThan(0.1);
        });
        expect(failures(findings)).toEqual([]);
        const checks = new Set(findings.filter((f) => f.severity === 'ok').map((f) => f.check));
        for (const check of ['outline-simple', 'graded-equals-draft', 'dart-legs', 'truing'])
          expect(checks).toContain(check);
      }),
      { numRuns: runs(4, 80) },
    );
  });
});

describe('shares', () => {
  test('that do not add up are refused', () => {
    const attempt = (): unknown =>
      gradeChart({
        chart: chart([
          { waist: 70, hip: 96 },
          { waist: 74, hip: 100 },
        ]),
        base: 'z0',
        style: 'shared-drop',
        set: { side_share: '0.6' },
      });
    const place = { parameter: 'side_share, back_dart_share, front_dart_share', size: 'z0' };
    expectRefusal(attempt, 'parameter-out-of-range', place, '0.6 + 0.3 + 0.2 = 1.1');
  });

  test('of a drop that stays the same grade like the quarter method', () => {
    // Common practice, no source: with the drop constant every scheme moves the side by a quarter
    // of the girth step and leaves the darts as they are.
    const bodies = [0, 1, 2, 3].map((s) => ({ waist: 66 + 4 * s, hip: 92 + 4 * s }));
    const request = { chart: chart(bodies), base: 'z1' };
    const quarter = gradeChart({ ...request, style: 'straight' }).range;
    const shared = gradeChart({
      ...request,
      style: 'shared-drop',
      set: { front_darts: '1', back_darts: '1' },
    }).range;
    for (const name of ['side_waist', 'side_hip', 'side_hem', 'dart_inner', 'dart_outer']) {
      for (const [i, size] of shared.sizes.entries()) {
        for (const [p, piece] of size.pieces.slice(0, 2).entries()) {
          const move = (range: typeof shared): number => {
            const of = (s: number): number => {
              const found = range.sizes[s]?.pieces[p];
              return found === undefined ? NaN : pointOf(found, name).x;
            };
            return of(i) - of(1);
          };
          expect(piece.plan.name).toBe(quarter.sizes[i]?.pieces[p]?.plan.name);
          // Truing moves the side point at the waist by a little more or less in each size.
          expect(Math.abs(move(shared) - move(quarter))).toBeLessThan(0.3);
        }
        expect(measureOf(size, 'front_dart_intake')).toBeCloseTo(
          measureOf(shared.sizes[1] ?? size, 'front_dart_intake'),
          9,
        );
      }
    }
  });
});

describe('twenty sizes from 56 to 150 cm of hip', () => {
  // Invented bodies: the drop runs from 14 cm in the smallest to 20 in the middle and back to 10.
  const bodies = Array.from({ length: 20 }, (_, i) => {
    const hip = 56 + (94 * i) / 19;
    const drop = i < 10 ? 14 + 0.6 * i : 20 - ((i - 10) * 10) / 9;
    return { hip, waist: hip - drop };
  });

  test.each(['shared-drop', 'shared-pencil', 'shared-a-line'] as const)(
    '%s has no broken shape',
    (style) => {
      const { range, findings } = gradeChart({ chart: chart(bodies), base: 'z9', style });
      expect(range.sizes).toHaveLength(20);
      expect(failures(findings)).toEqual([]);
      const simple = findings.filter((f) => f.check === 'outline-simple');
      expect(simple.length).toBeGreaterThanOrEqual(40);
      expect(simple.every((f) => f.severity === 'ok')).toBe(true);
    },
  );
});
