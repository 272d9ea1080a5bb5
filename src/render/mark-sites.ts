/** Which mark of one size is the same thing as which mark of another, and how they lie to each other. */
import type { Point } from '../geometry/point';
import { add, distance, dot, quarterTurn, scale, unit } from '../geometry/point';
import { SAME_PLACE } from '../tolerance';
import type { NestedPiece } from './nested-piece';
import type { PieceMark } from './piece-marks';
import { marksOf } from './piece-marks';

/** One mark in the sizes that have it. */
export interface MarkSite {
  readonly name: string;
  readonly marks: readonly SizeMark[];
  /** Unit vector out of the piece, the same for all sizes. */
  readonly outward: Point;
  /**
   * `shared` where all sizes have it in one place; `nested` where each stands on its own line, one inside
   * the other, far enough apart for its size to be written there; else `along` the edge.
   */
  readonly lie: 'shared' | 'nested' | 'along';
}

/** The mark of the size at place `size` in the nest. */
export interface SizeMark extends PieceMark {
  readonly size: number;
}

/** Every mark of a nest once; `apart` is the mm that a size needs to be written on its own line. */
export function markSites(nested: NestedPiece, apart: number): readonly MarkSite[] {
  const found = new Map<string, SizeMark[]>();
  nested.sizes.forEach((sized, size) => {
    const seen = new Map<string, number>();
    for (const mark of marksOf(sized, nested.lines)) {
      const count = seen.get(mark.name) ?? 0;
      seen.set(mark.name, count + 1);
      const key = `${mark.name} ${count}`;
      found.set(key, [...(found.get(key) ?? []), { ...mark, size }]);
    }
  });
  return [...found.values()].map((marks) => {
    const inward = unit(marks.reduce((sum, own) => add(sum, own.inward), { x: 0, y: 0 }));
    const outward = scale(inward, -1);
    const isShared = marks.length === nested.sizes.length && marks.every((own) => isAt(own, marks));
    return {
      name: marks[0]?.name ?? '',
      marks,
      outward,
      lie: isShared ? 'shared' : isNested(marks, outward, apart) ? 'nested' : 'along',
    };
  });
}

function isAt({ at }: SizeMark, [first]: readonly SizeMark[]): boolean {
  return distance(at, first?.at ?? at) <= SAME_PLACE;
}

/** A hole has no line of its own on which it could stand. */
function isNested(marks: readonly SizeMark[], outward: Point, apart: number): boolean {
  if (marks.some(({ part }) => part === 'drill-hole')) return false;
  const along = quarterTurn(outward);
  const depths = marks.map(({ at }) => dot(at, outward)).toSorted((a, b) => a - b);
  const gaps = depths.slice(1).map((depth, i) => depth - (depths[i] ?? depth));
  const places = marks.map(({ at }) => dot(at, along));
  const wide = Math.max(...places) - Math.min(...places);
  return Math.min(Infinity, ...gaps) >= apart && wide <= Math.max(...depths) - Math.min(...depths);
}
