/** A piece graded again with some rules changed: for asking what a change would do. */
import { moveOnPaper } from '../given/grade-given';
import type { Mover } from '../given/move-piece';
import { moverOf, movedPiece } from '../given/move-piece';
import type { Pattern } from '../pattern/pattern';
import type { GivenRules, RuledPoint } from '../rule-sheet/point-rules';
import type { Point } from '../geometry/point';
import type { Piece } from '../pattern/piece';

/** Asks what changed rules would do, without grading all the rest anew; moves in mm. */
export interface Regrader {
  /** The rule's own move in a size, along and square to the reference line. */
  readonly moveOf: (point: RuledPoint, size: number) => Point;
  /** The piece of a size with another move of one of its ruled points. */
  readonly withMove: (point: RuledPoint, size: number, move: Point) => Piece;
  /** The piece of a size with these rules and no others, by point, a move a size. */
  readonly withRules: (
    piece: number,
    size: number,
    rules: ReadonlyMap<number, readonly Point[]>,
  ) => Piece;
}

/** Asks what pieces would be with other moves; a piece's mover is made when it is first asked. */
export function regrader({ pieces }: Pattern, { ruled }: GivenRules): Regrader {
  const movers = new Map<string, Mover>();
  const moverFor = (p: number, points: readonly number[]): Mover => {
    const piece = pieces[p];
    if (piece === undefined) throw new RangeError(`there is no piece ${p}`);
    const key = `${p} ${points.length === ruled[p]?.size ? '' : points.join()}`;
    const mover = movers.get(key) ?? moverOf(piece, new Set(points));
    movers.set(key, mover);
    return mover;
  };
  const moveOf = ({ piece, point }: RuledPoint, size: number): Point =>
    ruled[piece]?.get(point)?.moves[size] ?? { x: 0, y: 0 };
  return {
    moveOf,
    withMove: (changed, size, move) => {
      const points = [...(ruled[changed.piece]?.keys() ?? [])];
      const mover = moverFor(changed.piece, points);
      const moves = points.map((point) => {
        const own = { piece: changed.piece, point };
        const kept = point === changed.point ? move : moveOf(own, size);
        return [point, moveOnPaper(kept, mover.piece)] as const;
      });
      return movedPiece(mover, moves);
    },
    withRules: (p, size, rules) => {
      const mover = moverFor(p, [...rules.keys()]);
      const moves = [...rules].map(
        ([point, own]) => [point, moveOnPaper(own[size] ?? { x: 0, y: 0 }, mover.piece)] as const,
      );
      return movedPiece(mover, moves);
    },
  };
}
