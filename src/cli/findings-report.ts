/** Every finding in words for a terminal, the gravest first. */
import { grouped } from '../lists/grouped';
import type { Finding, Severity } from '../check/finding';
import { SEVERITIES } from '../check/finding';
import { SHOWN_ALIKE } from '../tolerance';
import { wrappedParagraph } from './text-table';

const COLORS: Record<Severity, string> = { fail: '31', warning: '33', note: '36', ok: '32' };

/**
 * All but what held. The same check of the same place in several sizes is told once, in the words of its
 * first size; those with other figures are named apart.
 */
export function findingsReport(findings: readonly Finding[], color: boolean): string {
  return SEVERITIES.filter((severity) => severity !== 'ok')
    .flatMap((severity) => {
      const own = findings.filter((finding) => finding.severity === severity);
      return [...grouped(own, placeOf).values()];
    })
    .map((group) => lines(group, color))
    .join('');
}

function placeOf({ check, piece, subject }: Finding): string {
  return [check, piece, subject].join('\n');
}

/** Figures that read the same; what has no figure is alike. */
function alike(a: number | undefined, b: number | undefined): boolean {
  return a === b || Math.abs((a ?? NaN) - (b ?? NaN)) <= SHOWN_ALIKE;
}

function sizesTold(words: string, others: readonly Finding[]): string {
  return others.length === 0 ? '' : `; ${words} ${others.map(({ size }) => size).join(', ')}`;
}

function lines(group: readonly Finding[], color: boolean): string {
  const [first] = group;
  if (first === undefined) return '';
  const { severity, check, size, piece, subject, message } = first;
  const subjects = [size === '' ? '' : `size ${size}`, piece, subject].filter((s) => s !== '');
  const about = subjects.length === 0 ? '' : ` (${subjects.join(', ')})`;
  const others = group.slice(1);
  const isAlike = (other: Finding): boolean =>
    alike(other.measured, first.measured) && alike(other.expected, first.expected);
  const also =
    sizesTold('likewise in', others.filter(isAlike)) +
    sizesTold(
      'with other figures in',
      others.filter((other) => !isAlike(other)),
    );
  const text = wrappedParagraph(`  ${severity} ${check}${about}: ${message}${also}`, 4);
  if (!color) return text;
  return text.replace(severity, `\u001b[${COLORS[severity]}m${severity}\u001b[0m`);
}
