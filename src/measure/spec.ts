/** A spec: points of measure with their values in every size and what may be off. */

/** What kind of point it is, which decides its usual tolerance. */
export type MeasureGroup = 'girth' | 'hem' | 'length' | 'band' | 'opening';

/** How a value is stated: a girth all round, half of it laid flat, or a length. */
export type Taken = 'girth' | 'flat' | 'length';

/** mm below and above a value that are still passed, both zero or more. */
export interface Tolerance {
  readonly minus: number;
  readonly plus: number;
}

/** One point of measure in all sizes. */
export interface SpecRow {
  /** Its short name in the spec. */
  readonly code: string;
  readonly measure: string;
  /** How to measure, in words. */
  readonly how: string;
  readonly taken: Taken;
  /** mm, one a size, stated as `taken` says. */
  readonly values: readonly number[];
  readonly tolerance: Tolerance;
  /** Where the tolerance comes from. */
  readonly source: string;
}

/** What a made garment is measured by. */
export interface Spec {
  /** Labels from the smallest to the largest. */
  readonly sizes: readonly string[];
  /** Place of the base among the sizes. */
  readonly base: number;
  readonly rows: readonly SpecRow[];
}
