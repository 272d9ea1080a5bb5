/**
 * The waist with darts closed and sides joined, folded anew here by rotation of dense polylines.
 * Common practice, no source: a waist is trued with its darts closed.
 */
import { describe, expect, it } from 'vitest';
import { checkClosedWaist } from '../../src/check/closed-waist';
import { checkDartTruing } from '../../src/check/dart-truing';
import type { GradedPattern, SizedPattern } from '../../src/index';
import { closedWaist, figures } from '../draft/closed-waist';
import type { Figures } from '../draft/closed-waist';
import { CHARTS, DEMO, everyResult } from '../draft/shaped-pieces';
import { gradedOnce } from '../graded';
import { withMoved } from '../seam-findings';

const MM = { unit: 'mm', fractions: false } as const;

function ruled({ pieces }: SizedPattern): Figures {
  const [front, back] = pieces;
  if (front === undefined || back === undefined) throw new RangeError('no panels');
  return figures(closedWaist(front, back));
}

const found = (range: GradedPattern) =>
  checkClosedWaist(range, MM).map(({ severity, size, subject, measured }) => ({
    severity,
    size,
    subject,
    measured: measured ?? NaN,
  }));

describe.each([
  ...everyResult({}),
  ...everyResult({ axis_square: '0' }),
  ...everyResult({ front_darts: '2', back_darts: '2' }),
  ...everyResult({ press_to_side: '1', half_rule: '1' }),
])('the closed waist of %s', (name, { range }) => {
  // Darts that do not shrink with the drop leave little to the side in plus sizes.
  const most = name === 'fixed-dart, base 22W' ? 0.6 : 0.3;

  it('turns back by no more than 2.5 degrees and hardly waves in any size', () => {
    for (const size of range.sizes) {
      const { corner, turnBack, wave } = ruled(size);
      // The chords of a polyline differ from the curve's own direction by a few hundredths.
      expect(corner).toBeLessThan(0.15);
      expect(turnBack).toBeLessThanOrEqual(2.5);
      expect(wave).toBeLessThanOrEqual(most);
    }
  });

  it('is found well in every size, as measured here', () => {
    const checked = found(range);
    expect(checked).toHaveLength(2 * range.sizes.length);
    range.sizes.forEach((size, i) => {
      const { turnBack, wave } = ruled(size);
      const [direction, depth] = checked.slice(2 * i);
      expect([direction?.severity, depth?.severity]).toEqual(['ok', wave > 0.3 ? 'warning' : 'ok']);
      expect([direction?.subject, depth?.subject]).toEqual(['direction', 'wave']);
      expect(Math.abs((direction?.measured ?? NaN) - turnBack)).toBeLessThan(0.1);
      expect(Math.abs((depth?.measured ?? NaN) - wave)).toBeLessThan(0.02);
    });
  });
});

describe('a waist that waves between its darts', () => {
  const { chart, base } = DEMO;
  const { range } = gradedOnce({ chart, base, style: 'fixed-dart' });
  // The whole front dart raised by 8 mm, with the handles beside it: legs and angles stay.
  const raised = ['inner_handle', 'inner', 'tip', 'fold', 'outer', 'outer_handle'].reduce(
    (so, name) => withMoved(so, 'front', `dart_${name}`, { x: 0, y: -8 }),
    range,
  );

  it('is warned of, though it runs on smoothly over every dart', () => {
    const overDarts = checkDartTruing(raised, MM).filter((f) => f.check === 'edge-over-dart');
    expect(new Set(overDarts.map(({ severity }) => severity))).toEqual(new Set(['ok']));
    const checked = found(raised);
    raised.sizes.forEach((size, i) => {
      const { turnBack, wave } = ruled(size);
      expect(turnBack).toBeGreaterThan(2.5);
      expect(wave).toBeGreaterThan(0.3);
      const [direction, depth] = checked.slice(2 * i);
      expect([direction?.severity, depth?.severity]).toEqual(['warning', 'warning']);
      expect(Math.abs((direction?.measured ?? NaN) - turnBack)).toBeLessThan(0.1);
      expect(Math.abs((depth?.measured ?? NaN) - wave)).toBeLessThan(0.02);
    });
  });
});

describe('the quarter method', () => {
  it.each(CHARTS)('leaves a corner at the side or a dart, which is warned of: %#', (chart) => {
    const { range } = gradedOnce({ ...chart, style: 'pencil' });
    const corners = found(range).filter(({ subject }) => subject === 'corner');
    expect(corners.map(({ size }) => size)).toEqual(range.sizes.map(({ label }) => label));
    range.sizes.forEach((size, i) => {
      expect(corners[i]?.severity).toBe('warning');
      expect(Math.abs((corners[i]?.measured ?? NaN) - ruled(size).corner)).toBeLessThan(0.3);
    });
  });
});
