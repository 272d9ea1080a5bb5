/** What grading gives, whichever road the pattern came by: the one value that everything after reads. */
import type { Imprint } from '../table/imprint';
import { matchSize } from '../table/name-match';
import { wantedSizes } from '../table/near-names';
import type { SizeChart } from '../chart/size-chart';
import type { Finding } from '../check/finding';
import { InputError } from '../errors';
import type { GradedPattern, SizedPattern } from '../grade/graded-pattern';
import type { RuleTexts } from '../rule-sheet/point-rules';
import type { Pattern } from '../pattern/pattern';
import type { LinesShown } from '../render/lines-shown';
import type { WalkedSeam } from '../seams/walked-seam';
import type { LengthDisplay, LengthUnit } from '../units';
import type { RangeRequest } from './requests';

/** A graded pattern with its seams walked and its checks made. */
export interface GradeResult {
  readonly title: string;
  /** What the files state for a cover. */
  readonly imprint: Imprint;
  readonly pattern: Pattern;
  /** The body measurements that the sizes are for, where they are known. */
  readonly chart: SizeChart | undefined;
  readonly range: GradedPattern;
  readonly ruleTexts: RuleTexts;
  /** Every seam, walked in every size. */
  readonly seams: readonly WalkedSeam[];
  /** The sizes asked for. */
  readonly shown: readonly SizedPattern[];
  readonly display: LengthDisplay;
  /** The lines asked for. */
  readonly lines: LinesShown | undefined;
  /** Gravest first. */
  readonly findings: readonly Finding[];
}

/** How lengths are shown: as asked for, else in the pattern's own unit. */
export function displayOf(
  { unit, fractions = false }: RangeRequest,
  own: LengthUnit,
): LengthDisplay {
  return { unit: unit ?? own, fractions };
}

/** A size label as the range has it. Throws InputError `size-unknown`. */
export function knownSize(
  labels: readonly string[],
  label: string,
  field: string,
  file: string,
): string {
  const known = matchSize(label, labels);
  if (known !== undefined) return known;
  throw new InputError('size-unknown', {
    what: 'the range has no such size',
    ...wantedSizes(label, labels),
    got: label,
    place: { field, file },
  });
}

/** The sizes asked for, in the order of the range. Throws InputError `size-unknown`. */
export function shownSizes<Size extends SizedPattern>(
  sizes: readonly Size[],
  asked: readonly string[] | undefined,
  file: string,
): readonly Size[] {
  const labels = sizes.map(({ label }) => label);
  const known = asked?.map((label) => knownSize(labels, label, 'sizes', file));
  return sizes.filter(({ label }) => known === undefined || known.includes(label));
}
