/** Edges that a style leaves as they are ruled: one thing to decide, not one in every size. */
import type { Check } from './checks';
import type { Finding } from './finding';
import { found } from './finding';
import { trimmed } from '../units';

/** The checks of edges that truing would make run on. */
const OF_EDGES: readonly string[] = ['edge-over-dart', 'closed-waist', 'corners-across-seam'];

/**
 * What these checks find; in a skirt that is left untrued the corners of its edges are notes, and one
 * warning for the whole range tells of them.
 */
export function unlessUntrued(checks: readonly Check[]): Check {
  return (context) => {
    const found = checks.flatMap((check) => check(context));
    const { range } = context;
    if (range.sizes.some(({ parameters }) => parameters.get('trued') !== 0)) return found;
    const isLeft = ({ severity, check }: Finding): boolean =>
      severity === 'warning' && OF_EDGES.includes(check);
    const left = found.filter(isLeft);
    if (left.length === 0) return found;
    return [untrued(left), ...found.map((one) => (isLeft(one) ? noted(one) : one))];
  };
}

function noted(finding: Finding): Finding {
  return { ...finding, severity: 'note' };
}

/** The corner that is farthest from running on stands for all. */
function untrued(left: readonly Finding[]): Finding {
  const corners = left.filter(({ quantity }) => quantity === 'angle');
  const off = corners.map(({ measured = NaN, expected = NaN }) => Math.abs(measured - expected));
  const worst = Math.max(0, ...off);
  const { subject = '' } = corners[off.indexOf(worst)] ?? {};
  return found({
    severity: 'warning',
    check: 'untrued',
    piece: 'front, back',
    subject,
    quantity: 'angle',
    measured: worst,
    expected: 0,
    message:
      `the edges are left as they are ruled (trued = 0): over closed darts and across the side seam they ` +
      `turn by up to ${trimmed(worst, 1)} degrees, as the notes tell`,
  });
}
