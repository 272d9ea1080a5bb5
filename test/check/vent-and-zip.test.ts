/** Where zip and vent of a skirt of 60 cm end, added up by hand. */
import { describe, expect, it } from 'vitest';
import { gradeChart } from '../../src/index';
import { chartText } from '../skirts';

// With center back dropped by 0.5 cm and the opening ending 2 cm above a hip line at 20.5 cm, 18 cm
// are needed and 18 cm are sold: the zip reaches from 0.5 to 18.5 cm (common practice, no source).
const CHART = chartText('cm', {
  waist_girth: [66, 70],
  hip_girth: [92, 96],
  waist_to_hip: [20.5, 20.5],
  skirt_length: [60, 60],
});

function found(check: string, style: string, set: Readonly<Record<string, string>>) {
  const { findings } = gradeChart({ chart: CHART, base: '1', style, set });
  return findings.filter((finding) => finding.check === check);
}

describe('the vent', () => {
  // Common practice, no source: 8 cm of closed seam below the zip. 60 - 18.5 - 33.5 = 8.
  it.each([
    ['33.5 cm', 80, 'ok'],
    ['33.6 cm', 79, 'warning'],
    ['34 cm', 75, 'warning'],
    ['42 cm', -5, 'fail'],
  ])('of %s begins %d mm below the zip: %s', (vent_length, clear, severity) => {
    const findings = found('vent-clear-of-zip', 'shared-pencil', { vent_length });
    expect(findings).toHaveLength(2);
    for (const finding of findings) {
      expect(finding.measured).toBeCloseTo(clear, 6);
      expect(finding.severity).toBe(severity);
      expect(finding.message).toContain(clear < 0 ? 'above the end of the zip' : 'below the end');
    }
  });
});

describe('the zip', () => {
  // From 0.5 cm on it is the least whole number of steps that is 18 cm or more long.
  it.each([
    ['3 cm', '2 cm above the hip line', 'ok'],
    ['1.9 cm', '1 cm above the hip line', 'ok'],
    ['3.5 cm', '1 cm below the hip line', 'note'],
    ['4.4 cm', '2 cm below the hip line', 'note'],
  ])('sold in steps of %s ends %s', (zip_step, words, severity) => {
    const findings = found('zip-length', 'shared-drop', { zip_step });
    expect(findings).toHaveLength(2);
    for (const finding of findings) {
      expect(finding.message).toContain(words);
      expect(finding.severity).toBe(severity);
    }
  });
});
