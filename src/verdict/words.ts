/** The verdict in words, the same wherever it is told. */
import { counted } from '../table/counted';
import { SEVERITIES } from '../check/finding';
import type { Verdict } from './verdict';

/** Decisions that are told; the rest is counted. */
const TOLD = 5;

const HEADS: Readonly<Record<Verdict['kind'], string>> = {
  mend: 'Mend first',
  decide: 'Decide first',
  cut: 'Can be cut',
};

/** One line: what may be done with the pattern, or with `CHART_READY` for a chart alone. */
export function verdictLine({ kind, decisions }: Verdict, ready = HEADS.cut): string {
  const mends = decisions.filter(({ severity }) => severity === 'fail').length;
  const decides = decisions.length - mends;
  if (kind === 'cut') return `${ready}: nothing failed, and nothing is left to decide.`;
  const rest = decides === 0 ? '' : `, ${counted(decides, 'decision')} to make`;
  if (kind === 'mend') return `${HEADS.mend}: ${counted(mends, 'thing')} to mend${rest}.`;
  return `${HEADS.decide}: nothing failed, ${counted(decides, 'decision')} to make.`;
}

/** Stands for `Can be cut` where there is only a chart. */
export const CHART_READY = 'Can be graded';

/** At most five sentences, then how many more there are and `where`. */
export function decisionLines({ decisions }: Verdict, where: string): readonly string[] {
  const told = decisions.slice(0, TOLD).map(({ text }) => text);
  const rest = decisions.length - told.length;
  return rest === 0 ? told : [...told, `And ${rest} more, ${where}.`];
}

/** `Findings: 0 fail, 1 warning, 3 note, 12 ok`. */
export function countWords({ counts }: Pick<Verdict, 'counts'>): string {
  return `Findings: ${SEVERITIES.map((severity) => `${counts[severity]} ${severity}`).join(', ')}`;
}
