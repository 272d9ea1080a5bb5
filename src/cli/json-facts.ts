/** Values that the documents of several commands have in common. */
import type { Finding } from '../check/finding';
import type { GradeResult } from '../jobs/grade-result';
import type { PrintFile } from '../print/print-drawing';
import type { LengthDisplay } from '../units';
import type { Verdict } from '../verdict/verdict';
import { verdictOf } from '../verdict/verdict';
import { whatToDo } from '../verdict/what-to-do';
import { verdictLine } from '../verdict/words';
import type { WrittenFiles } from './write-files';

/** Severities counted, all decisions, and the line that is told first. */
export function verdictFacts(verdict: Verdict, ready?: string): object {
  return {
    kind: verdict.kind,
    line: verdictLine(verdict, ready),
    decisions: verdict.decisions.map(({ severity, text }) => ({ severity, text })),
    counts: verdict.counts,
  };
}

const UNITS: Readonly<Record<Finding['quantity'], string>> = {
  length: 'mm',
  angle: 'deg',
  number: '',
};

/** The columns of `findings.csv`, lengths in mm; what is absent there is not there. */
export function findingFacts(findings: readonly Finding[], display: LengthDisplay): object[] {
  return findings.map((finding) => {
    const { severity, check, size, piece, subject, measured, expected, tolerance } = finding;
    const { source, message, quantity } = finding;
    const hasNumber = measured !== undefined || expected !== undefined;
    return {
      ...{ severity, check, size, piece, subject, measured, expected, tolerance },
      unit: hasNumber ? UNITS[quantity] : '',
      ...{ source, message, what_to_do: whatToDo([finding], display) },
    };
  });
}

/** What was graded and what came of it; `style` of a drafted range alone. */
export function gradedFacts(result: GradeResult): object {
  const { title, chart, range, shown, findings, display, seams } = result;
  const labels = range.sizes.map(({ label }) => label);
  return {
    title,
    chart: chart?.file,
    style: range.draft?.style.name,
    base: range.base,
    sizes: labels,
    unit: display.unit,
    rounding_step: range.roundingStep,
    verdict: verdictFacts(verdictOf(findings, labels, display)),
    finished: shown.map(({ label, measures }) => ({
      size: label,
      measures: Object.fromEntries(measures.map(({ name, value }) => [name, value])),
    })),
    seams: seams.map(({ pair, walks }) => ({
      seam: pair.name,
      gaps: Object.fromEntries(walks.map(({ gap }, i) => [labels[i] ?? '', gap])),
    })),
    findings: findingFacts(findings, display),
  };
}

/** The folder, the names in it, and for printed files what their sheets are. */
export function writtenFacts(
  { folder, names, dropped, leftovers, outdated }: WrittenFiles,
  printed: readonly PrintFile[] = [],
): object {
  return {
    folder,
    files: names,
    gone_with_earlier_run: dropped,
    left_by_earlier_run: leftovers,
    of_another_skirt: outdated,
    ...(printed.length === 0
      ? {}
      : { printed: printed.map(({ name, summary }) => ({ file: name, sheets: summary })) }),
  };
}
