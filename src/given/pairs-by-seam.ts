/** Which edges are sewn together by a seam name that two of them share. */
import { labelKey } from '../table/label';
import type { Pattern } from '../pattern/pattern';
import type { SeamPair } from '../pattern/seam-pair';
import { seamPair } from '../pattern/seam-pair';
import type { RawPoint } from './raw-point';

interface NamedPoints {
  readonly name: string;
  readonly points: readonly RawPoint[];
}

const PASSED: ReadonlySet<RawPoint['kind']> = new Set(['corner', 'curve', 'notch']);

interface NamedEdges {
  /** As it was typed first. */
  readonly name: string;
  readonly found: { piece: string; edge: string }[];
}

/**
 * Pairs the two edges that have one seam name, as a reader takes it: `side_seam` and `Side seam` are
 * one. Other numbers of edges pair nothing.
 */
export function pairsBySeam(pieces: readonly NamedPoints[]): Pick<Pattern, 'seams' | 'unpaired'> {
  const edges = new Map<string, NamedEdges>();
  for (const { name: piece, points } of pieces) {
    for (const { kind, seam, edge } of points) {
      if (seam === '' || !PASSED.has(kind)) continue;
      // A name of signs alone has no letters to go by.
      const key = labelKey(seam) || seam;
      const named = edges.get(key) ?? { name: seam, found: [] };
      const { found } = named;
      if (!found.some((other) => other.piece === piece && other.edge === edge)) {
        found.push({ piece, edge });
      }
      edges.set(key, named);
    }
  }
  const seams: SeamPair[] = [];
  const unpaired: { name: string; edges: number }[] = [];
  for (const { name, found } of edges.values()) {
    const [a, b, ...more] = found;
    if (a !== undefined && b !== undefined && more.length === 0) {
      seams.push(seamPair(name, [{ edges: [a] }, { edges: [b] }]));
    } else unpaired.push({ name, edges: more.length + (b === undefined ? 1 : 2) });
  }
  return { seams, unpaired };
}
