/** Slips of a rule sheet, as its seams, its steps and the neighbors of its points tell. */
import type { GradedPattern } from '../grade/graded-pattern';
import type { Pattern } from '../pattern/pattern';
import type { Diagnosis } from '../seams/diagnose';
import { apart } from '../seams/evidence/holding';
import { nameOf } from '../seams/slips/sheet-state';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';

const TOLD_BY = "the engine's own rule: what undoing the slip would mend";

/**
 * A failure for each cause that explains a seam clearly better than any other, a warning for one that
 * only steps and neighbors tell of, and a warning with the places in question where none is clear.
 */
export function slipFindings(
  range: GradedPattern,
  pattern: Pattern,
  diagnoses: readonly Diagnosis[],
  display: LengthDisplay,
): Finding[] {
  const finding = ({ cause, places, seam, shows, why: told }: Diagnosis): Finding => {
    const from = nearest(shows, range.rules.base).map((size) => range.sizes[size]?.label ?? '');
    const since = from.length === 0 ? '' : `; it shows from size ${from.join(' and from size ')}`;
    const base = { size: from[0] ?? '', quantity: 'number' as const, source: TOLD_BY };
    if (cause !== undefined) {
      const { plan } = pattern.pieces[cause.at.piece]?.base ?? {};
      const why =
        seam === undefined
          ? (told ?? 'its steps and the points beside it tell')
          : `without that, the seam ${seam.pair.name} meets`;
      return {
        ...base,
        severity: seam === undefined ? 'warning' : 'fail',
        check: cause.kind === 'sign' ? 'wrong-sign' : 'rule-slip',
        piece: plan?.name ?? '',
        subject: plan?.pointNames[cause.at.point] ?? '',
        message: `${cause.words(display)}: ${why}${since}`,
        ...(seam === undefined ? {} : { explains: [seam.pair.name] }),
      };
    }
    const walks = seam?.walks ?? [];
    const gaps = walks.map((walk) => apart(walk, walks[range.rules.base] ?? walk));
    const worst = gaps.indexOf(Math.max(...gaps));
    const names = places.map(({ at }) => nameOf(pattern, at));
    return {
      ...base,
      severity: 'warning',
      check: 'rule-doubt',
      piece: [
        ...new Set(places.map(({ at }) => pattern.pieces[at.piece]?.base.plan.name ?? '')),
      ].join(', '),
      subject: seam?.pair.name ?? '',
      message:
        `the rules set the seam ${seam?.pair.name ?? ''} apart, by ${showLength(gaps[worst] ?? NaN, display)} ` +
        `in size ${range.sizes[worst]?.label ?? ''}, and no single slip explains it clearly best` +
        (names.length === 0 ? '' : `; a changed rule would at ${names.join(', or at ')}`) +
        since,
      explains: seam === undefined ? [] : [seam.pair.name],
      ...(names.length === 0 ? {} : { facts: { places: names.join(' or ') } }),
    };
  };
  return diagnoses.map(finding);
}

/** The sizes nearest to the base on either side. */
function nearest(sizes: readonly number[], base: number): readonly number[] {
  return [sizes.findLast((size) => size < base), sizes.find((size) => size > base)].filter(
    (size) => size !== undefined,
  );
}
