/** What the page asks of its engine, and what it is told; all of it can be copied to a worker and back. */
import type { Severity } from '../check/finding';
import type { Place } from '../errors';
import type { LengthDisplay } from '../units';
import type { Verdict } from '../verdict/verdict';
import type { BoardLine } from '../study/explain/board';
import type { AskedCloth, AskedCrowd, AskedExercise, Lesson, PageState } from './state';

/** What of a state changes what is graded. */
export type Pattern = Pick<PageState, 'chart' | 'styleFile' | 'project' | 'asked' | 'own'>;

/** A place on a piece: a point, or an edge by the name of its seam; the piece alone without either. */
export interface Spot {
  readonly piece: string;
  readonly point?: string;
  readonly seam?: string;
}

/** What may be asked. */
export type Wish =
  | { readonly kind: 'skirt'; readonly pattern: Pattern }
  | { readonly kind: 'spot'; readonly pattern: Pattern; readonly spot: Spot }
  | { readonly kind: 'styles' }
  | { readonly kind: 'coverage'; readonly pattern: Pattern; readonly asked: AskedCrowd }
  | { readonly kind: 'cloth'; readonly pattern: Pattern; readonly asked: AskedCloth }
  | { readonly kind: 'exercise'; readonly asked: AskedExercise }
  | { readonly kind: 'mark'; readonly lesson: Lesson }
  | { readonly kind: 'derive'; readonly pattern: Pattern; readonly point: string }
  | { readonly kind: 'take'; readonly pattern: Pattern; readonly wanted: Wanted };

/** The wish of a kind. */
export type WishOf<Kind extends Wish['kind']> = Wish & { readonly kind: Kind };

/** What may be taken away. */
export interface Wanted {
  /** Names of exports. */
  readonly exports: readonly string[];
  /** Papers; none are printed without any. */
  readonly papers: readonly string[];
  readonly booklet: string;
}

/** A file to be saved. */
export interface TakenFile {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** What each wish is told. */
export interface Told {
  readonly skirt: SkirtView;
  readonly spot: SpotView;
  readonly styles: readonly StyleView[];
  readonly coverage: CoverageView;
  readonly cloth: ClothView;
  readonly exercise: Lesson;
  readonly mark: MarkView;
  readonly derive: readonly BoardLine[];
  readonly take: readonly TakenFile[];
}

/** What was refused, in words and where. */
export interface Refused {
  readonly message: string;
  readonly place: Place;
  /** Every problem of the same input, the first among them, each with its own words and its own place. */
  readonly each: readonly { readonly message: string; readonly place: Place }[];
}

/** An answer: what was asked for, or why not. */
export type Answer<Kind extends Wish['kind'] = Wish['kind']> =
  | { readonly told: Told[Kind] }
  | { readonly refused: Refused };

/** An edge by the places of its points in `points`: two of a line, four of a curve, three of a dart. */
export interface EdgeView {
  readonly kind: 'line' | 'fold' | 'cubic' | 'dart';
  readonly seam: string;
  readonly at: readonly number[];
}

/** One piece in every size. */
export interface PieceView {
  readonly name: string;
  readonly points: readonly { readonly name: string; readonly handle: boolean }[];
  readonly edges: readonly EdgeView[];
  /** Lines inside, each by the places of its points. */
  readonly marks: readonly { readonly name: string; readonly at: readonly number[] }[];
  readonly sizes: readonly SizedView[];
}

/** One piece in one size, in mm: x and y of each point in turn. */
export interface SizedView {
  readonly coordinates: readonly number[];
  /** Path data of the cut line, of the notches and of the grain. */
  readonly cut?: string;
  /** Left, top, right and bottom of the cut line. */
  readonly box?: readonly [left: number, top: number, right: number, bottom: number];
  readonly notches?: string;
  readonly grain?: string;
  readonly drillHoles: readonly (readonly [x: number, y: number])[];
}

/** Something to mend or to decide, where it is, and the setting that would settle it. */
export interface DecisionView {
  readonly severity: 'fail' | 'warning';
  readonly text: string;
  readonly spot?: Spot;
  readonly setting?: { readonly parameter: string; readonly value: string };
  readonly findings: readonly string[];
}

/** A parameter of the style in the base size. */
export interface ParameterView {
  readonly name: string;
  readonly group: string;
  readonly quantity: 'length' | 'number';
  readonly whole: boolean;
  /** mm, or a plain number. */
  readonly least: number;
  readonly most: number;
  readonly value: number | undefined;
  /** As it was set, or its default. */
  readonly text: string;
  readonly origin: 'setting' | 'chart' | 'default';
  readonly meaning: string;
  readonly source: string;
  readonly range: string;
}

/** A measure or a seam in every size; null where it has no limit. */
export interface MeasureView {
  readonly name: string;
  readonly values: readonly (number | null)[];
}

/** A line of a picture: a length in mm at each label, null where there is none. */
export interface SeriesView {
  readonly name: string;
  readonly values: readonly (number | null)[];
  /** Where its numbers come from, with their certainty. */
  readonly source?: string;
}

/** Lines over sizes, or over steps from size to size. */
export interface PictureView {
  readonly title: string;
  readonly labels: readonly string[];
  readonly series: readonly SeriesView[];
  /** In which it is shown; that of the skirt without it. */
  readonly unit?: 'cm' | 'yd';
}

/** A finding about cells of the chart. */
export interface DoubtView {
  readonly severity: Severity;
  readonly row: number;
  readonly columns: readonly number[];
  readonly text: string;
}

/** A graded skirt as the page shows it. */
export interface SkirtView {
  readonly title: string;
  /** The style that it was drafted in; undefined of a pattern that is given. */
  readonly style: string | undefined;
  readonly base: string;
  readonly sizes: readonly string[];
  readonly display: LengthDisplay;
  readonly stackPoint: string;
  /** Points that every piece with a waist has, on which sizes may lie. */
  readonly stackPoints: readonly string[];
  readonly pieces: readonly PieceView[];
  readonly verdict: Pick<Verdict, 'kind' | 'counts'> & {
    readonly line: string;
    readonly decisions: readonly DecisionView[];
  };
  readonly parameters: readonly ParameterView[];
  readonly measures: readonly MeasureView[];
  /** Gaps of the seams. */
  readonly seams: readonly MeasureView[];
  readonly doubts: readonly DoubtView[];
  readonly pictures: readonly PictureView[];
  /** Names of what can be written besides. */
  readonly exports: readonly string[];
}

/** What is told of a place on a piece. */
export type SpotView =
  | {
      readonly kind: 'point';
      readonly rule: { readonly x: string; readonly y: string };
      /** Moves from the base and from the neighbor on its side, mm, one a size. */
      readonly moves: readonly (readonly [dx: number, dy: number])[];
      readonly steps: readonly (readonly [dx: number, dy: number])[];
    }
  | { readonly kind: 'seam'; readonly lengths: readonly number[] }
  | { readonly kind: 'piece' };

/** A style with its line drawing as SVG. */
export interface StyleView {
  readonly name: string;
  readonly description: string;
  readonly drawing: string;
}

/** A size and the share of a population that it serves, all in words. */
export type SizeShare = readonly [size: string, waist: string, hip: string, share: string];

/** What a share is of, and the share, or what is won or lost, in words. */
export type ShareOf = readonly [of: string, share: string];

/** What may be chosen of a lay, and in which words. */
export type Choices = readonly (readonly [name: string, words: string])[];

/** The cloth to buy, and one lay of it. */
export interface ClothView {
  /** One a cloth: what to buy of each width by size. */
  readonly pictures: readonly PictureView[];
  /** Every width and way of folding, cells in words. */
  readonly tables: readonly {
    readonly heading: string;
    readonly sizes: readonly string[];
    readonly rows: readonly (readonly string[])[];
    readonly notes: readonly string[];
  }[];
  readonly choices: Readonly<Record<keyof AskedCloth, Choices>>;
  readonly chosen: Required<AskedCloth>;
  /** What the lay takes, or why there is none. */
  readonly told: string;
  /** The lay as SVG. */
  readonly drawing?: string;
}

/** What a hint tells of a sheet; the last level tells all. */
export interface MarkView {
  /** How many cells are wrong, or that all are right. */
  readonly line: string;
  readonly isRight: boolean;
  /** From the second level on: rows by their names. */
  readonly wrong: readonly string[];
  readonly blank: readonly string[];
  /** From the third on. */
  readonly asks: readonly string[];
  /** On the last alone. */
  readonly answer?: AnswerView;
}

/** The whole marking of a sheet. */
export interface AnswerView {
  readonly display: LengthDisplay;
  readonly sizes: readonly string[];
  /** What was done, and how it is mended. */
  readonly slips: readonly (readonly [words: string, advice: string])[];
  /** Rows by their names: in each size what is right, and what was given where that is wrong. */
  readonly rows: readonly (readonly string[])[];
  /** Points with their derivations. */
  readonly points: readonly string[];
  /** Of each size the pieces that are right, and beside each the one that the sheet makes. */
  readonly outlines: readonly {
    readonly size: string;
    readonly pieces: readonly PieceView[];
  }[];
}

/** Whom the sizes fit. */
export interface CoverageView {
  /** Names and titles of what may be chosen. */
  readonly populations: readonly (readonly [id: string, title: string])[];
  readonly served: string;
  readonly rules: string;
  readonly notes: readonly string[];
  readonly sizes: readonly SizeShare[];
  readonly leftOut: readonly ShareOf[];
  readonly changes: readonly ShareOf[];
  readonly published: readonly ShareOf[];
  /** The cloud of bodies as SVG. */
  readonly drawing: string;
  readonly suggested?: {
    readonly served: string;
    readonly sizes: readonly SizeShare[];
    /** As a chart that is graded as it stands. */
    readonly chart: string;
  };
}
