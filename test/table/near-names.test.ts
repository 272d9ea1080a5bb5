/** Which names are asked back; the slips are those of two hands, swaps and neighbors on the keyboard. */
import { describe, expect, it } from 'vitest';
import { nearNames, wantedNames, wantedSizes } from '../../src/table/near-names';
import { MEASUREMENTS, nearMeasurement } from '../../src/chart/vocabulary';

const POINTS = ['side_waist', 'side_hip', 'side_hem', 'center_waist', 'center_hem'];

describe('nearNames', () => {
  it.each([
    ['sid_waist', ['side_waist']],
    ['Side Hipp', ['side_hip']],
    ['wasit', []],
    ['waist', ['side_waist', 'center_waist']],
    ['side_hme', ['side_hem', 'side_hip']],
    ['grainline', []],
    ['', []],
    ['sw', []],
  ])('of %j are %j', (text, near) => {
    expect(nearNames(text, POINTS)).toEqual(near);
  });

  it('takes letters exchanged in a short name for one slip', () => {
    expect(nearNames('dmeo.csv', ['demo.csv', 'notes.txt'])).toEqual(['demo.csv']);
    expect(nearNames('neck', ['knee', 'neat'])).toEqual([]);
  });

  it('gives three at most', () => {
    expect(nearNames('dart1', ['dart2', 'dart3', 'dart4', 'dart5'])).toHaveLength(3);
  });
});

describe('wantedNames', () => {
  it('lists a few names, and tells the number of many', () => {
    expect(wantedNames('zzz', POINTS).allowed).toBe(POINTS.join(', '));
    const many = Array.from({ length: 65 }, (_, i) => `name_${i}`);
    expect(wantedNames('zzz', many).allowed).toBe(
      'one of 65 names, such as name_0, name_1, name_2',
    );
  });
});

describe('wantedSizes', () => {
  it('lists a few sizes, and of many those that are nearest', () => {
    expect(wantedSizes('13', ['10', '12', '14'])).toEqual({ allowed: '10, 12, 14' });
    const many = Array.from({ length: 16 }, (_, i) => `${32 + 2 * i}`);
    expect(wantedSizes('45', many)).toEqual({ near: ['44', '46', '42'] });
  });
});

describe('nearMeasurement', () => {
  it.each([
    ['wiast_girth', 'waist_girth'],
    ['Hipps', 'hip_girth'],
    ['waist to kne (cm)', 'waist_to_knee'],
    ['neck', undefined],
    ['shoulder width', undefined],
    ['arm length', undefined],
  ])('of %j is %j', (label, name) => {
    expect(nearMeasurement(label)).toBe(name);
  });

  it('of every name is itself', () => {
    for (const { name } of MEASUREMENTS) expect(nearMeasurement(name)).toBe(name);
  });
});
