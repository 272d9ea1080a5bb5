/** From findings to a verdict and to what somebody has to decide, grouped by what mends them. */
import { grouped } from '../lists/grouped';
import type { Finding, Severity } from '../check/finding';
import { SEVERITIES } from '../check/finding';
import type { LengthDisplay } from '../units';
import type { Cause } from './remedies';
import { CAUSES, REMEDIES } from './remedies';
import { sizeWords, sizesAt } from './size-words';
import { whatToDo } from './what-to-do';

/** One thing to mend or to decide. */
export interface Decision {
  /** `fail` is to be mended, `warning` to be decided. */
  readonly severity: 'fail' | 'warning';
  /** A sentence with the sizes that it is about, lengths in the unit asked for. */
  readonly text: string;
  /** All that it would settle. */
  readonly findings: readonly Finding[];
}

/** What the findings come to. */
export interface Verdict {
  readonly kind: 'cut' | 'decide' | 'mend';
  /** The gravest first, otherwise in the order of the findings. */
  readonly decisions: readonly Decision[];
  /** Findings by severity. */
  readonly counts: Readonly<Record<Severity, number>>;
}

/** `sizes` are the labels of the range in its order. Notes decide nothing. */
export function verdictOf(
  findings: readonly Finding[],
  sizes: readonly string[],
  display: LengthDisplay,
): Verdict {
  const grave = findings.filter(({ severity }) => severity === 'fail' || severity === 'warning');
  const groups = grouped(grave, (finding) => keyOf(explainerOf(finding, grave) ?? finding));
  const decisions = [...groups.values()].map((group) => decisionOf(group, sizes, display));
  return {
    kind: grave.some(isFailure) ? 'mend' : grave.length > 0 ? 'decide' : 'cut',
    decisions: [...decisions.filter(isFailure), ...decisions.filter((one) => !isFailure(one))],
    counts: countsOf(findings),
  };
}

function countsOf(findings: readonly Finding[]): Record<Severity, number> {
  const counts: Record<Severity, number> = { fail: 0, warning: 0, note: 0, ok: 0 };
  for (const { severity } of findings) counts[severity]++;
  return counts;
}

function isFailure({ severity }: { readonly severity: Severity }): boolean {
  return severity === 'fail';
}

/** What comes of a seam that is apart. */
const OF_SEAMS: readonly string[] = ['seam-lengths', 'notch-to-notch', 'corners-across-seam'];

/** The finding that tells why a seam comes apart; a slip that is sure goes before a doubt. */
function explainerOf(finding: Finding, others: readonly Finding[]): Finding | undefined {
  if (!OF_SEAMS.includes(finding.check) || finding.byRounding === true) return undefined;
  const seam = finding.subject.split(' at ')[0] ?? '';
  return others.find(({ explains = [] }) => explains.includes(seam));
}

/** What has the same key is settled by one decision. */
function keyOf({ check, piece, subject, byRounding }: Finding): string {
  const { cause, each } = REMEDIES[check] ?? {};
  if (byRounding === true) return 'rounding';
  // Of a piece a row is no row of the chart.
  if (each === 'row') return piece === '' ? `row ${subject}` : check;
  const own = { piece, subject: `${piece} ${subject}`, none: '' }[each ?? 'none'];
  return cause ?? `${check} ${own}`;
}

function decisionOf(
  group: readonly Finding[],
  sizes: readonly string[],
  display: LengthDisplay,
): Decision {
  const severity = group.some(isFailure) ? 'fail' : 'warning';
  const told = tellers(group);
  const where = sizeWords([...new Set(group.flatMap((own) => sizesAt(own.size, sizes)))], sizes);
  const act = actOf(told, group, display);
  const sentence = where === '' || told.every(({ size }) => size === '') ? act : `${where}: ${act}`;
  return {
    severity,
    text: `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}.`,
    findings: group,
  };
}

/** Those whose remedy is said: what explains the others, else the gravest of the first check. */
function tellers(group: readonly Finding[]): readonly Finding[] {
  const explaining = group.filter(({ check }) => !OF_SEAMS.includes(check));
  const from = explaining.length > 0 ? explaining : group;
  const gravest = SEVERITIES.flatMap((severity) => from.filter((own) => own.severity === severity));
  const [first] = gravest;
  return gravest.filter(
    ({ check, severity }) => check === first?.check && severity === first.severity,
  );
}

function actOf(
  told: readonly Finding[],
  group: readonly Finding[],
  display: LengthDisplay,
): string {
  const cause = sharedCause(group);
  return cause === undefined ? whatToDo(told, display) : CAUSES[cause];
}

/** The cause that several checks have in common, or rounding, which any check may suffer. */
function sharedCause(group: readonly Finding[]): Cause | undefined {
  if (group.every(({ byRounding }) => byRounding === true)) return 'rounding';
  const causes = new Set(group.map(({ check }) => REMEDIES[check]?.cause));
  const checks = new Set(group.map(({ check }) => check));
  const [cause] = causes;
  return checks.size > 1 && causes.size === 1 ? cause : undefined;
}
