import { describe, expect, it } from 'vitest';
import { measureOf } from '../../src/index';
import type { GradeRequest, SizedPattern } from '../../src/index';
import { girthAt } from '../../src/stride/girth-profile';
import { skirtProfile } from '../../src/stride/skirt-profile';
import { chartText } from '../skirts';
import { STYLE_NAMES } from '../styles';
import { gradeLazily } from '../graded';

const CHART = chartText('cm', {
  waist_girth: [68, 72, 80],
  hip_girth: [93, 97, 105],
  waist_to_hip: [20, 20.5, 21],
  skirt_length: [62, 63, 64],
});

function sizes(request: Partial<GradeRequest>): readonly SizedPattern[] {
  return gradeLazily({ chart: CHART, base: '2', ...request }).range.sizes;
}

function profileOf({ pieces, parameters }: SizedPattern) {
  return skirtProfile(pieces, parameters.get('waist_to_hip') ?? NaN);
}

describe('the girth from hip line to hem', () => {
  it.each(STYLE_NAMES)(
    'begins with the finished hip and ends with the finished hem: %s',
    (style) => {
      for (const size of sizes({ style })) {
        const profile = profileOf(size);
        const [top, bottom] = [profile[0], profile.at(-1)];
        expect(top?.girth).toBeCloseTo(measureOf(size, 'hip'), 9);
        expect(top?.level).toBeCloseTo(size.parameters.get('waist_to_hip') ?? NaN, 9);
        expect(bottom?.girth).toBeCloseTo(measureOf(size, 'hem'), 9);
        expect(bottom?.level).toBeCloseTo(size.parameters.get('skirt_length') ?? NaN, 9);
        const levels = profile.map(({ level }) => level);
        expect(levels).toEqual(levels.toSorted((a, b) => a - b));
      }
    },
  );

  it('stays that of the hip down to where the taper begins', () => {
    for (const size of sizes({ style: 'shared-pencil', set: { taper_start: '8 cm' } })) {
      const profile = profileOf(size);
      const hip = profile[0]?.level ?? NaN;
      expect(girthAt(profile, hip + 80)).toBeCloseTo(measureOf(size, 'hip'), 6);
      expect(girthAt(profile, hip + 120)).toBeLessThan(measureOf(size, 'hip') - 1);
    }
  });

  it('is the same with and without a vent, and wherever the pieces are stacked', () => {
    const plain = sizes({ style: 'shared-pencil', set: { vent_length: '0 cm' } }).map(profileOf);
    for (const request of [
      { set: { vent_length: '20 cm' } },
      { set: { vent_length: '20 cm', vent_width: '0 cm' } },
      { stack: 'side_hip' },
    ])
      sizes({ style: 'shared-pencil', ...request }).forEach((size, i) => {
        profileOf(size).forEach(({ level, girth }, k) => {
          expect(level).toBeCloseTo(plain[i]?.[k]?.level ?? NaN, 6);
          expect(girth).toBeCloseTo(plain[i]?.[k]?.girth ?? NaN, 6);
        });
      });
  });

  it('is the hem alone where that lies above the hip', () => {
    for (const size of sizes({ set: { skirt_length: '20.4 cm', waist_to_hip: '23 cm' } }))
      expect(profileOf(size).map(({ level }) => Math.round(level))).toEqual([204]);
  });
});
