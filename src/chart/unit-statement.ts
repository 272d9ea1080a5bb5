/** Where a chart says in which unit its lengths are, and what they all say together. */
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import { LENGTH_UNITS, UNIT_WORDS } from '../units';
import type { Sheet, SheetRecord } from '../table/sheet';
import { excerpt, isBlank, tidyText } from '../table/tidy-text';
import { unitNamed } from '../table/unit-name';

/** A unit as it was typed, and where. */
export interface UnitStatement {
  readonly text: string;
  readonly row: number;
  readonly column?: number;
}

const STATED = /^units?\s*[:=]\s*(.*)$/iu;
const UNIT_WORD = /^units?\s*[:=]?$/iu;

/** Takes the comments and the rows that do nothing but state a unit, such as `# unit: cm`. */
export function takeUnitStatements(sheet: Sheet): {
  readonly statements: readonly UnitStatement[];
  readonly rest: Sheet;
} {
  const statements: UnitStatement[] = [];
  const take = (found: readonly UnitStatement[]) => {
    statements.push(...found);
    return found.length === 0;
  };
  const comments = sheet.comments.filter(({ row, text }) => {
    const stated = STATED.exec(text)?.[1];
    return take(stated === undefined ? [] : [{ text: stated, row }]);
  });
  const records = sheet.records.filter((record) => take(statedBy(record)));
  return { statements, rest: { comments, records } };
}

/**
 * The one unit of a chart. Throws `unit-missing` if nothing states one, `unit-unknown` if a
 * statement is not a unit of length, and `unit-contradicted` if two statements disagree.
 */
export function agreedUnit(statements: readonly UnitStatement[], file: string): LengthUnit {
  let agreed: { unit: LengthUnit; row: number } | undefined;
  for (const { text, row, column } of statements) {
    const place = column === undefined ? { file, row } : { file, row, column };
    const unit = unitNamed(text);
    if (unit === undefined) {
      throw new InputError('unit-unknown', {
        what: 'the chart states a unit that is not known',
        allowed: LENGTH_UNITS.join(', '),
        got: excerpt(text),
        place,
      });
    }
    if (agreed !== undefined && unit !== agreed.unit) {
      throw new InputError('unit-contradicted', {
        what:
          `the chart states two units, ${UNIT_WORDS[agreed.unit]} in row ${agreed.row} ` +
          `and ${UNIT_WORDS[unit]} here`,
        allowed: 'one unit for the whole chart',
        got: excerpt(text),
        place,
      });
    }
    agreed ??= { unit, row };
  }
  if (agreed !== undefined) return agreed.unit;
  throw new InputError('unit-missing', {
    what: 'the chart does not say in which unit it is',
    allowed: `a line such as \`# unit: cm\`, with one of ${LENGTH_UNITS.join(', ')}`,
    place: { file },
  });
}

/** `unit,in`, the same without a comma, or a row of nothing but units below a header. */
function statedBy({ row, cells }: SheetRecord): UnitStatement[] {
  const filled = cells.flatMap((cell, index) =>
    isBlank(cell) ? [] : [{ text: tidyText(cell), row, column: index + 1 }],
  );
  const [first, ...others] = filled;
  if (first === undefined) return [];
  const stated = STATED.exec(first.text)?.[1];
  if (stated !== undefined && stated !== '') return [{ ...first, text: stated }];
  if (UNIT_WORD.test(first.text)) {
    // A header may have a column called `unit`; that is not a statement.
    return new Set(others.map(({ text }) => text)).size > 1 ? [] : others.slice(0, 1);
  }
  return filled.every(({ text }) => unitNamed(text) !== undefined) ? filled : [];
}
