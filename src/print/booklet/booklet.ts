/** The booklet of a pattern: what a sewer reads before and while she cuts and sews. */
import type { DrawnGarment } from '../../render/line-drawing';
import type { SewingStep } from '../../sewing/step';
import type { SizeTable } from '../size-table';
import type { MeasuredBody } from './body-picture';
import type { PicturedGarment } from './step-picture';

/** How much of it is printed. */
export const BOOKLETS = ['full', 'short', 'none'] as const;
/** One of them: `short` leaves out how to sew. */
export type BookletChoice = (typeof BOOKLETS)[number];

/** A piece as it stands in the list of what to cut. */
export interface ListedPiece {
  readonly number: number;
  readonly name: string;
  /** `Cut 1 on fold`, a line for each cloth. */
  readonly cuttings: readonly string[];
}

/** All that it tells; what is not known of a pattern is left out. */
export interface Booklet {
  readonly title: string;
  /** Lines below the title, such as the sizes. */
  readonly facts: readonly string[];
  readonly garment: DrawnGarment | undefined;
  readonly body: MeasuredBody | undefined;
  /** How to choose between sizes, in sentences. */
  readonly choosing: readonly string[];
  /** Bodies and garments by size. */
  readonly measures: readonly SizeTable[];
  /** Cloth, zip and the like by size. */
  readonly needs: readonly SizeTable[];
  /** What else is needed, a line each. */
  readonly notions: readonly string[];
  readonly pieces: readonly ListedPiece[];
  /** What to know before cutting, in sentences. */
  readonly cutting: readonly string[];
  readonly steps: readonly SewingStep[];
  readonly pictured: PicturedGarment;
  /** The first toile, and what to alter, in sentences. */
  readonly toile: readonly string[];
  readonly cautions: readonly string[];
}
