/** The moves of a whole rule sheet, and the same sheet with some of its rules repaired. */
import type { Point } from '../../geometry/point';
import type { GivenRules } from '../../rule-sheet/point-rules';
import type { RuledPoint } from '../../rule-sheet/point-rules';

/** Cumulative moves in mm by piece and point, along and square to the reference line, one a size. */
export type SheetMoves = readonly ReadonlyMap<number, readonly Point[]>[];

/** The moves that a point has once a slip is undone. */
export interface Repair {
  readonly at: RuledPoint;
  readonly moves: readonly Point[];
}

/** The moves of the rules as given. */
export function movesOf({ ruled }: Pick<GivenRules, 'ruled'>): SheetMoves {
  return ruled.map((own) => new Map([...own].map(([i, { moves }]) => [i, moves])));
}

/** The sheet with its rules repaired. */
export function repaired(sheet: SheetMoves, repairs: readonly Repair[]): SheetMoves {
  return sheet.map((own, piece) => {
    const changed = repairs.filter(({ at }) => at.piece === piece);
    if (changed.length === 0) return own;
    return new Map([...own, ...changed.map(({ at, moves }) => [at.point, moves] as const)]);
  });
}

/** mm along one axis, one a size. */
export function along(moves: readonly Point[], axis: 'x' | 'y'): readonly number[] {
  return moves.map((move) => move[axis]);
}

/** The moves with `change` made along each of the axes. */
export function changedAlong(
  moves: readonly Point[],
  axes: readonly ('x' | 'y')[],
  change: (values: readonly number[]) => readonly number[],
): readonly Point[] {
  const [x, y] = (['x', 'y'] as const).map((axis) => {
    const values = along(moves, axis);
    return axes.includes(axis) ? change(values) : values;
  });
  return moves.map((_, size) => ({ x: x?.[size] ?? NaN, y: y?.[size] ?? NaN }));
}

/** `change` made to the move of one size alone. */
export function inSize(
  size: number,
  change: (value: number) => number,
): (values: readonly number[]) => readonly number[] {
  return (values) => values.map((value, i) => (i === size ? change(value) : value));
}
