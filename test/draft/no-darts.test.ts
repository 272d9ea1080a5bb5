/** A panel without darts: what it takes to leave them out, and that the seams are trued without them. */
import { describe, expect, it } from 'vitest';
import type { GradeResult } from '../../src/index';
import { seamLength } from '../../src/pattern/piece';
import { sewnSkirt } from '../../src/sewing/skirt';
import { sewingSteps } from '../../src/sewing/sewing-steps';
import { verdictOf } from '../../src/verdict/verdict';
import { chartText, pieceOf } from '../skirts';
import { gradeLazily } from '../graded';

/** A figure with 6 cm between waist and hip, for whom a front dart would take in 0.6 cm. */
const STRAIGHT = chartText(
  'cm',
  { waist_girth: [94, 98, 103], hip_girth: [100, 104, 109], waist_to_hip: [20.5, 20.5, 21] },
  ['40', '42', '44'],
);

function graded(set: Readonly<Record<string, string>>, style = 'shared-pencil'): GradeResult {
  return gradeLazily({ chart: STRAIGHT, base: '42', style, set });
}

/** What the verdict advises. */
function advised({ findings, display }: GradeResult): string {
  const { decisions } = verdictOf(findings, ['40', '42', '44'], display);
  return decisions.map(({ text }) => text).join(' ');
}

const WITHOUT_FRONT = { front_dart_share: '0', side_share: '0.7' };
const WITHOUT_ANY = { front_dart_share: '0', back_dart_share: '0', side_share: '1' };

describe('a dart too narrow to be sewn', () => {
  it('is told with the settings that leave it out, which settle it', () => {
    const advice = advised(graded({}));
    expect(advice).toContain('front_dart_share=0 and side_share=0.7');
    const { findings } = graded(WITHOUT_FRONT);
    expect(
      findings.filter(({ severity }) => severity === 'fail' || severity === 'warning'),
    ).toEqual([]);
  });

  it('is left out by an intake of 0 where the style does not go by shares', () => {
    const fixed = { front_intake: '0.8 cm' };
    const advice = advised(graded(fixed, 'fixed-dart'));
    expect(advice).toContain('front_intake=0');
    const plan = pieceOf(graded({ front_intake: '0' }, 'fixed-dart'), '42', 'front').plan;
    expect(plan.darts).toEqual([]);
  });
});

describe.each([
  ['in front', WITHOUT_FRONT, 'shared-pencil'],
  ['at all', WITHOUT_ANY, 'shared-pencil'],
  ['at all, faced', { ...WITHOUT_ANY, waist_finish: '2' }, 'shared-drop'],
  ['in front of a flared skirt', WITHOUT_FRONT, 'shared-a-line'],
] as const)('a skirt without darts %s', (_, set, style) => {
  const result = graded(set, style);

  it('has the sewn waist of the body and its ease, and sides equally long', () => {
    for (const [i, size] of ['40', '42', '44'].entries()) {
      const [front, back] = ['front', 'back'].map((name) => pieceOf(result, size, name));
      if (front === undefined || back === undefined) throw new RangeError('no panels');
      // 1 cm of ease, and with a band 1 cm eased into it; the seam of darts is no part of the edge.
      const eased = 'waist_finish' in set ? 10 : 20;
      const waist = 2 * (seamLength(front, 'waist') + seamLength(back, 'waist'));
      expect(waist).toBeCloseTo(([94, 98, 103][i] ?? NaN) * 10 + eased, 6);
      expect(seamLength(front, 'side')).toBeCloseTo(seamLength(back, 'side'), 6);
    }
    expect(pieceOf(result, '42', 'front').plan.darts).toEqual([]);
    expect(result.findings.filter(({ severity }) => severity === 'fail')).toEqual([]);
  });

  it('is sewn without what belongs to darts that it has not', () => {
    const sizes = result.shown.map(({ pieces, parameters }) => ({ pieces, parameters }));
    const skirt = sewnSkirt(sizes, { unit: 'cm' });
    if (skirt === undefined) throw new RangeError('no skirt');
    const steps = sewingSteps(skirt);
    const darts = steps.find(({ title }) => title === 'Darts');
    expect(darts?.sews.map(({ piece }) => piece) ?? []).not.toContain('front');
    expect(darts === undefined).toBe(skirt.back.darts.length === 0);
    const words = steps.flatMap((step) => step.words).join(' ');
    if (darts === undefined) expect(words).not.toMatch(/\bdarts?\b/u);
  });
});
