/** Labels of measurements: their name, and the unit that often stands behind it. */
import type { LengthUnit } from '../units';
import { tidyText } from './tidy-text';
import { unitNamed } from './unit-name';

/** A label without its trailing unit, and that unit if there was one. */
export interface LabelParts {
  readonly text: string;
  readonly unit?: LengthUnit;
}

/** `waist (cm)`, `Waist [in inches]`. */
const BRACKETED = /^(?<text>.+?)[\s,;:/_-]*[([{]\s*(?:in\s+)?(?<unit>[^()[\]{}]+?)\s*[)\]}]$/iu;
/** `waist, cm`, `waist_cm`, `Waist in inches`; with capitals spelled out, as the flag for them is slow. */
const APPENDED =
  /^(?<text>.+?)[\s,;:/_-]+(?:[Ii][Nn]\s+)?(?<unit>\p{L}+\.?|[CMcm]\. ?[Mm]\.?|["\u2033])$/u;

/** Characters. Anything longer is prose and states no unit. */
const LONGEST_LABEL = 100;

/** Parts a label and the unit behind it, in brackets or after a blank, comma, slash or the like. */
export function splitLabel(label: string): LabelParts {
  const tidy = tidyText(label);
  if (tidy.length > LONGEST_LABEL) return { text: tidy };
  for (const form of [BRACKETED, APPENDED]) {
    const parts = form.exec(tidy)?.groups;
    const unit = unitNamed(parts?.unit ?? '');
    if (parts?.text !== undefined && unit !== undefined) return { text: parts.text, unit };
  }
  return { text: tidy };
}

/** What two labels must share to be the same to a reader: their letters and digits alone. */
export function labelKey(text: string): string {
  return words(text).join('');
}

/** The label as a name in snake_case; empty if it has no letters or digits. */
export function snakeCase(text: string): string {
  return words(text).join('_');
}

/** True for the words that people write above a column, or before a row, of size names. */
export function namesSizes(label: string): boolean {
  return /^(?:us|uk|eu)?sizes?(?:us|uk|eu|names?|labels?)?$/u.test(
    labelKey(splitLabel(label).text),
  );
}

/** True for the words that stand in the corner of a chart with one measurement a row. */
export function isCornerLabel(label: string): boolean {
  return (
    namesSizes(label) ||
    /^(?:body)?(?:measurements?|parts?)$/u.test(labelKey(splitLabel(label).text)) ||
    unitNamed(label) !== undefined
  );
}

function words(text: string): string[] {
  return (
    text
      .normalize('NFKC')
      .toLowerCase()
      .match(/[\p{L}\p{N}]+/gu) ?? []
  );
}
