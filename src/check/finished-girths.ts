/** Finished waist and hip, measured from the outlines, against body plus ease. */
import type { GradedRange } from '../grade/graded-pattern';
import { measureOf } from '../grade/graded-pattern';
import { MEETS_TARGET } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';

const TARGETS = [
  { measure: 'waist', girth: 'waist_girth', ease: 'waist_ease' },
  { measure: 'hip', girth: 'hip_girth', ease: 'hip_ease' },
] as const;

/** Said of what is meant to be smaller than the body. */
const SMALLER = 'smaller than the body, which only cloth that stretches allows: ';

/** Quarter panels in a girth: each may be off by half a rounding step. */
const PANELS = 4;

/**
 * Waist and hip of each size; off by more than the tolerance they fail, and ease below zero is warned
 * of. Rounded rules are allowed half a step a panel.
 */
export function checkFinishedGirths(range: GradedRange, display: LengthDisplay): Finding[] {
  const tolerance = MEETS_TARGET + (PANELS * (range.roundingStep ?? 0)) / 2;
  return range.sizes.flatMap((size) =>
    TARGETS.map(({ measure, girth, ease }): Finding => {
      const measured = measureOf(size, measure);
      const expected = (size.body.get(girth) ?? NaN) + (size.parameters.get(ease) ?? NaN);
      // Closing a dart into the hem opens the panel at the hip too: there the hip is a least width.
      const opens = measure === 'hip' && (size.parameters.get('dart_closing') ?? 0) > 0;
      const held = opens
        ? measured >= expected - tolerance
        : Math.abs(measured - expected) <= tolerance;
      const isSmaller = (size.parameters.get(ease) ?? 0) < 0;
      const severity = !held ? 'fail' : isSmaller ? 'warning' : 'ok';
      return {
        severity,
        check: 'finished-girth',
        size: size.label,
        piece: '',
        subject: measure,
        quantity: 'length',
        measured,
        expected,
        tolerance,
        source: "the engine's own rule: body plus ease",
        message:
          (severity === 'warning' ? SMALLER : '') +
          `finished ${measure} ${showLength(measured, display)}, ` +
          `body plus ease ${opens ? 'at least ' : ''}${showLength(expected, display)}`,
      };
    }),
  );
}
