/** Lists of many bodies, and the call that streams them. */
import { contents } from './workplace';

/** Bodies apart from one another by a sequence that fills a range evenly, some rows of no use among them. */
export function list(count: number): string {
  const rows = Array.from({ length: count }, (_, i) => {
    const at = (from: number, to: number, by: number): string =>
      (from + (((i + 1) * by) % 1) * (to - from)).toFixed(1);
    const body = [
      at(60, 110, 0.618034),
      at(90, 125, 0.754878),
      at(18, 23, 0.56984),
      at(50, 75, 0.8191725),
    ];
    if (i % 50 === 7) body[0] = i % 100 === 7 ? 'x' : '7';
    return `"Quill, ${i}",${body.join(',')}\n`;
  });
  return `# unit: cm\nname,waist,hip,waist_to_hip,skirt_length\n${rows.join('')}`;
}

/** Drafts the bodies of a file into the folder `out`. */
export const call = (file: string, out: string, ...more: readonly string[]): readonly string[] => [
  ...['draft', file, '--stream', '--points', '--style', 'pencil', ...more, '--out', out],
];

/** The files below a folder by their paths in it, each with its bytes. */
export function filesBelow(folder: string): ReadonlyMap<string, string> {
  return new Map(
    [...contents(folder)].map(([path, text]) => [path.slice(folder.length + 1), text]),
  );
}
