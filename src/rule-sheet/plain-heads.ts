/** The labels of sizes as they are, without what people put around them. */
import type { SaidLine } from '../table/said-line';
import { saidLine } from '../table/said-line';
import { splitLabel } from '../table/label';
import type { TypedCell } from '../table/typed-table';
import type { LengthUnit } from '../units';
import type { RuleRow } from './rule-row';

/**
 * The rows with their sizes without a star, brackets, or the unit of the sheet behind them: `12*`, `(12)`
 * and `12 in` are 12. `marked` are the heads with a star or brackets, which may mean something.
 */
export function withPlainSizes(
  rows: readonly RuleRow[],
  unit: LengthUnit | undefined,
): { readonly rows: readonly RuleRow[]; readonly marked: readonly SaidLine[] } {
  const marked = new Map<string, SaidLine>();
  const plain = (size: TypedCell): TypedCell => {
    const text = withoutMark(size.text);
    const { file = '', row, column } = size.place;
    if (text !== size.text && row !== undefined && column !== undefined)
      marked.set(size.text, saidLine(size.text, { file, row, column }));
    const label = splitLabel(text);
    return { ...size, text: label.unit !== undefined && label.unit === unit ? label.text : text };
  };
  return {
    rows: rows.map((row) => ({
      ...row,
      entries: row.entries.map((entry) => ({ ...entry, size: plain(entry.size) })),
    })),
    marked: [...marked.values()],
  };
}

function withoutMark(label: string): string {
  return label
    .replace(/^(?:\((?<round>[^()]+)\)|\[(?<square>[^[\]]+)\])$/u, '$<round>$<square>')
    .replace(/ ?\*+$/u, '')
    .trim();
}
