/** Which edges are sewn together by an equal seam name on two of them. */
import type { Pattern } from '../pattern/pattern';
import type { SeamPair } from '../pattern/seam-pair';
import { seamPair } from '../pattern/seam-pair';
import type { RawPoint } from './raw-point';

interface NamedPoints {
  readonly name: string;
  readonly points: readonly RawPoint[];
}

const PASSED: ReadonlySet<RawPoint['kind']> = new Set(['corner', 'curve', 'notch']);

/** Pairs the two edges that have one seam name; other numbers of edges pair nothing. */
export function pairsBySeam(pieces: readonly NamedPoints[]): Pick<Pattern, 'seams' | 'unpaired'> {
  const edges = new Map<string, { piece: string; edge: string }[]>();
  for (const { name: piece, points } of pieces) {
    for (const { kind, seam, edge } of points) {
      if (seam === '' || !PASSED.has(kind)) continue;
      const found = edges.get(seam) ?? [];
      if (!found.some((other) => other.piece === piece && other.edge === edge)) {
        found.push({ piece, edge });
      }
      edges.set(seam, found);
    }
  }
  const seams: SeamPair[] = [];
  const unpaired: { name: string; edges: number }[] = [];
  for (const [name, [a, b, ...more]] of edges) {
    if (a !== undefined && b !== undefined && more.length === 0) {
      const sides = [{ edges: [a] }, { edges: [b] }] as const;
      seams.push(seamPair(name, sides));
    } else unpaired.push({ name, edges: more.length + (b === undefined ? 1 : 2) });
  }
  return { seams, unpaired };
}
