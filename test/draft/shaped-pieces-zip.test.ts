import { describe, expect, it } from 'vitest';
import type { GradeResult } from '../../src/index';
import { STYLES, fromMillimeters, measureOf } from '../../src/index';
import { chartText } from '../skirts';
import { DEMO, WHOLE_DEMO } from './shaped-pieces';
import { gradeLazily, gradedOnce } from '../graded';

const sizes = ['1', '2', '3', '4', '5'];

/** A range of five sizes with the given depths of the hip line, in cm. */
function graded(
  depths: readonly number[],
  set: Readonly<Record<string, string>> = {},
): GradeResult {
  const chart = chartText(
    'cm',
    {
      waist_girth: [62, 66, 70, 74, 78],
      hip_girth: [88, 92, 96, 100, 104],
      waist_to_hip: depths,
    },
    sizes,
  );
  return gradeLazily({ chart, base: '3', style: 'shared-drop', set });
}

function zips(result: GradeResult): readonly number[] {
  return result.range.sizes.map((size) => measureOf(size, 'zip_length'));
}

// Common practice, no source: the opening ends 1 to 2 cm above the hip line, and zips are bought in
// steps. With center back dropped by 0.5 cm and 2 cm kept free, a hip at d cm needs d - 2.5 cm.
describe('the zip', () => {
  it('is the next of the lengths that are sold', () => {
    const result = graded([20, 20.5, 20.6, 22.5, 23]);
    const openings = result.range.sizes.map((size) => measureOf(size, 'zip_opening'));
    [175, 180, 181, 200, 205].forEach((opening, i) => expect(openings[i]).toBeCloseTo(opening, 6));
    // 18 cm exactly is not rounded up to 20.
    expect(zips(result)).toEqual([180, 180, 200, 200, 220]);
  });

  it('comes in inches where the step is an inch', () => {
    // 17.5 to 20.5 cm are 6.9 to 8.07 in.
    const inches = zips(graded([20, 20.5, 20.6, 22.5, 23], { zip_step: '1 in' }));
    [7, 8, 8, 8, 9].forEach((count, i) => expect(inches[i]).toBeCloseTo(25.4 * count, 9));
  });

  it('follows the drop of the center back and the room kept above the hip', () => {
    const set = { center_back_drop: '1 cm', zip_above_hip: '1 cm', zip_step: '1 cm' };
    expect(zips(graded([20, 20.5, 20.6, 22.5, 23], set))).toEqual([180, 190, 190, 210, 210]);
  });

  it('does not grade continuously', () => {
    const demo = zips(gradedOnce({ ...WHOLE_DEMO, style: 'shared-pencil' }));
    // waist_to_hip of the demo chart from 7 11/16 in up by 1/16 in a size.
    const byHand = demo.map((_, i) => {
      const opening = 7 + (11 + i) / 16 - 1 / 4 - 3 / 4;
      return [7, 8].find((zip) => zip >= opening) ?? NaN;
    });
    demo.forEach((zip, i) => expect(zip / 25.4).toBeCloseTo(byHand[i] ?? NaN, 9));
    expect(new Set(byHand)).toEqual(new Set([7, 8]));
  });

  it('is long enough in every size, and told where it passes the hip line', () => {
    const found = (result: GradeResult) =>
      result.findings
        .filter(({ check }) => check === 'zip-length')
        .toSorted((a, b) => sizes.indexOf(a.size) - sizes.indexOf(b.size))
        .map(({ severity }) => severity);
    const depths = [20, 20.5, 20.6, 22.5, 23];
    expect(found(graded(depths))).toEqual(['ok', 'ok', 'ok', 'ok', 'ok']);
    // 20 and 20.5 cm up to 25: 5 and 4.5 cm past the opening, 2 cm of which are above the hip.
    expect(found(graded(depths, { zip_step: '5 cm' }))).toEqual([
      ...['note', 'ok', 'ok', 'ok', 'note'],
    ]);
  });

  it('is one of the market in every style: whole inches in an inch chart', () => {
    for (const { name: style } of STYLES) {
      const { range } = gradedOnce({ ...DEMO, style });
      for (const size of range.sizes) {
        const inches = fromMillimeters(measureOf(size, 'zip_length') ?? NaN, 'in');
        expect(inches, style).toBeCloseTo(Math.round(inches), 9);
        const opening = fromMillimeters(measureOf(size, 'zip_opening') ?? NaN, 'in');
        expect(inches - opening, style).toBeGreaterThan(-1e-9);
        expect(inches - opening, style).toBeLessThan(1);
      }
    }
  });
});
