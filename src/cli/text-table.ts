/** Plain tables and paragraphs for a terminal of 80 columns. */

/** Columns that a report may take. */
export const WIDTH = 80;

/** Columns set apart by two blanks, numbers to the right; `left` columns from the first are text. */
export function textTable(rows: readonly (readonly string[])[], left = 1): string {
  const widths = (rows[0] ?? []).map((_, column) =>
    Math.max(...rows.map((row) => row[column]?.length ?? 0)),
  );
  return rows
    .map((row) =>
      row
        .map((cell, column) => {
          const width = widths[column] ?? 0;
          return column < left ? cell.padEnd(width) : cell.padStart(width);
        })
        .join('  ')
        .trimEnd(),
    )
    .map((line) => `${line}\n`)
    .join('');
}

/** A paragraph broken at blanks; lines after the first are indented by `indent`. */
export function wrappedParagraph(text: string, indent = 0): string {
  const lines: string[] = [];
  let line = /^ */.exec(text)?.[0] ?? '';
  for (const word of text.trimStart().split(' ')) {
    const longer = line.trim() === '' ? line + word : `${line} ${word}`;
    const room = WIDTH - (lines.length === 0 ? 0 : indent);
    if (longer.length > room && line.trim() !== '') {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  lines.push(line);
  return lines.map((part, i) => `${i === 0 ? '' : ' '.repeat(indent)}${part}\n`).join('');
}

/** A table of many columns, broken into blocks that fit; the first column is text in each. */
export function columnsTable(rows: readonly (readonly string[])[], indent = 0): string {
  const widthOf = (column: number): number =>
    Math.max(...rows.map((row) => row[column]?.length ?? 0));
  const blocks: number[][] = [];
  let room = 0;
  for (let column = 1; column < (rows[0]?.length ?? 0); column++) {
    const width = 2 + widthOf(column);
    const block = blocks.at(-1);
    if (block !== undefined && width <= room) {
      block.push(column);
      room -= width;
    } else {
      blocks.push([column]);
      room = WIDTH - indent - widthOf(0) - width;
    }
  }
  return blocks
    .map((block) => textTable(rows.map((row) => [0, ...block].map((column) => row[column] ?? ''))))
    .join('')
    .replace(/^(?=.)/gm, ' '.repeat(indent));
}

/**
 * A table of text whose columns share the width that the first leaves, each cell broken at blanks: for
 * cells that are sentences or sums.
 */
export function wrappedTable(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, column) =>
    Math.max(...rows.map((row) => row[column]?.length ?? 0)),
  );
  const [first = 0, ...others] = widths;
  const room = WIDTH - first - 2 * others.length;
  const fair = Math.floor(room / Math.max(1, others.length));
  const narrow = others.filter((width) => width <= fair);
  const left = room - narrow.reduce((sum, width) => sum + width, 0);
  const wide = Math.floor(left / Math.max(1, others.length - narrow.length));
  const columns = [
    first,
    ...others.map((width) => (width <= fair ? width : Math.min(width, wide))),
  ];
  return rows
    .map((row) => {
      const cells = columns.map((width, column) => brokenAt(row[column] ?? '', width));
      const lines = Math.max(...cells.map((cell) => cell.length));
      return Array.from({ length: lines }, (_, line) =>
        columns
          .map((width, column) => (cells[column]?.[line] ?? '').padEnd(width))
          .join('  ')
          .trimEnd(),
      )
        .map((line) => `${line}\n`)
        .join('');
    })
    .join('');
}

function brokenAt(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= width)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
