/** What stands within the table of a chart and is no part of it: columns that name no size, and marks behind numbers. */
import type { SaidLine } from '../table/said-line';
import { saidLine } from '../table/said-line';
import { isBesideSizes } from '../table/size-label';
import { excerpt, isBlank, tidyText } from '../table/tidy-text';
import type { ChartCell, ChartLine, ChartTable } from './layout';
import { recognizeMeasurement } from './vocabulary';

/** A chart without them. */
export interface SetAside {
  readonly table: ChartTable;
  /** What is to be told as not read: each column by its head, each mark with its number. */
  readonly told: readonly SaidLine[];
  /** Words in the columns, which may say how the cells of the chart count. */
  readonly remarks: readonly SaidLine[];
}

/** Takes out columns (with one size a row: rows) headed by `Notes`, `Grade`, `Average`, and the stars of footnotes. */
export function setAside(table: ChartTable, file: string): SetAside {
  const found = table.sizes.flatMap(({ text }, at) => (isBesideSizes(tidyText(text)) ? [at] : []));
  // Beside nothing it stands in the place of a size.
  const aside = found.length < table.sizes.length ? found : [];
  const kept = <Cell>(cells: readonly Cell[]): readonly Cell[] =>
    aside.length === 0 ? cells : cells.filter((_, at) => !aside.includes(at));
  const marks: SaidLine[] = [];
  const lines = table.lines.map((line): ChartLine => {
    const cells = kept(line.cells);
    if (recognizeMeasurement(line.label.text) === undefined) return { ...line, cells };
    return { ...line, cells: cells.map((cell) => withoutMark(cell, file, marks)) };
  });
  const inAside = table.lines.flatMap(({ cells }) => aside.flatMap((at) => cells[at] ?? []));
  const heads = aside.flatMap((at) => table.sizes[at] ?? []);
  const kind = table.layout === 'size-rows' ? 'row' : 'column';
  return {
    table: { ...table, sizes: kept(table.sizes), lines },
    told: [...heads.map((cell) => saidAt(`${kind} ${excerpt(cell.text)}`, cell, file)), ...marks],
    remarks: inAside
      .filter(({ text }) => /\p{L}/u.test(text) && !isBlank(text))
      .map((cell) => saidAt(tidyText(cell.text), cell, file)),
  };
}

/** `66*`, `26 1/2 **`: the footnote is told, if it stands in the file. */
const MARKED = /^(?<number>.*\d\S*?) ?[*\u2020\u2021]{1,3}$/u;

function withoutMark(cell: ChartCell, file: string, marks: SaidLine[]): ChartCell {
  const number = MARKED.exec(tidyText(cell.text))?.groups?.number;
  if (number === undefined) return cell;
  marks.push(saidAt(`the mark of ${excerpt(cell.text)}`, cell, file));
  return { ...cell, text: number };
}

function saidAt(text: string, { row, column }: ChartCell, file: string): SaidLine {
  return saidLine(text, { file, row, column });
}
