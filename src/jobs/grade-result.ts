/** What grading gives, whichever road the pattern came by: the one value that everything after reads. */
import type { Imprint } from '../table/imprint';
import type { SizeChart } from '../chart/size-chart';
import type { Finding } from '../check/finding';
import type { DraftedPattern, GradedPattern, SizedPattern } from '../grade/graded-pattern';
import type { GivenRules, RuleTexts } from '../rule-sheet/point-rules';
import type { Pattern } from '../pattern/pattern';
import type { LinesShown } from '../render/lines-shown';
import type { WalkedSeam } from '../seams/walked-seam';
import type { LengthDisplay } from '../units';

/** How a pattern came about, in words for whoever reads of it. */
export interface Made {
  /** What it is made of: `style pencil`, or `2 pieces, 12 points with rules`. */
  readonly of: string;
  /** The same with all that was set, at the head of a sentence. */
  readonly inFull: string;
  /** What to keep in mind. */
  readonly caution: string;
}

/** A graded pattern with its seams walked, before anything is checked. */
export interface Grade {
  readonly title: string;
  readonly made: Made;
  /** What the files state for a cover. */
  readonly imprint: Imprint;
  readonly pattern: Pattern;
  /** The body measurements that the sizes are for, where they are known. */
  readonly chart: SizeChart | undefined;
  readonly range: GradedPattern;
  /** The rule of each point that has one of its own, as typed or as derived. */
  readonly rules: GivenRules;
  readonly ruleTexts: RuleTexts;
  /** Every seam, walked in every size. */
  readonly seams: readonly WalkedSeam[];
  /** The sizes asked for. */
  readonly shown: readonly SizedPattern[];
  readonly display: LengthDisplay;
  /** The lines asked for. */
  readonly lines: LinesShown | undefined;
}

/** What is known of a grade whose sizes were drafted from a chart. */
export interface Drafted {
  /** With the blend as one more size, where one was asked for. */
  readonly chart: SizeChart;
  readonly range: DraftedPattern;
}

/** A grade and what its checks found. */
export interface GradeResult extends Grade {
  /** Gravest first. */
  readonly findings: readonly Finding[];
}
