/** Checks the waist-to-hip depth of a chart against measured bodies. */
import { present } from '../lists/present';
import type { SizeChart } from '../chart/size-chart';
import type { Compared } from '../standards/waist-to-hip';
import { WAIST_TO_HIP_SURVEY, waistToHipGrowth } from '../standards/waist-to-hip';
import { SAME_PLACE, SAME_STEP } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength, trimmed } from '../units';
import { completeValues } from './chart-bodies';
import { checkMeasurementRange } from './chart-range';
import type { Finding } from './finding';
import { found } from './finding';

/** A depth that grows more than this many times as fast as on measured bodies is worth a look. */
const STEEP = 3;

/** mm. Drafts use 160 to 230, and one wearer measured 280; beyond these a cell is suspect. */
const DEPTH_RANGE = {
  measurement: 'waist_to_hip',
  least: 150,
  greatest: 300,
  source: 'common practice, no source',
};

/**
 * The growth of the depth per growth of the hip, from the smallest size to the largest, beside that
 * of women who grow as the chart's hip and stature do, or of all statures where it has none: a
 * note, or a warning if it shrinks where theirs grows, or grows more than three times as fast. Also
 * a warning for depths that no adult has. Nothing where the chart has no such row.
 */
export function checkWaistToHip(chart: SizeChart, display: LengthDisplay): Finding[] {
  return present([
    ...checkMeasurementRange(chart, DEPTH_RANGE, display),
    growthFinding(chart, display),
  ]);
}

function growthFinding(chart: SizeChart, display: LengthDisplay): Finding | undefined {
  const depth = growth(chart, 'waist_to_hip');
  const hip = growth(chart, 'hip_girth');
  if (depth === undefined || hip === undefined || hip < SAME_STEP) return undefined;
  const stature = growth(chart, 'stature');
  const bodies = waistToHipGrowth(hip, stature);
  const measured = depth / hip;
  const odd =
    depth < Math.min(0, bodies.growth) - SAME_PLACE ||
    depth > STEEP * Math.max(0, bodies.growth) + SAME_PLACE;
  return found({
    severity: odd ? 'warning' : 'note',
    check: 'waist-to-hip-grade',
    subject: 'waist_to_hip',
    quantity: 'number',
    measured,
    expected: bodies.growth / hip,
    source: WAIST_TO_HIP_SURVEY,
    message:
      `over the whole range the waist-to-hip depth grows ${showLength(depth, display)} while ` +
      `the hip grows ${showLength(hip, display)}, ${trimmed(measured, 3)} for 1 of hip; ` +
      `on measured bodies ${whichBodies(bodies.compared, stature, display)} it grows ` +
      trimmed(bodies.growth / hip, 3),
  });
}

function whichBodies(compared: Compared, stature = 0, display: LengthDisplay): string {
  switch (compared) {
    case 'one stature':
      return "of one stature, as the chart's stature stays,";
    case 'statures given':
      return `whose stature grows ${showLength(stature, display)} as in the chart`;
    case 'all statures':
      return 'of all statures, since the chart gives no stature,';
  }
}

/** mm. The largest size's value less the smallest's; undefined where the row is not complete. */
function growth(chart: SizeChart, name: string): number | undefined {
  const values = completeValues(chart, name);
  const first = values?.[0];
  const last = values?.at(-1);
  return first === undefined || last === undefined ? undefined : last - first;
}
