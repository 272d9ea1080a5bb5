/** Result tables read back by splitting at commas: none of their names and numbers has one. */

/** The rows of a table as objects of its columns. */
export function rowsOf(text: string): readonly Readonly<Record<string, string>>[] {
  const [header = [], ...rows] = text
    .trimEnd()
    .split('\n')
    .map((line) => line.split(','));
  return rows.map((row) => Object.fromEntries(header.map((name, i) => [name, row[i] ?? ''])));
}

/** `graded-points.csv` as a look-up by size, piece and point, in the unit of its columns. */
export function pointsOf(
  text: string,
  unit: string,
): (size: string, piece: string, point: string) => { readonly x: number; readonly y: number } {
  const points = new Map(
    rowsOf(text).map(({ size, piece, point, ...at }) => [
      `${size}/${piece}/${point}`,
      { x: Number(at[`x_${unit}`] ?? NaN), y: Number(at[`y_${unit}`] ?? NaN) },
    ]),
  );
  return (size, piece, point) => points.get(`${size}/${piece}/${point}`) ?? { x: NaN, y: NaN };
}
