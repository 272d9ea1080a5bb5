/** The grainline where a pattern gives it: drawn once for all sizes in which it runs the same way. */
import { angleBetween, subtract } from '../geometry/point';
import type { Line } from '../geometry/segment';
import type { Piece } from '../pattern/piece';
import { pointOf } from '../pattern/piece';
import { PARALLEL_GRAIN } from '../tolerance';

/** The grainlines of a piece to draw: one that stands for all sizes, or one in each size. */
export interface GivenGrain {
  readonly shared: Line | undefined;
  /** In the order of the sizes; undefined where the shared one stands for it, or none is given. */
  readonly own: readonly (Line | undefined)[];
}

/** The grainlines of the sizes of a piece; the shared one is that of the `reference` size. */
export function givenGrain(sizes: readonly Piece[], reference: Piece): GivenGrain {
  const shared = grainOf(reference);
  const own = sizes.map(grainOf);
  const isShared = own.every((line) => !line || !shared || isParallel(line, shared));
  return isShared ? { shared, own: own.map(() => undefined) } : { shared: undefined, own };
}

function grainOf(piece: Piece): Line | undefined {
  const mark = piece.plan.marks.find(({ name }) => name === 'grainline');
  const [from, to] = mark?.through.map((name) => pointOf(piece, name)) ?? [];
  return from && to && { kind: 'line', from, to };
}

function isParallel(a: Line, b: Line): boolean {
  const turn = angleBetween(subtract(a.to, a.from), subtract(b.to, b.from));
  return Math.min(turn, 180 - turn) <= PARALLEL_GRAIN;
}
