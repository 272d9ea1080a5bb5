/** A waistband is sewn to be closed over a body that breathes and sits: it has ease of its own. */
import type { DraftedPattern } from '../grade/graded-pattern';
import { draftedSizes, measureOf } from '../grade/graded-pattern';
import { MEETS_TARGET } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';
import { found } from './finding';

/** A finding for each size, none where there is no band: one without ease is warned of. */
export function checkBandEase(range: DraftedPattern, display: LengthDisplay): Finding[] {
  if (!range.plans.some(({ part }) => part === 'waistband')) return [];
  return draftedSizes(range).map((size): Finding => {
    const body = size.draft.body.get('waist_girth') ?? NaN;
    const measured = measureOf(size, 'waist') - body;
    const hasEase = measured > MEETS_TARGET;
    const differs =
      Math.abs(measured) <= MEETS_TARGET
        ? 'just as long as'
        : `${showLength(Math.abs(measured), display)} ${measured < 0 ? 'shorter' : 'longer'} than`;
    return found({
      severity: hasEase ? 'ok' : 'warning',
      check: 'band-ease',
      size: size.label,
      piece: 'waistband',
      subject: 'waist',
      measured,
      expected: size.parameters.get('waist_ease'),
      source: 'common practice, no source: 1 to 2 cm of ease in a finished waist',
      message:
        `the closed band is ${differs} the body waist` +
        (hasEase ? '' : '; it has no ease, so set waist_ease, of which the skirt edge gets more'),
    });
  });
}
