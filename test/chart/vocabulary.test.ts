import { describe, expect, it } from 'vitest';
import { isCornerLabel, labelKey, snakeCase, splitLabel } from '../../src/table/label';
import { MEASUREMENTS, recognizeMeasurement } from '../../src/chart/vocabulary';

describe('recognizeMeasurement', () => {
  it.each(MEASUREMENTS.map(({ name }) => [name]))('knows %s by its own name', (name) => {
    expect(recognizeMeasurement(name)).toEqual({ name });
  });

  it('gives no two measurements one name', () => {
    const keys = MEASUREMENTS.flatMap(({ name, synonyms }) => [name, ...synonyms].map(labelKey));
    expect(new Set(keys).size).toBe(keys.length);
  });

  it.each([
    ['Waist', 'waist_girth'],
    ['WAISTLINE', 'waist_girth'],
    ['waist-girth', 'waist_girth'],
    ['WaistGirth', 'waist_girth'],
    ['Waist circ.', 'waist_girth'],
    ['Natural  waist:', 'waist_girth'],
    ['Hips', 'hip_girth'],
    ['Full hip', 'hip_girth'],
    ['seat', 'hip_girth'],
    ['Low-Hip', 'hip_girth'],
    ['Hip Circumference', 'hip_girth'],
    ['High Hip', 'high_hip_girth'],
    ['upper hip girth', 'high_hip_girth'],
    ['chest', 'bust_girth'],
    ['Hip depth', 'waist_to_hip'],
    ['Waist to seat', 'waist_to_hip'],
    ['waist\u00A0to\u2011hip', 'waist_to_hip'],
    ['Height', 'stature'],
    ['Body height', 'stature'],
    ['Inseam', 'inside_leg_length'],
    ['Length', 'skirt_length'],
    ['Skirt length', 'skirt_length'],
  ])('%j is %s', (label, name) => {
    expect(recognizeMeasurement(label)).toEqual({ name });
  });

  it.each([
    ['Waist (cm)', 'cm'],
    ['Waist [in]', 'in'],
    ['Waist (in cm)', 'cm'],
    ['Waist, cm', 'cm'],
    ['Waist / mm', 'mm'],
    ['waist_cm', 'cm'],
    ['Waist in', 'in'],
    ['Waist in inches', 'in'],
    ['Waist (")', 'in'],
    ['Waist (Centimetres)', 'cm'],
  ])('%j is the waist in %s', (label, unit) => {
    expect(recognizeMeasurement(label)).toEqual({ name: 'waist_girth', unit });
  });

  it.each(['', '26', '26.5 cm', 'waist_girth_curvy', 'arm length', 'size', 'n', 'toString'])(
    '%j is none',
    (label) => {
      expect(recognizeMeasurement(label)).toBeUndefined();
    },
  );
});

describe('labels', () => {
  it('name unknown measurements in snake_case', () => {
    expect(snakeCase(splitLabel('Upper-arm Girth (cm)').text)).toBe('upper_arm_girth');
    expect(snakeCase(' -- ')).toBe('');
  });

  it('stand in the corner of a chart', () => {
    for (const label of [
      'measurement',
      'Measurements (cm)',
      'Size',
      'EU size',
      'cm',
      'Body part',
    ]) {
      expect(isCornerLabel(label)).toBe(true);
    }
    for (const label of ['', 'Size chart', 'Misses', '8']) expect(isCornerLabel(label)).toBe(false);
  });
});
