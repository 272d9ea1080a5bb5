/** Things by their places, so that what is near a place is found without looking at all of them. */
import type { Point } from '../geometry/point';
import { distance } from '../geometry/point';

/** Finds what lies within a reach of a place, in the order in which it was given. */
export type PlaceIndex<T> = (at: Point) => readonly T[];

/** `reach` in mm; things without a place are never found. */
export function placeIndex<T>(
  things: readonly T[],
  placeOf: (thing: T) => Point | undefined,
  reach: number,
): PlaceIndex<T> {
  const cells = new Map<
    string,
    { readonly thing: T; readonly at: Point; readonly order: number }[]
  >();
  const cell = (value: number): number => Math.floor(value / reach);
  for (const [order, thing] of things.entries()) {
    const at = placeOf(thing);
    if (at === undefined) continue;
    const key = `${cell(at.x)} ${cell(at.y)}`;
    const found = cells.get(key);
    if (found === undefined) cells.set(key, [{ thing, at, order }]);
    else found.push({ thing, at, order });
  }
  return (at) => {
    const [column, row] = [cell(at.x), cell(at.y)];
    return NEIGHBORS.flatMap(([x, y]) => cells.get(`${column + x} ${row + y}`) ?? [])
      .filter((own) => distance(own.at, at) <= reach)
      .toSorted((a, b) => a.order - b.order)
      .map(({ thing }) => thing);
  };
}

const NEIGHBORS = [-1, 0, 1].flatMap((x) => [-1, 0, 1].map((y) => [x, y] as const));
