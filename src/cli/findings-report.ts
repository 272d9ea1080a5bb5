/** Findings for a terminal, the gravest first; what there is too much of stays in the table. */
import type { Finding, Severity } from '../check/finding';
import { SEVERITIES } from '../check/finding';
import { paragraph } from './text-table';

const COLORS: Record<Severity, string> = { fail: '31', warning: '33', note: '36', ok: '32' };

/** Findings of one severity shown in full before the rest is only counted. */
const MOST: Record<Severity, number> = { fail: 20, warning: 12, note: 8, ok: 0 };

/** `where` tells the reader how to see those that are only counted. */
export function findingsReport(
  findings: readonly Finding[],
  color: boolean,
  where: string,
  most: Record<Severity, number> = MOST,
): string {
  const counts = SEVERITIES.map((severity) => {
    const count = findings.filter((finding) => finding.severity === severity).length;
    return `${count} ${severity}`;
  });
  let text = `Findings: ${counts.join(', ')}\n`;
  for (const severity of SEVERITIES) {
    const all = findings.filter((finding) => finding.severity === severity);
    for (const finding of all.slice(0, most[severity])) text += line(finding, color);
    const rest = all.length - most[severity];
    if (rest > 0 && severity !== 'ok') text += `  ... and ${rest} more of "${severity}" ${where}\n`;
  }
  return text;
}

function line({ severity, check, size, piece, subject, message }: Finding, color: boolean): string {
  const subjects = [size === '' ? '' : `size ${size}`, piece, subject].filter((s) => s !== '');
  const about = subjects.length === 0 ? '' : ` (${subjects.join(', ')})`;
  const text = paragraph(`  ${severity} ${check}${about}: ${message}`, 4);
  if (!color) return text;
  return text.replace(severity, `\u001b[${COLORS[severity]}m${severity}\u001b[0m`);
}
