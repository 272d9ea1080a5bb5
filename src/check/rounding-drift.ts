/** What rounding costs: cumulative positions against the habit of rounding each step. */
import type { GradedRange } from '../grade/graded-pattern';
import { measureOf } from '../grade/graded-pattern';
import { roundEachStep } from '../grade/rounding';
import { applyRules } from '../grade/rules';
import { finishedMeasures, valueOf } from '../measure/finished';
import { skirtPoints } from '../measure/skirt-points';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';

const GIRTHS: readonly string[] = ['waist', 'hip'];

/** Notes for each size and girth how far off the finished garment is, and would have been. */
export function noteRoundingDrift(range: GradedRange, display: LengthDisplay): Finding[] {
  const step = range.roundingStep;
  const base = range.sizes[range.rules.base];
  if (step === undefined || base === undefined) return [];
  const drifted = applyRules(base.pieces, roundEachStep(range.exactRules, step));
  const points = skirtPoints(range.plans).filter(({ measure }) => GIRTHS.includes(measure));
  return range.sizes.flatMap((size, i) => {
    const exact = finishedMeasures(points, size.draft);
    const stepwise = finishedMeasures(points, drifted[i] ?? []);
    return GIRTHS.map((girth): Finding => {
      const off = measureOf(size, girth) - valueOf(exact, girth);
      const drift = valueOf(stepwise, girth) - valueOf(exact, girth);
      return {
        severity: 'note',
        check: 'rounding',
        size: size.label,
        piece: '',
        subject: girth,
        quantity: 'length',
        measured: off,
        expected: drift,
        source: 'arithmetic: cumulative rounding stays within half a step at every point',
        message:
          `rounding to ${showLength(step, display)} moves the finished ${girth} by ` +
          `${showLength(off, display)}; rounding each step would have moved it by ` +
          showLength(drift, display),
      };
    });
  });
}
