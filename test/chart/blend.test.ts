import { describe, expect, it } from 'vitest';
import { readBlend, withBlend } from '../../src/chart/blend';
import { readChart } from '../../src/chart/read-chart';
import { findRow } from '../../src/chart/size-chart';
import { expectRefusal } from '../expect-refusal';

const CHART = readChart(
  `# unit: cm
measurement,S,M,"L, tall"
waist_girth,66,70,74
hip_girth,90,94,98
high_hip_girth,82,86,90
waist_to_hip,20,20.5,21
waist_to_knee,57,58,59
stature,164,166,172
skirt_length,60,61,62
sleeve,58,59,60
`,
  'c.csv',
);

function bodyOf(parts: readonly string[]): Record<string, number | null | undefined> {
  const blend = readBlend(parts, CHART);
  const chart = withBlend(CHART, blend);
  expect(chart.sizes).toEqual(['S', 'M', 'L, tall', blend.label]);
  return Object.fromEntries(chart.rows.map(({ name, values }) => [name, values[3]]));
}

describe('a blend of sizes', () => {
  it('takes the waist from its size and every other row from the size of the hip', () => {
    expect(bodyOf(['waist S', 'hip L, tall'])).toEqual({
      ...{ waist_girth: 660, hip_girth: 980, high_hip_girth: 900, waist_to_hip: 210 },
      ...{ waist_to_knee: 590, stature: 1720, skirt_length: 620, sleeve: 600 },
    });
  });

  it('takes heights and lengths from the size of the length where one is named', () => {
    expect(bodyOf(['length M', 'waist S', 'hip L, tall'])).toEqual({
      ...{ waist_girth: 660, hip_girth: 980, high_hip_girth: 900, waist_to_hip: 210 },
      ...{ waist_to_knee: 580, stature: 1660, skirt_length: 610, sleeve: 600 },
    });
  });

  it('keeps the places of its cells and leaves the chart as it was', () => {
    const chart = withBlend(CHART, readBlend(['waist S', 'hip M'], CHART));
    expect(findRow(chart, 'waist_girth')?.places[3]).toEqual({ row: 3, column: 2 });
    expect(findRow(chart, 'hip_girth')?.places[3]).toEqual({ row: 4, column: 3 });
    expect(CHART.sizes).toHaveLength(3);
  });

  it.each([
    [['waist S', 'hip M']],
    [['hip M', 'waist S']],
    [[' Hips: m ', 'WAIST = size S']],
    [['seat M', 'waist  S']],
  ])('reads %j as people type it', (parts) => {
    expect(readBlend(parts, CHART).label).toBe('waist S, hip M');
  });
});

describe('a blend is refused', () => {
  const place = { field: 'blend' };
  const refused = (...parts: readonly string[]) =>
    [() => readBlend(parts, CHART), 'bad-option', place] as const;

  it('without a waist or a hip', () => {
    expectRefusal(...refused('waist S'), 'does not say which size its hip has', 'Got: waist S');
    expectRefusal(...refused('hip S', 'length M'), 'does not say which size its waist has');
  });

  it('with an unknown part, an empty one, or one twice', () => {
    expectRefusal(
      ...refused('waist S', 'hip M', 'knee S'),
      'unknown part',
      'waist, hip, length',
      'knee S',
    );
    expectRefusal(...refused('waist S', 'high_hip M'), 'unknown part');
    expectRefusal(...refused('waist S', '', 'hip M'), 'a part of the blend is empty');
    expectRefusal(...refused('waist', 'hip M'), 'the waist of the blend has no size');
    expectRefusal(...refused('waist S', 'hip M', 'hips S'), 'the blend has hip twice');
  });

  it('with a size that the chart has not, or with the name of one that it has', () => {
    expectRefusal(
      () => readBlend(['waist S', 'hip XL'], CHART),
      'size-unknown',
      { ...place, file: 'c.csv' },
      'for the hip of the blend',
      'Allowed: S, M, L, tall',
      'Got: XL',
    );
    const named = { ...CHART, sizes: ['S', 'M', 'waist S, hip M'] };
    expectRefusal(
      () => readBlend(['waist S', 'hip M'], named),
      'size-twice',
      { ...place, file: 'c.csv' },
      'Got: waist S, hip M',
    );
  });
});
