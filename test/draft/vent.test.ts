import fc from 'fast-check';
import { draftedSizes } from '../../src/grade/graded-pattern';
import { describe, expect, it } from 'vitest';
import { measureOf, pointOf } from '../../src/index';
import type { GradeRequest, GradeResult } from '../../src/index';
import { walkingRoom } from '../../src/stride/walking-room';
import { anyChart, chartText, pieceOf, sixteenthsText } from '../skirts';
import { runs } from '../samples';
import { openingByHand } from '../stride/hull-by-hand';
import { gradeLazily } from '../graded';

const CHART = chartText('cm', {
  waist_girth: [64, 68, 72, 80],
  hip_girth: [91, 95, 99, 107],
  waist_to_hip: [20, 20.5, 20.5, 21],
  skirt_length: [64, 65, 65.5, 66],
  stature: [164, 164, 165, 166],
});

function pencil(set: Readonly<Record<string, string>> = {}, rest: Partial<GradeRequest> = {}) {
  return gradeLazily({ chart: CHART, base: '2', style: 'shared-pencil', set, ...rest });
}

function severities(result: GradeResult, check: string): ReadonlySet<string> {
  const findings = result.findings.filter((finding) => finding.check === check);
  return new Set(findings.map(({ severity }) => severity));
}

function ventLengths({ range }: GradeResult): readonly number[] {
  return range.sizes.map(({ parameters }) => parameters.get('vent_length') ?? NaN);
}

const seamsOf = (result: GradeResult, size = '2'): readonly string[] =>
  pieceOf(result, size, 'back').plan.outline.map(({ seam }) => seam);

describe('the vent at center back', () => {
  const result = pencil({ vent_length: '20 cm', vent_width: '5 cm' });

  // Threads magazine no. 164: upper edge at 45 degrees.
  it('begins on the center line and falls away at 45 degrees to its width', () => {
    for (const { label, parameters } of result.range.sizes) {
      const back = pieceOf(result, label, 'back');
      const at = (name: string) => pointOf(back, name);
      const hem = at('center_hem').y;
      expect(at('vent_top').x).toBeCloseTo(0, 9);
      expect(hem - at('vent_top').y).toBeCloseTo(200, 9);
      expect(at('vent_top_outer').x).toBeCloseTo(-50, 9);
      expect(at('vent_top_outer').y - at('vent_top').y).toBeCloseTo(50, 9);
      expect(at('vent_hem').x).toBeCloseTo(-50, 9);
      expect(at('vent_hem').y).toBeCloseTo(hem, 9);
      expect(parameters.get('vent_length')).toBe(200);
    }
  });

  it('takes the place of the lower center seam, and the front has none', () => {
    expect(seamsOf(result).slice(-5)).toEqual([
      'hem',
      'vent_hem',
      'vent',
      'vent_top',
      'center_back',
    ]);
    const front = pieceOf(result, '2', 'front').plan;
    expect(front.pointNames.filter((name) => name.startsWith('vent'))).toEqual([]);
    expect(front.outline.at(-1)).toMatchObject({ kind: 'fold', seam: 'center_front' });
  });

  it('leaves waist, hip, hem and the lengths as they are without it', () => {
    const plain = pencil({ vent_length: '0 cm' });
    expect(seamsOf(plain).slice(-2)).toEqual(['hem', 'center_back']);
    result.range.sizes.forEach((size, i) => {
      const other = plain.range.sizes[i];
      for (const name of ['waist', 'hip', 'hem', 'center_back_length', 'side_seam_back'])
        expect(measureOf(size, name)).toBeCloseTo(other ? measureOf(other, name) : NaN, 9);
    });
  });

  it('ends the zip allowance at its upper edge, and is folded on the center line', () => {
    const back = pieceOf(result, '2', 'back');
    const { marks } = back.plan;
    expect(marks.find(({ name }) => name === 'zip-allowance')?.through).toEqual([
      ...['center_waist', 'zip_waist', 'zip_vent', 'vent_top'],
    ]);
    const [end, top] = [pointOf(back, 'zip_vent'), pointOf(back, 'vent_top')];
    expect(end.x).toBeCloseTo(-20, 9);
    expect(end.y - top.y).toBeCloseTo(20, 9);
    expect(marks.find(({ name }) => name === 'fold-line')?.through).toEqual([
      ...['vent_top', 'center_hem'],
    ]);
  });

  it('wider than it is long is found to cross itself', () => {
    const crossed = pencil({ vent_length: '3 cm', vent_width: '5 cm' });
    expect(severities(crossed, 'outline-simple')).toContain('fail');
    expect(severities(result, 'outline-simple')).toEqual(new Set(['ok']));
  });
});

describe('the slit', () => {
  it('is a point that parts the center line', () => {
    const result = pencil({ vent_length: '18 cm', vent_width: '0 cm' });
    expect(seamsOf(result).slice(-3)).toEqual(['hem', 'slit', 'center_back']);
    for (const size of result.range.sizes) {
      const back = pieceOf(result, size.label, 'back');
      expect(pointOf(back, 'center_hem').y - pointOf(back, 'vent_top').y).toBeCloseTo(180, 9);
      expect(back.plan.index.has('vent_hem')).toBe(false);
      const whole = pointOf(back, 'center_hem').y - pointOf(back, 'center_waist').y;
      expect(measureOf(size, 'center_back_length')).toBeCloseTo(whole, 9);
    }
  });
});

describe('stride_opening', () => {
  it('is one height for the range, a multiple of 5 mm, that gives every size its stride', () => {
    const result = pencil();
    const [length = NaN, ...others] = ventLengths(result);
    for (const other of others) expect(other).toBe(length);
    expect(length % 5).toBe(0);
    expect(severities(result, 'stride')).toEqual(new Set(['ok']));
    expect(length).toBeGreaterThan(150);
    // One step lower, some size has it no more.
    const lower = pencil({ vent_length: `${length - 5} mm` });
    const strides = lower.range.sizes.map((size) => measureOf(size, 'stride'));
    const wanted = lower.range.sizes.map(
      ({ parameters }) => parameters.get('stride_wanted') ?? NaN,
    );
    expect(strides.some((stride, i) => stride < (wanted[i] ?? NaN))).toBe(true);
  });

  // Hip 100, hem 92 ten cm below the knee, leg 82 cm; the hull of two legs laid down as points.
  it('is what the worked example needs by hand for a step of 70 cm, rounded up', () => {
    const chart = chartText('cm', {
      waist_girth: [72, 76],
      hip_girth: [95, 99],
      waist_to_hip: [20.5, 20.5],
      skirt_length: [65, 65],
      stature: [164, 164],
    });
    // A straight taper, as the hand has it.
    const set = { hip_ease: '5 cm', stride_wanted: '70 cm', taper_blend: '0 cm' };
    const [opening = NaN, other] = ventLengths(pencil(set, { chart, base: '1' }));
    const byHand = openingByHand(700, [205, 1000], [650, 920], 0.2);
    expect(byHand).toBeGreaterThan(150);
    expect(opening).toBeGreaterThanOrEqual(byHand);
    expect(opening).toBeLessThanOrEqual(byHand + 5.2);
    expect(other).toBe(opening);
  });

  it('may be part of a formula', () => {
    const plain = ventLengths(pencil());
    const longer = ventLengths(pencil({ vent_length: 'stride_opening + 3 cm' }));
    const shorter = ventLengths(pencil({ vent_length: 'stride_opening - 3 cm' }));
    expect(longer).toEqual(plain.map((length) => length + 30));
    expect(shorter).toEqual(plain.map((length) => length - 30));
  });

  it('is nothing where no size needs it, and there is no vent then', () => {
    const result = pencil({ hem_taper: '-12 cm' });
    expect(ventLengths(result)).toEqual([0, 0, 0, 0]);
    expect(seamsOf(result)).not.toContain('vent');
    expect(result.findings.filter(({ check }) => check.startsWith('vent'))).toEqual([]);
  });

  // Common practice, no source: vents of 15 to 30 cm.
  it('is 15 cm at least where any size needs one', () => {
    const result = pencil({ hem_taper: '-8 cm' });
    const room = draftedSizes(result.range).map(
      (size) => walkingRoom({ ...size, body: size.draft.body }).needed,
    );
    expect(Math.max(...room)).toBeGreaterThan(0);
    expect(Math.max(...room)).toBeLessThan(60);
    expect(ventLengths(result)).toEqual([150, 150, 150, 150]);
    expect(severities(result, 'outline-simple')).toEqual(new Set(['ok']));
  });

  it('grows with the stride that is wanted', () => {
    const lengths = ['70 cm', '75 cm', '80 cm'].map(
      (stride_wanted) => ventLengths(pencil({ stride_wanted }))[0] ?? NaN,
    );
    expect(lengths).toEqual(lengths.toSorted((a, b) => a - b));
    expect(new Set(lengths).size).toBe(3);
  });

  it('makes every size of any chart walk, and base plus rules is the redraft', () => {
    fc.assert(
      fc.property(anyChart, (chart) => {
        // With less than 4 in from waist to hip there is no skirt to speak of.
        fc.pre(chart.hip.every((hip, i) => hip - (chart.waist[i] ?? NaN) >= 64));
        const result = pencil({}, { chart: sixteenthsText(chart), base: '1' });
        expect(severities(result, 'stride')).toEqual(new Set(['ok']));
        expect(severities(result, 'graded-equals-draft')).toEqual(new Set(['ok']));
        expect(severities(result, 'outline-simple')).toEqual(new Set(['ok']));
      }),
      { numRuns: runs(2, 40) },
    );
  });
});
