/** The number of darts a size would have alone, from a table of intakes worked out by hand. */
import { describe, expect, it } from 'vitest';
import { gradeChart } from '../../src/index';
import { chartText } from '../skirts';

// A thirtieth of the hip is taken in at the front: 30, 33, 36 and 38 mm.
const CHART = chartText('cm', { waist_girth: [66, 75, 84, 90], hip_girth: [90, 99, 108, 114] }, [
  'S',
  'M',
  'L',
  'XL',
]);

function warned(front_dart_limit: string) {
  const { findings } = gradeChart({
    chart: CHART,
    base: 'S',
    style: 'shared-drop',
    set: { front_intake: 'hip_girth/30', front_dart_limit, front_darts: '0' },
  });
  return findings.filter(({ check, piece }) => check === 'dart-number' && piece === 'front');
}

// Common practice, no source: a dart wider than 3.5 cm is split.
describe('the number of darts', () => {
  it('is doubted in the stretch of sizes that take in more than one dart may', () => {
    const [finding, ...others] = warned('3.5 cm');
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ severity: 'warning', size: 'L-XL', subject: 'front_intake' });
    expect(finding?.measured).toBeCloseTo(36, 9);
    expect(finding?.expected).toBeCloseTo(35, 9);
    expect(finding?.message).toContain(
      '2 than 1 in the half front: break the range between M and L',
    );
  });

  it('is not doubted where every size is within the limit', () => {
    expect(warned('3.81 cm')).toEqual([]);
  });
});
