/** The number of darts a size would have alone, from a table of intakes worked out by hand. */
import { describe, expect, it } from 'vitest';
import { checkDartNumber } from '../../src/check/dart-number';
import { gradeLazily } from '../graded';
import { chartText } from '../skirts';

// A thirtieth of the hip is taken in at the front: 30, 33, 36 and 38 mm.
const CHART = chartText('cm', { waist_girth: [66, 75, 84, 90], hip_girth: [90, 99, 108, 114] }, [
  'S',
  'M',
  'L',
  'XL',
]);

function warned(front_dart_limit: string, front_darts = '0', front_intake = 'hip_girth/30') {
  const { range, display } = gradeLazily({
    chart: CHART,
    base: 'S',
    style: 'shared-drop',
    set: { front_intake, front_dart_limit, front_darts },
  });
  return checkDartNumber(range, display).filter(({ piece }) => piece === 'front');
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

  it('is settled by the number that it names, where one serves all sizes', () => {
    // Halves of 15 to 19 mm can be sewn, and so can the base's one of 30 mm; 36 and 38 mm are too wide.
    expect(warned('3.5 cm')[0]?.facts).toMatchObject({ setting: 'set front_darts=2' });
    expect(warned('3.5 cm', '2')).toEqual([]);
    // The base takes in 36 mm by two darts, larger sizes 33, 30 and 28, for which one would do.
    const falling = '36 mm - (hip_girth - 900 mm)/30';
    const [fewer] = warned('3.5 cm', '0', falling);
    expect(fewer).toMatchObject({
      size: 'M-XL',
      facts: { darts: 'one dart', setting: 'keep two darts with front_darts=2' },
    });
    expect(warned('3.5 cm', '2', falling)).toEqual([]);
  });

  it('is settled by splitting the range alone, where none serves all sizes', () => {
    // 10 to 43 mm: a half of 10 mm is too narrow to sew, and one of 43 mm is too wide.
    const [finding] = warned('3.5 cm', '0', '10 mm + (hip_girth - 900 mm)/180*25');
    expect(finding).toMatchObject({ facts: { darts: 'two darts' } });
    expect(finding?.facts).not.toHaveProperty('setting');
  });

  it('is not doubted where every size is within the limit', () => {
    expect(warned('3.81 cm')).toEqual([]);
  });
});
