/** Rounding moves points by half a step: that alone must not fail a skirt that was asked to be rounded. */
import { describe, expect, it } from 'vitest';
import { DEMO } from '../draft/shaped-pieces';
import { gradedOnce } from '../graded';
import { SHAPED_NAMES } from '../styles';

const DARTS = ['dart-fold', 'dart-legs'];

describe.each(SHAPED_NAMES)('darts of %s', (style) => {
  it.each(['0.5mm', '1/16in', '1/8in'])('hold when rounded to %s', (round) => {
    const { findings } = gradedOnce({ ...DEMO, style, round });
    const darts = findings.filter(({ check }) => DARTS.includes(check));
    expect(darts.length).toBeGreaterThan(0);
    expect(darts.filter(({ severity }) => severity !== 'ok' && severity !== 'note')).toEqual([]);
    // The fold is folded anew; legs that no grid line makes equal differ by less than a sewer notices.
    for (const { check, severity, measured = NaN, expected = NaN } of darts) {
      if (check === 'dart-fold') expect(severity).toBe('ok');
      else expect(Math.abs(measured - expected)).toBeLessThan(0.25);
    }
  });
});
