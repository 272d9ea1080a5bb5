/** The verdict for a terminal: one line, what is to be decided, and where the rest is. */
import type { Finding } from '../check/finding';
import type { Verdict } from '../verdict/verdict';
import { countWords, decisionLines, verdictLine } from '../verdict/words';
import type { Telling } from './json-document';
import { findingsReport } from './findings-report';
import { wrappedParagraph } from './text-table';

const COLORS: Readonly<Record<Verdict['kind'], string>> = { mend: '31', decide: '33', cut: '32' };

/**
 * Lines of at most 80 columns; `where` tells how to see what is only counted, `ready` what may be done
 * where nothing is left to decide.
 */
export function verdictReport(
  verdict: Verdict,
  color: boolean,
  where: string,
  ready?: string,
): string {
  const head = wrappedParagraph(verdictLine(verdict, ready));
  const words = head.slice(0, head.indexOf(':'));
  const line = color
    ? head.replace(words, `\u001b[${COLORS[verdict.kind]}m${words}\u001b[0m`)
    : head;
  const decisions = decisionLines(verdict, where);
  return (
    line +
    decisions.map((text, i) => wrappedParagraph(`  ${i + 1}. ${text}`, 5)).join('') +
    wrappedParagraph(`${countWords(verdict)}, ${where}`)
  );
}

/** Every finding in words where they are asked for. */
export function findingsInWords(
  findings: readonly Finding[],
  { verbose = false }: Telling,
  color: boolean,
): readonly string[] {
  const text = verbose ? findingsReport(findings, color) : '';
  return text === '' ? [] : [text];
}
