/** The zip of each size: long enough for the waist to pass the hip, and no longer than to the hip. */
import type { GradedPattern } from '../grade/graded-pattern';
import { shopZip } from '../pattern/shop-length';
import { SAME_PLACE } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';
import { found } from './finding';

/**
 * A finding for each size, none where a style has no zip: too short a zip fails, one that ends
 * below the hip line is noted.
 */
export function checkZip(range: GradedPattern, display: LengthDisplay): Finding[] {
  return range.sizes.flatMap(({ label, measures, parameters }): Finding | [] => {
    const value = (name: string): number | undefined =>
      measures.find((measure) => measure.name === name)?.value;
    const zip = value('zip_length');
    const opening = value('zip_opening');
    const short = parameters.get('zip_above_hip');
    if (zip === undefined || opening === undefined || short === undefined) return [];
    const left = opening + short - zip;
    const passes = zip >= opening - SAME_PLACE;
    return found({
      severity: !passes ? 'fail' : left < -SAME_PLACE ? 'note' : 'ok',
      check: 'zip-length',
      size: label,
      piece: 'back',
      subject: 'zip_length',
      measured: zip,
      expected: opening,
      source: 'common practice, no source: the zip ends at the hip line or up to 2 cm above it',
      message:
        `a zip of ${shopZip(zip, display)} ends ${showLength(Math.abs(left), display)} ` +
        `${left < -SAME_PLACE ? 'below' : 'above'} the hip line`,
    });
  });
}
