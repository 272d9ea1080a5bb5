/** Checks whether the drop, hip minus waist, stays the same over the sizes of a chart. */
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { ChartBody } from './chart-bodies';
import { drop } from './chart-bodies';
import { sameStep } from './chart-step-runs';
import type { Finding } from './finding';
import { found } from './finding';

/**
 * One note where the drop changes, with the first, the last and the sizes at which it does: darts
 * and side seams then have more or less to take in, so one set of grade rules does not serve.
 */
export function checkDropChange(bodies: readonly ChartBody[], display: LengthDisplay): Finding[] {
  const first = bodies[0];
  const last = bodies.at(-1);
  const changes = dropChanges(bodies);
  if (first === undefined || last === undefined || changes.length === 0) return [];
  const where =
    changes.length > 1 && changes.length === bodies.length - 1
      ? 'every size'
      : changes.map(({ size }) => size).join(', ');
  return [
    found({
      severity: 'note',
      check: 'drop-changes',
      subject: 'drop',
      measured: drop(last),
      expected: drop(first),
      source: 'common practice, no source',
      message:
        `the drop (hip minus waist) is ${showLength(drop(first), display)} at ${first.size} and ` +
        `${showLength(drop(last), display)} at ${last.size}; it changes at ${where}`,
    }),
  ];
}

/** The sizes whose drop differs from the last drop that held, so that a slow drift counts too. */
function dropChanges(bodies: readonly ChartBody[]): ChartBody[] {
  let held = bodies[0];
  return bodies.filter((body) => {
    if (held === undefined || sameStep(drop(body), drop(held))) return false;
    held = body;
    return true;
  });
}
