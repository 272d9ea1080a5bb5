/** A chart of as many sizes as are wanted. */

/** `count` sizes that grow by 5 mm, called 1, 2 and so on. */
export function evenChart(count: number): string {
  const sizes = Array.from({ length: count }, (_, i) => i);
  const row = (name: string, first: number, step: number): string =>
    [name, ...sizes.map((i) => (first + step * i).toFixed(2))].join(',');
  return [
    '# unit: cm',
    ['measurement', ...sizes.map((i) => i + 1)].join(','),
    row('waist_girth', 64, 0.5),
    row('hip_girth', 90, 0.5),
    row('waist_to_hip', 19, 0.02),
    row('waist_to_knee', 58, 0.02),
    row('height', 165, 0),
    row('skirt_length', 62, 0.02),
    '',
  ].join('\n');
}
