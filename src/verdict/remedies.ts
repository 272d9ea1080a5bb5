/** What to do about what each check says: a line a check, in words for somebody who can act. */
import { bundledTable } from '../table/bundled-table';
import csv from './remedies.csv';

/** What is done about the findings of one check. */
export interface Remedy {
  /**
   * Sentences without capital and full stop, the most special first; the first all of whose braces the
   * findings can fill is taken. `{pieces}`, `{subjects}`, `{measured}`, `{expected}`, `{most}` (what lies
   * between measured and expected at most) and the names of `facts`.
   */
  readonly act: readonly string[];
  /** The same for what is only noted; `act` if absent. */
  readonly note?: string;
  /** The cause by which checks go together, a name of `CAUSES`; the check alone if absent. */
  readonly cause?: Cause;
  /** What has a decision of its own: each piece, each subject of a piece, or each row of the chart. */
  readonly each?: 'piece' | 'subject' | 'row';
}

/** What mends several checks at once, said where more than one of them speaks. */
export const CAUSES = {
  truing:
    'true the edges by hand before you cut: fold the darts, join the sides and draw waist and hem ' +
    'through without corners',
  rounding: 'take a smaller step of rounding, or let the sewer ease in what it leaves',
  vent: 'place the vent anew: shorten it, or lengthen the skirt',
  program: 'do not cut; this is a fault of the program, so report it with the chart and the style',
  sample: 'measure the sample once more, then mend the base or its making',
} as const;

/** A name of `CAUSES`. */
export type Cause = keyof typeof CAUSES;

/** A row of the table; the rows of one check are acts of one remedy. */
interface Row {
  readonly check: string;
  readonly each: '' | NonNullable<Remedy['each']>;
  readonly cause: '' | Cause;
  readonly act: string;
  readonly note: string;
}

/** By the name of the check. */
export const REMEDIES: Readonly<Record<string, Remedy>> = remediesOf(bundledTable<Row>(csv));

function remediesOf(rows: readonly Row[]): Record<string, Remedy> {
  const remedies: Record<string, Remedy> = {};
  for (const { check, each, cause, act, note } of rows)
    remedies[check] = {
      ...remedies[check],
      act: [...(remedies[check]?.act ?? []), act],
      ...(note !== '' && { note }),
      ...(cause !== '' && { cause }),
      ...(each !== '' && { each }),
    };
  return remedies;
}
