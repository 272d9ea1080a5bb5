/** The lines of a chart that state its unit. */
import { statementsIn } from '../table/statement-words';
import type { SaidLine } from '../table/said-line';
import type { Sheet, SheetRecord } from '../table/sheet';
import { allStated } from '../table/said-line';
import { isBlank, tidyText } from '../table/tidy-text';
import { unitNamed } from '../table/unit-name';
import type { UnitStatement } from '../table/unit-statement';
import { recognizeMeasurement } from './vocabulary';

const UNIT_WORD = /^units?\s*[:=]?$/iu;

/**
 * Takes what states a unit: the part of a comment, such as `# unit: cm`, and the rows that do
 * nothing else.
 */
export function takeUnitLines(
  sheet: Sheet,
  file: string,
): { readonly statements: readonly UnitStatement[]; readonly rest: Sheet } {
  const { statements, rest: comments } = takeUnits(sheet.comments);
  const rows = sheet.records.map((record) => ({ record, found: statedBy(record, file) }));
  return {
    statements: [...statements, ...rows.flatMap(({ found }) => found)],
    rest: {
      comments,
      records: rows.filter(({ found }) => found.length === 0).map(({ record }) => record),
    },
  };
}

/** The units that lines of words state, and the lines without them. */
export function takeUnits(lines: readonly SaidLine[]): {
  readonly statements: readonly UnitStatement[];
  readonly rest: readonly SaidLine[];
} {
  const rest = lines.flatMap((line) => {
    const parts = line.parts.filter(({ name }) => name !== 'unit');
    if (parts.length === line.parts.length) return [line];
    const text = parts.map(({ typed }) => typed).join('; ');
    return text === '' ? [] : [{ ...line, parts, text }];
  });
  return { statements: allStated(lines, 'unit'), rest };
}

/** `unit,in`, the same without a comma, or a row of nothing but units below a header. */
function statedBy({ row, cells }: SheetRecord, file: string): UnitStatement[] {
  const filled = cells.flatMap((cell, index) =>
    isBlank(cell) ? [] : [{ text: tidyText(cell), place: { file, row, column: index + 1 } }],
  );
  const [first, ...others] = filled;
  if (first === undefined) return [];
  const [stated, ...more] = statementsIn(first.text);
  const isAlone = others.length === 0 || first.text.includes(':') || first.text.includes('=');
  const isUnit = stated?.name === 'unit' && stated.text !== '' && more.length === 0;
  if (isUnit && isAlone && recognizeMeasurement(first.text) === undefined) {
    return [{ ...first, text: stated.text }];
  }
  if (UNIT_WORD.test(first.text)) {
    // A header may have a column called `unit`; that is not a statement.
    return new Set(others.map(({ text }) => text)).size > 1 ? [] : others.slice(0, 1);
  }
  return filled.every(({ text }) => unitNamed(text) !== undefined) ? filled : [];
}
