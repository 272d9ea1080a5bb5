/** Finished waist and hip, measured from the outlines, against body plus ease. */
import type { DraftedPattern } from '../grade/graded-pattern';
import { draftedSizes, measureOf } from '../grade/graded-pattern';
import { finishedMeasures } from '../measure/finished';
import { WAIST_EDGE, skirtPoints } from '../measure/skirt-points';
import { usualTolerance } from '../measure/tolerances';
import { MEETS_TARGET } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding, Severity } from './finding';
import { found } from './finding';

const TARGETS = [
  { measure: 'waist', girth: 'waist_girth', eases: ['waist_ease'] },
  { measure: WAIST_EDGE, girth: 'waist_girth', eases: ['waist_ease', 'band_ease'] },
  { measure: 'hip', girth: 'hip_girth', eases: ['hip_ease'] },
] as const;

/** Said of what is meant to be smaller than the body. */
const SMALLER = 'smaller than the body, which only cloth that stretches allows: ';

/** mm. What rounding alone may change a girth by without a warning: its usual tolerance. */
const NOTED = usualTolerance('girth', 'girth', 0).plus;

/**
 * Waist, the edge that is eased into a band, and hip of each size; off by more than the tolerance they fail, and ease below zero is warned
 * of. What only rounding makes of a girth is a note within the usual tolerance of a finished girth,
 * and a warning above it.
 */
export function checkFinishedGirths(range: DraftedPattern, display: LengthDisplay): Finding[] {
  const rounded = range.roundingStep !== undefined;
  const points = skirtPoints(range.plans).filter(({ measure: own }) =>
    TARGETS.some(({ measure }) => measure === own),
  );
  const targets = TARGETS.filter((own) => points.some(({ measure }) => measure === own.measure));
  return draftedSizes(range).flatMap((size) => {
    const exact = rounded ? finishedMeasures(points, size.draft.pieces) : size.measures;
    return targets.map(({ measure, girth, eases }): Finding => {
      const measured = measureOf(size, measure);
      const ease = eases.reduce((sum, name) => sum + (size.parameters.get(name) ?? NaN), 0);
      const expected = (size.draft.body.get(girth) ?? NaN) + ease;
      // Closing a dart into the hem opens the panel at the hip too: there the hip is a least width.
      const opens = measure === 'hip' && (size.parameters.get('dart_closing') ?? 0) > 0;
      const missedBy = (girthOf: number): number =>
        opens ? Math.max(0, expected - girthOf) : Math.abs(girthOf - expected);
      const off = missedBy(measured);
      const held = severityOf(off, missedBy(measureOf({ measures: exact }, measure)));
      const isSmaller = held === 'ok' && ease < 0;
      const byRounding = held === 'note' || held === 'warning';
      return found({
        severity: isSmaller ? 'warning' : held,
        check: 'finished-girth',
        size: size.label,
        subject: measure,
        measured,
        expected,
        tolerance: MEETS_TARGET,
        source: "the engine's own rule: body plus ease",
        message:
          (isSmaller ? SMALLER : '') +
          `${measure === WAIST_EDGE ? 'waist edge of the skirt' : `finished ${measure}`} ${showLength(measured, display)}, ` +
          `body plus ease ${measure === WAIST_EDGE ? 'and what is eased into the band ' : ''}${opens ? 'at least ' : ''}${showLength(expected, display)}`,
        ...(byRounding ? { byRounding } : {}),
        ...(isSmaller ? { facts: { ease: -ease } } : {}),
      });
    });
  });
}

/** For a girth that is off by `off` mm, and by `exactly` mm before rounding. */
function severityOf(off: number, exactly: number): Severity {
  if (off <= MEETS_TARGET) return 'ok';
  if (!(exactly <= MEETS_TARGET)) return 'fail';
  return off <= NOTED ? 'note' : 'warning';
}
