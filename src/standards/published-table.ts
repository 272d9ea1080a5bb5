/** A published table of body measurements over a range of sizes, as an immutable value. */
import type { LengthUnit } from '../units';

/**
 * `standard`: issued by a standards body; `trade-table`: used by an industry; `survey`: measured
 * bodies, which is not a size table at all.
 */
export type TableKind = 'standard' | 'trade-table' | 'survey';

/** One girth or height of a published table over its sizes. */
export interface PublishedRow {
  /** Millimeters, one a size in the order of the table's `sizes`. */
  readonly values: readonly number[];
  /** How the figures came to be known, such as `second-hand` or `from memory, unverified`. */
  readonly certainty: string;
}

/**
 * A published table as far as charts are compared with it: waist and hip, and how sure they are.
 */
export interface PublishedTable {
  /** The short name that a user types, such as `astm-d5585-95`. */
  readonly id: string;
  /** Number and edition alone, for a sentence. */
  readonly name: string;
  /** Name, edition and bodies, for people. */
  readonly title: string;
  readonly kind: TableKind;
  /** Year of the edition, or of the survey. */
  readonly year: number;
  /** The unit it is published in; the values here are millimeters all the same. */
  readonly unit: LengthUnit;
  /** Size labels in the order of the table; only sizes whose waist and hip are both known. */
  readonly sizes: readonly string[];
  readonly waist: PublishedRow;
  readonly hip: PublishedRow;
  /** Height of the waist above the hip; only a survey gives it. */
  readonly waistToHip?: PublishedRow;
  /** The comment lines of the table, without the `#`. */
  readonly notes: readonly string[];
}

/** The table and how certain its figures are, for the `source` of a finding. */
export function tableSource(table: PublishedTable): string {
  const { waist, hip, title } = table;
  const certainty =
    waist.certainty === hip.certainty
      ? waist.certainty
      : `waist: ${waist.certainty}; hip: ${hip.certainty}`;
  return `${title} (${certainty})`;
}
