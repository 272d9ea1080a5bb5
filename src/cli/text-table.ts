/** Plain tables and paragraphs for a terminal of 80 columns. */

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
export function paragraph(text: string, indent = 0): string {
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
