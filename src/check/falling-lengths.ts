/** Lengths of a chart that fall in every step on the way up, as where a row was typed backward. */
import { labelRanks } from '../chart/label-order';
import type { SizeChart } from '../chart/size-chart';
import { SAME_PLACE, SAME_STEP } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import { completeValues, neighbors } from './chart-bodies';
import type { Finding } from './finding';
import { found } from './finding';

/**
 * Larger bodies have lower crotches, so those lengths and the hip height are left out: on them a
 * fall is a fact.
 */
const LENGTHS = [
  ...['stature', 'waist_height', 'knee_height', 'outside_leg_length'],
  ...['waist_to_hip', 'waist_to_high_hip', 'waist_to_knee', 'skirt_length'],
];

/** Two sizes show no habit; three or more do. */
const TELLING = 3;

/** A warning for each such length, by name; who means it so may leave it. */
export function checkFallingLengths(chart: SizeChart, display: LengthDisplay): Finding[] {
  const ranks = labelRanks(chart.sizes);
  return LENGTHS.flatMap((name) => {
    const sizes = (completeValues(chart, name) ?? [])
      .map((value, i) => ({ value, size: chart.sizes[i] ?? '', rank: ranks?.[i] ?? i }))
      .sort((a, b) => a.rank - b.rank);
    const [first, last] = [sizes[0], sizes.at(-1)];
    if (first === undefined || last === undefined || sizes.length < TELLING) return [];
    const falls = neighbors(sizes).every(([from, to]) => to.value < from.value - SAME_PLACE);
    if (!falls || first.value - last.value <= SAME_STEP) return [];
    return found({
      severity: 'warning',
      check: 'length-falls',
      size: `${first.size}-${last.size}`,
      subject: name,
      measured: last.value,
      expected: first.value,
      source: 'common practice, no source',
      message:
        `${name} falls in every step while the sizes go up, from ` +
        `${showLength(first.value, display)} at ${first.size} to ` +
        `${showLength(last.value, display)} at ${last.size}: is the row the right way round?`,
    });
  });
}
