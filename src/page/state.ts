/** What a page holds: a chart, what is asked of it, and how it is looked at. It is saved with the page. */
import type { StyleChoice } from '../draft/style-file';
import type { ExerciseUnit } from '../study/exercise/exercise-chart';
import type { Difficulty } from '../study/exercise/lessons';
import type { HintLevel } from '../study/mark/hint-levels';
import type { CoverRequest } from '../coverage/cover-chart';
import type { GradeRequest, NamedText, PatternRequest } from '../jobs/requests';

/** What is asked of a chart, a style of the engine by its name. */
export type Asked = Omit<GradeRequest, 'chart' | 'file' | 'style'> & {
  readonly style?: string;
};

/** Two sizes laid over each other, by their labels. */
export interface Pair {
  readonly smaller: string;
  readonly larger: string;
}

/** How the nest is looked at; nothing of it changes the pattern. */
export interface Looks {
  /** Labels of sizes that are not shown. */
  readonly hidden: readonly string[];
  /** Half pieces folded out along their fold. */
  readonly unfolded: boolean;
  /** The lines to sew along and to cut along. */
  readonly net: boolean;
  readonly cut: boolean;
  /** Place between the sizes from 0, the smallest, on; every size is shown without it. */
  readonly between?: number | undefined;
  readonly pair?: Pair | undefined;
  /** Pixels of one millimeter as measured on the screen with a bank card. */
  readonly perMillimeter?: number | undefined;
}

/** The crowd that sizes are held against, and by which tolerances; each has its usual value without it. */
export type AskedCrowd = Pick<
  CoverRequest,
  'population' | 'bodies' | 'waistTolerance' | 'hipTolerance' | 'give' | 'suggest'
>;

/** The lay that is looked at; the usual one where nothing is said. */
export interface AskedCloth {
  readonly cloth?: string;
  /** As the shop states it, `140 cm`. */
  readonly width?: string;
  readonly fold?: string;
  readonly nap?: string;
  readonly size?: string;
}

/** Which exercise it is; the same words give the same. */
export interface AskedExercise {
  readonly seed: number;
  readonly difficulty: Difficulty;
  readonly unit: ExerciseUnit;
}

/** An exercise with the sheet as far as it is filled in, and how much was told of it. */
export interface Lesson extends AskedExercise {
  /** What is asked for, in words. */
  readonly task: string;
  readonly chart: string;
  readonly style: string;
  /** Settings of the style. */
  readonly set?: Readonly<Record<string, string>>;
  /** All corners without it. */
  readonly points?: readonly string[];
  readonly base: string;
  readonly sheet: string;
  /** The last hint: its level, and the sheet that it is about. */
  readonly hint?: { readonly level: HintLevel; readonly sheet: string };
  /** The highest level that was told. */
  readonly reached: number;
}

/** A pattern that somebody has already, with its rules; it is graded in the place of the chart. */
export type OwnPattern = Pick<PatternRequest, 'pattern' | 'rules' | 'seams'>;

/** All that a page holds. */
export interface PageState {
  readonly chart: NamedText;
  /** A style file; it goes before the style that is asked for by name. */
  readonly styleFile?: NamedText;
  /** What a project file sets on top of the style. */
  readonly project?: Pick<StyleChoice, 'settings' | 'lines' | 'title'>;
  readonly asked: Asked;
  readonly own?: OwnPattern;
  readonly crowd?: AskedCrowd;
  readonly cloth?: AskedCloth;
  readonly lesson?: Lesson;
  readonly looks: Looks;
}

/** Every size, half pieces as halves, both lines. */
export const FIRST_LOOKS: Looks = { hidden: [], unfolded: false, net: true, cut: true };
