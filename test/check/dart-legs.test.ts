/**
 * Legs of darts, which are sewn together: typed with round numbers, so that their lengths are those of
 * right triangles. Rounding moves points by half a step: that alone must not fail a skirt.
 */
import { describe, expect, it } from 'vitest';
import { exportFiles, gradePattern } from '../../src/index';
import type { GradeResult } from '../../src/index';
import { DEMO } from '../draft/shaped-pieces';
import { FRONT, FRONT_AND_BACK, evenRules, graded } from '../given/sheets';
import { gradedOnce } from '../graded';
import { LONG } from '../samples';
import { SHAPED_NAMES } from '../styles';

const DARTS = ['dart-fold', 'dart-legs'];

const ROUNDINGS = ['0.5mm', '1/16in', '1/8in'];

describe.each(SHAPED_NAMES)('darts of %s', (style) => {
  // In passing the next style to the next step.
  const rank = SHAPED_NAMES.indexOf(style) % ROUNDINGS.length;
  it.each(ROUNDINGS.filter((_, i) => LONG || i === rank))('hold when rounded to %s', (round) => {
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

/** The front of the sheets grows by a quarter inch of width a size, its dart by half of that. */
const RULES = evenRules('10,12,14');
const INCH = 25.4;
/** mm from an end of the dart to a tip half an inch aside and 4 in below it. */
const LEG = Math.hypot(0.5, 4) * INCH;
/** The outer end of the dart 1/4 in higher. */
const UNEQUAL = FRONT.replace('dart_out,4,0', 'dart_out,4,-0.25');
const LONGER = Math.hypot(0.5, 4.25) * INCH;

function told({ findings }: Pick<GradeResult, 'findings'>) {
  return findings
    .filter(({ check }) => check === 'dart-legs')
    .sort((a, b) => a.size.localeCompare(b.size));
}
const severities = (result: GradeResult) => told(result).map((f) => `${f.size} ${f.severity}`);

describe('legs of a typed dart', () => {
  it('that are equal are said to be so in every size, rounded or not', () => {
    for (const rounding of [{}, { round: '5mm' }])
      expect(severities(graded(FRONT, RULES, rounding))).toEqual(['10 ok', '12 ok', '14 ok']);
  });

  it.each<{ round?: string }>([{}, { round: '5mm' }])(
    'that the base has apart fail there alone, with %j',
    (rounding) => {
      const result = graded(UNEQUAL, RULES, rounding);
      expect(severities(result)).toEqual(['10 ok', '12 fail', '14 ok']);
      const [smaller, base] = told(result);
      expect(base?.measured).toBeCloseTo(LEG, 6);
      expect(base?.expected).toBeCloseTo(LONGER, 6);
      expect(base?.message).toContain('in the base, 0.248 in apart');
      expect(base?.message).toContain('no rule does it');
      expect(smaller?.message).toContain('as far apart as in the base');
      expect(result.findings.filter(({ check }) => /sign|slip|doubt/u.test(check))).toEqual([]);
    },
  );

  it('that the base has apart bring no rule under suspicion', () => {
    // Unruly only in that the tip stands aside; as it goes down a quarter inch a size, legs part.
    const rules = RULES.replace('# sizes: 10,12,14', '# sizes: 8,10,12,14,16').replace(
      'dart_tip,1/8,0',
      'dart_tip,1/8,1/4',
    );
    const both = `${rules}${rules.split('\n').slice(3).join('\n').replaceAll('front', 'back')}`;
    const aside = FRONT_AND_BACK.replace('front,dart_tip,3.5,4', 'front,dart_tip,2.5,4');
    for (const pattern of [FRONT_AND_BACK, aside]) {
      const { findings } = graded(pattern, both);
      expect(findings.filter(({ check }) => /sign|slip|doubt/u.test(check))).toEqual([]);
    }
    expect(severities(graded(aside, both))).toContain('12 fail');
  });

  it('that rules set apart fail in those sizes, and the base does not', () => {
    // A step of 1/4 in up at one end of the dart is a leg as above in the next size.
    const result = graded(FRONT, RULES.replace('dart_out,1/8,0', 'dart_out,1/8,-1/4'));
    expect(severities(result)).toEqual(['10 fail', '12 ok', '14 fail']);
    const larger = told(result)[2];
    expect((larger?.expected ?? NaN) - (larger?.measured ?? NaN)).toBeCloseTo(LONGER - LEG, 6);
    expect(larger?.message).toContain('0.248 in apart: the rules of ends and tip make 0.248 in');
  });

  it('that rules set farther apart than the base has them are told with both shares', () => {
    const low = FRONT.replace('dart_out,4,0', 'dart_out,4,-0.05');
    const result = graded(
      low,
      `# unit: in\n${RULES.replace('dart_out,1/8,0', 'dart_out,1/8,-0.1')}`,
    );
    expect(severities(result)).toEqual(['10 warning', '12 warning', '14 fail']);
    // 0.05 in and 0.1 in of height are seen along a leg that is nearly upright.
    expect(told(result)[2]?.message).toMatch(
      /0.149 in apart: 0.05 in are in the base, .* 0.099 in/u,
    );
  });

  it('that rules bring together are well', () => {
    const result = graded(UNEQUAL, RULES.replace('dart_out,1/8,0', 'dart_out,1/8,1/4'));
    expect(severities(result)).toEqual(['10 fail', '12 fail', '14 ok']);
  });

  it('are told of a drawing too', async () => {
    const { files } = await exportFiles(graded(UNEQUAL, RULES), ['dxf']);
    const named = (file: string) => ({
      file,
      text: String(files.find(({ name }) => name === file)?.text),
    });
    const drawn = gradePattern({ pattern: named('pattern.dxf'), rules: named('pattern.rul') });
    expect(severities(drawn)).toEqual(['10 ok', '12 fail', '14 ok']);
  });
});
