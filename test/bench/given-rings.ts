/** Two lobed rings sewn to each other, of as many points as are wanted: a pattern sheet and its rules. */

/** mm; the points of a ring of 5,000 lie a millimeter apart. */
const RADIUS = 1000;

/**
 * Sheets of two pieces with `points` points between them, four of ten corners and the others on curves,
 * and a rule for every point. A quarter of each ring is sewn. The rules count from the middle size.
 */
export function givenRings(
  points: number,
  sizes: number,
  allowance: string | undefined,
): { readonly pattern: string; readonly rules: string } {
  const each = Math.floor(points / 2);
  const labels = Array.from({ length: sizes }, (_, size) => `${size + 1}`);
  const rows = ['one', 'two'].flatMap((piece) =>
    Array.from({ length: each }, (_, i) => {
      const angle = (2 * Math.PI * i) / each;
      const radius = RADIUS * (1 + 0.1 * Math.sin(3 * angle));
      const [x, y] = [Math.cos(angle), Math.sin(angle)];
      const kind = i % 10 === 0 || i % 10 > 6 ? 'corner' : 'curve';
      const line = i < each / 4 ? 'sewn,join' : 'rest,';
      return {
        at: `${piece},p${i},${(radius * x).toFixed(4)},${(radius * y).toFixed(4)},${kind},${line}`,
        rule: `${piece},p${i},${(5 * x).toFixed(4)},${(5 * y).toFixed(4)}`,
      };
    }),
  );
  const base = labels[Math.floor(sizes / 2)] ?? '';
  return {
    pattern: [
      '# unit: mm',
      `# base: ${base}`,
      ...(allowance === undefined ? [] : [`# allowance: ${allowance}`]),
      'piece,point,x,y,kind,edge,seam',
      ...rows.map(({ at }) => at),
      '',
    ].join('\n'),
    rules: [
      '# unit: mm',
      `# sizes: ${labels.join(', ')}`,
      'piece,point,step_dx,step_dy',
      ...rows.map(({ rule }) => rule),
      '',
    ].join('\n'),
  };
}
