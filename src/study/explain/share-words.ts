/** A rule as it is said in a sample room: a quarter of the waist's step. */
import type { Fraction } from '../../formula/fraction';
import { quotient } from '../../formula/fraction';
import { exactText } from './exact';

/** Names of the parts that a measurement is shared in. */
const PARTS: Readonly<Record<number, string>> = {
  3: 'third',
  4: 'quarter',
  5: 'fifth',
  6: 'sixth',
  8: 'eighth',
  10: 'tenth',
  12: 'twelfth',
  16: 'sixteenth',
};

const COUNTS: Readonly<Record<number, string>> = { 2: 'two', 3: 'three', 5: 'five', 7: 'seven' };

/** A share of a measurement's step, positive in the direction of the axis. */
export interface Share {
  readonly measurement: string;
  readonly share: Fraction;
}

/** `a quarter of the waist's step less a twelfth of the hip's step`. */
export function rulesInWords(shares: readonly Share[]): string {
  const plus = shares.filter(({ share }) => quotient(share) > 0);
  const minus = shares.filter(({ share }) => quotient(share) < 0);
  if (plus.length === 0 && minus.length > 0)
    return `${joined(minus)}, against the direction of the axis`;
  return [joined(plus), ...(minus.length > 0 ? [joined(minus)] : [])].join(' less ');
}

function joined(shares: readonly Share[]): string {
  const parts = shares.map(({ measurement, share }) => `${partOf(share)} ${stepOf(measurement)}`);
  const [last = '', ...before] = parts.reverse();
  return before.length === 0 ? last : `${before.reverse().join(', ')} and ${last}`;
}

/** `a quarter of`, `three eighths of`, `0.1143 of`; of one and of whole numbers their own words. */
function partOf(share: Fraction): string {
  const top = Math.abs(share.top);
  const { bottom } = share;
  if (top === 1 && bottom === 1) return 'the whole of';
  if (top === 1 && bottom === 2) return 'half of';
  const part = PARTS[bottom];
  if (part !== undefined && top === 1) return `${/^[ae]/u.test(part) ? 'an' : 'a'} ${part} of`;
  const count = COUNTS[top];
  if (part !== undefined && count !== undefined) return `${count} ${part}s of`;
  return `${exactText({ top, bottom }, 'in')} of`;
}

/** `the waist's step`; a name of several words says `the step of waist to hip`. */
function stepOf(measurement: string): string {
  const name = measurement.replace(/_girth$/u, '').replaceAll('_', ' ');
  return name.includes(' ') ? `the step of ${name}` : `the ${name}'s step`;
}
