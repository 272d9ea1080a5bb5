/** What rounding costs: cumulative positions against the habit of rounding each step. */
import type { DraftedPattern } from '../grade/graded-pattern';
import { draftedSizes, measureOf } from '../grade/graded-pattern';
import { roundEachStep } from '../grade/rounding';
import { applyRules } from '../grade/rules';
import { finishedMeasures } from '../measure/finished';
import { panelGirths, skirtPoints } from '../measure/skirt-points';
import { SEAM_FAILURE } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';
import { found } from './finding';

/**
 * Notes for each size and girth how far off the finished garment is, and would have been. The size in
 * which a girth would have lost or won most is a warning where a sewer could not ease that in.
 */
export function noteRoundingDrift(range: DraftedPattern, display: LengthDisplay): Finding[] {
  const step = range.roundingStep;
  const base = range.sizes[range.rules.base];
  if (step === undefined || base === undefined) return [];
  const drifted = applyRules(base.pieces, roundEachStep(range.exactRules, step));
  const girths = panelGirths(base.measures);
  const points = skirtPoints(range.plans).filter(({ measure }) => girths.includes(measure));
  const drifts = draftedSizes(range).map((size, i) => {
    const exact = finishedMeasures(points, size.draft.pieces);
    const stepwise = finishedMeasures(points, drifted[i] ?? []);
    return girths.map((girth) => ({
      off: measureOf(size, girth) - measureOf({ measures: exact }, girth),
      drift: measureOf({ measures: stepwise }, girth) - measureOf({ measures: exact }, girth),
    }));
  });
  const worst = girths.map((_, k) =>
    Math.max(...drifts.map((own) => Math.abs(own[k]?.drift ?? 0))),
  );
  const told = new Set<string>();
  return range.sizes.flatMap((size, i) => {
    return girths.map((girth, k): Finding => {
      const { off, drift } = drifts[i]?.[k] ?? { off: NaN, drift: NaN };
      const most = worst[k] ?? 0;
      const isWorst = most > SEAM_FAILURE && Math.abs(drift) === most && !told.has(girth);
      if (isWorst) told.add(girth);
      return found({
        severity: isWorst ? 'warning' : 'note',
        check: 'rounding',
        size: size.label,
        subject: girth,
        measured: off,
        expected: drift,
        source: 'arithmetic: moves from the base are rounded, so that nothing adds up',
        message:
          `rounding to ${showLength(step, display)} moves the finished ${girth.replaceAll('_', ' ')} by ` +
          `${showLength(off, display)}; rounding each step would have moved it by ` +
          showLength(drift, display),
      });
    });
  });
}
