/** Rounding moves points by half a step: that alone must not fail a skirt that was asked to be rounded. */
import { describe, expect, it } from 'vitest';
import { gradeChart } from '../../src/index';
import { DEMO } from '../draft/shaped-pieces';

const STYLES = ['fixed-dart', 'shared-drop', 'shared-pencil', 'shared-a-line'];
const DARTS = ['dart-fold', 'dart-legs'];

describe.each(STYLES)('darts of %s', (style) => {
  it.each(['0.5mm', '1/16in', '1/8in'])('hold when rounded to %s', (round) => {
    const { findings } = gradeChart({ ...DEMO, style, round });
    const darts = findings.filter(({ check }) => DARTS.includes(check));
    expect(darts.length).toBeGreaterThan(0);
    expect(darts.filter(({ severity }) => severity !== 'ok')).toEqual([]);
  });
});
