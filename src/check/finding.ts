/** What a check says. Checks never throw: a draft that is wrong is a finding, not an exception. */

/** `fail` turns the exit code to 1; `ok` records a check that held, so that it can be shown. */
export type Severity = 'fail' | 'warning' | 'note' | 'ok';

/** Every severity, the gravest first: the order of reports. */
export const SEVERITIES: readonly Severity[] = ['fail', 'warning', 'note', 'ok'];

/** What kind of number a finding carries; lengths are millimeters, angles degrees. */
export type Quantity = 'length' | 'angle' | 'number';

/**
 * One thing that a check looked at and what it saw there; numbers in the unit of `quantity`, mm or
 * degrees.
 */
export interface Finding {
  readonly severity: Severity;
  /** The check's own name in kebab-case, such as `graded-equals-draft`. */
  readonly check: string;
  /** Size label, `8-10` for a step between neighbors, empty for the whole range. */
  readonly size: string;
  /** Names of the pieces, joined by a comma; empty for the whole garment. */
  readonly piece: string;
  /** The point, seam, dart, measurement or table that the finding is about. */
  readonly subject: string;
  readonly quantity: Quantity;
  readonly measured?: number | undefined;
  readonly expected?: number | undefined;
  readonly tolerance?: number | undefined;
  /** Published source and its certainty, `common practice, no source`, or the engine's own rule. */
  readonly source: string;
  /** One sentence for people, lengths already in the unit they asked for. */
  readonly message: string;
  /** What the remedy can name besides: a text, or a length in millimeters. */
  readonly facts?: Readonly<Record<string, string | number>>;
  /** Names of the seams that come apart by what this finding tells, and meet once it is mended. */
  readonly explains?: readonly string[];
  /** True where the pattern is right before its rules are rounded. */
  readonly byRounding?: boolean;
}

/** The source of what is said by no publication. */
export const OWN_RULE = "the engine's own rule";

/** What a check cannot leave out of a finding, and what else it has to say. */
type Told = Pick<Finding, 'severity' | 'check' | 'message'> & Partial<Finding>;

/** A finding; what it leaves out is the whole range, the whole garment, lengths, and the engine's own rule. */
export function found(told: Told): Finding {
  const hasNumber = told.measured !== undefined || told.expected !== undefined;
  const quantity = hasNumber ? 'length' : 'number';
  return { size: '', piece: '', subject: '', quantity, source: OWN_RULE, ...told };
}

/** A finding by the engine's own rule, without a number. */
export function ruleFinding(
  severity: Severity,
  check: string,
  place: Partial<Pick<Finding, 'size' | 'piece' | 'subject'>>,
  message: string,
): Finding {
  return found({ severity, check, ...place, message });
}

/** Findings with the gravest first, otherwise in the order they were made. */
export function bySeverity(findings: readonly Finding[]): Finding[] {
  return SEVERITIES.flatMap((severity) => findings.filter((f) => f.severity === severity));
}
