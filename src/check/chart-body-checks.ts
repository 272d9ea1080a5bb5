/** Checks that the waist and hip of a chart are those of adult bodies that grow with the size. */
import { present } from '../lists/present';
import { boundsOf } from '../chart/plausible';
import type { SizeChart } from '../chart/size-chart';
import { SAME_PLACE, SAME_STEP } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { ChartBody, ChartStep } from './chart-bodies';
import { chartBodies, chartSteps } from './chart-bodies';
import type { PlausibleRange } from './chart-range';
import { checkMeasurementRange } from './chart-range';
import type { Girth } from './chart-step-runs';
import type { Finding } from './finding';
import { OWN_RULE, found } from './finding';

const RANGES = ['waist_girth', 'hip_girth'].map((measurement): PlausibleRange => {
  const { least, most } = boundsOf(measurement);
  return { measurement, least, greatest: most, source: OWN_RULE };
});

/**
 * mm. From a mini to the floor. Closer than what is refused: 32 or 35 may be a short skirt in cm, and is a
 * usual one in inches; 50 the other way round.
 */
const SKIRT_LENGTHS: PlausibleRange = {
  measurement: 'skirt_length',
  least: 355,
  greatest: 1150,
  source: 'common practice, no source',
};

/** Warnings for girths beyond an adult's, skirts of unusual lengths, a hip below its waist, and girths that stay. */
export function checkBodies(chart: SizeChart, display: LengthDisplay): Finding[] {
  const bodies = chartBodies(chart);
  const isEverySize = bodies.every(({ waist, hip }) => hip < waist - SAME_PLACE);
  return present([
    ...[...RANGES, SKIRT_LENGTHS].flatMap((range) => checkMeasurementRange(chart, range, display)),
    nothingGrows(bodies, display),
    ...bodies.map((body) => hipBelowWaist(body, isEverySize, display)),
    ...chartSteps(chart).flatMap((step) => [
      notGrowing(step, 'waist', 'hip', display),
      notGrowing(step, 'hip', 'waist', display),
    ]),
  ]);
}

/** Sizes under several names with one body: whoever grades them gets one skirt several times. */
function nothingGrows(bodies: readonly ChartBody[], display: LengthDisplay): Finding | undefined {
  const [first, ...others] = bodies;
  const last = others.at(-1);
  if (first === undefined || last === undefined) return undefined;
  const isSame = (body: ChartBody) =>
    Math.abs(body.waist - first.waist) < SAME_PLACE && Math.abs(body.hip - first.hip) < SAME_PLACE;
  if (!others.every(isSame)) return undefined;
  return found({
    severity: 'warning',
    check: 'nothing-grows',
    size: `${first.size}-${last.size}`,
    subject: 'waist_girth, hip_girth',
    measured: 0,
    message:
      `from ${first.size} to ${last.size} nothing grows: in every size the waist is ` +
      `${showLength(first.waist, display)} and the hip ${showLength(first.hip, display)}`,
  });
}

/**
 * Such a body exists; the drafts for it have no darts to take in, which a maker must know. A whole
 * range of them is rather a chart with two rows exchanged.
 */
function hipBelowWaist(
  { size, waist, hip }: ChartBody,
  isEverySize: boolean,
  display: LengthDisplay,
): Finding | undefined {
  if (hip > waist - SAME_PLACE) return undefined;
  return found({
    severity: isEverySize ? 'fail' : 'warning',
    check: 'hip-below-waist',
    size,
    subject: 'hip_girth',
    measured: hip,
    expected: waist,
    message:
      `at ${size} the hip, ${showLength(hip, display)}, is smaller than the waist, ` +
      showLength(waist, display) +
      (isEverySize ? ', as in every size: are the rows of waist and hip exchanged?' : ''),
  });
}

/** A girth that stays while the other grows; one that falls is told by `larger-is-smaller`. */
function notGrowing(
  step: ChartStep,
  girth: Girth,
  other: Girth,
  display: LengthDisplay,
): Finding | undefined {
  const { from, to } = step;
  const stays = Math.abs(step[girth]) < SAME_STEP - SAME_PLACE;
  if (!stays || step[other] < SAME_STEP - SAME_PLACE) return undefined;
  return found({
    severity: 'warning',
    check: 'girth-not-growing',
    size: `${from.size}-${to.size}`,
    subject: `${girth}_girth`,
    measured: step[girth],
    source: 'common practice, no source',
    message:
      `from ${from.size} to ${to.size} the ${girth} stays at ` +
      `${showLength(to[girth], display)} while the ${other} goes from ` +
      `${showLength(from[other], display)} to ${showLength(to[other], display)}`,
  });
}
