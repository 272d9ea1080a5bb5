/** What may be asked for, typed once for every road in. */
import type { AllowancePreset } from '../draft/allowance-presets';
import type { StyleChoice } from '../draft/style-file';
import type { LinesShown } from '../render/lines-shown';
import type { LengthUnit } from '../units';

/** A text and the name of its file for messages. */
export interface NamedText {
  readonly text: string;
  readonly file: string;
}

/** What may be asked of any pattern that is graded. */
export interface RangeRequest {
  /** Label of the base size, from which all rules start. */
  readonly base?: string;
  /** Labels of the sizes to show; all if absent. The rules always come from the whole range. */
  readonly sizes?: readonly string[];
  /** Rounding step such as `1/16in` or `0.5mm`, with its unit. */
  readonly round?: string;
  /** Point on which the sizes are stacked. */
  readonly stack?: string;
  /** Unit of tables, drawings and messages; the pattern's if absent. */
  readonly unit?: LengthUnit;
  /** Shows inches as fractions. */
  readonly fractions?: boolean;
  /** The lines that the drawings show; what suits each drawing if absent. */
  readonly lines?: LinesShown;
}

/** A chart to draft every size from. Sizes are stacked on the center of the waist if not asked. */
export interface GradeRequest extends RangeRequest {
  /** Text of the chart, CSV. */
  readonly chart: string;
  /** Its name for messages. */
  readonly file?: string;
  /** May be left out where the chart has one size, which then is drafted and not graded. */
  readonly base?: string;
  /**
   * A body between sizes instead of the sizes: parts such as `waist 12`, `hip 16` and, if its length is
   * another's, `length 14`. It is graded from the base and shown alone.
   */
  readonly blend?: readonly string[];
  /** Name of a style of the engine, or what `readStyle` gave; `shared-pencil` if absent. */
  readonly style?: string | StyleChoice;
  /** Parameters set on top of the style: name to value or formula. */
  readonly set?: Readonly<Record<string, string>>;
  /** Ready-made widths of the seam allowances; a style and `set` go before them. `home` if absent. */
  readonly allowances?: AllowancePreset;
  /** Published tables to compare the chart with; a choice that fits the chart if absent. */
  readonly against?: readonly string[];
}

/**
 * A pattern that is there already, and its rules. If the base is not asked for the pattern or the
 * rule sheet says it; if no stack point is, the sizes lie as the rules say.
 */
export interface PatternRequest extends RangeRequest {
  /** The pieces in the base size: CSV, or DXF after ASTM D6673 if the file is called so. */
  readonly pattern: NamedText;
  /** The rule sheet: CSV, or with DXF the rule table. */
  readonly rules: NamedText;
  /** Named rules that several rule sheets use, CSV. */
  readonly namedRules?: NamedText;
  /** A chart for rules that are formulas of its increments. */
  readonly chart?: NamedText;
  /** What is sewn to what; equal seam names pair edges besides. */
  readonly seams?: NamedText;
}
