/** What the findings say of a planted slip: its place and kind, another, only where it tells, nothing. */
import type { Finding } from '../../../src/check/finding';
import type { Kind, Planted } from './planter';

/** `located` says where the evidence is and accuses nobody. */
export type Verdict = 'named' | 'false' | 'located' | 'missed';

/** Checks that state a cause. */
const ACCUSING = /^(wrong-sign|rule-slip)$/u;
/** Checks that say where something tells. */
const TELLING = /^(seam-lengths|notch-to-notch|rule-doubt|step-turns)$/u;

/** How the cause is worded where a slip of the kind is stated. */
const WORDS: Readonly<Record<Kind, RegExp>> = {
  'sign of a point': /the signs? of d[xy]/u,
  'sign of a step': /the signs? of d[xy].*in one (step|size)/u,
  'x and y exchanged': /dx and dy .*exchanged/u,
  'rule missing': /the rule of .* missing/u,
  'rules of two points exchanged': /rules of .* and .* exchanged/u,
  'one step doubled': /twice/u,
  '3 mm off in one size': /off by/u,
  'ten times': /ten times/u,
  'rows of two sizes exchanged': /sizes .* and .* exchanged/u,
};

/** Judges the findings on a sheet with one slip. */
export function verdictOn(planted: Planted, findings: readonly Finding[]): Verdict {
  const grave = findings.filter(({ severity }) => severity === 'fail' || severity === 'warning');
  const accusing = grave.filter(({ check }) => ACCUSING.test(check));
  const isRight = ({ piece, subject, message }: Finding): boolean =>
    planted.at.includes(`${piece}.${subject}`) && WORDS[planted.kind].test(message);
  if (accusing.some((finding) => !isRight(finding))) return 'false';
  if (accusing.length > 0) return 'named';
  const tells = findings.some(
    ({ check, piece, subject }) =>
      check === 'point-unruled' && planted.at.includes(`${piece}.${subject}`),
  );
  return tells || grave.some(({ check }) => TELLING.test(check)) ? 'located' : 'missed';
}
