/** A formula of a drafted block that goes the wrong way or too far, and all that is drawn from it. */
import type { Redraft } from '../../grade/redraft';
import type { Axis } from '../../rule-sheet/rule-sheet';
import { SAME_PLACE } from '../../tolerance';
import { sameNamed } from '../evidence/namesakes';
import type { RuledPoint } from '../../rule-sheet/point-rules';
import { along } from './sheet-moves';
import type { SheetState } from './sheet-state';
import { nameOf } from './sheet-state';
import type { SuspectedSlip } from './suspected-slip';

/** What the formula should give, how that is told, and how unlikely it is in nats. */
interface Wrong extends Pick<SuspectedSlip, 'kind' | 'cost'> {
  readonly right: (move: number, size: number) => number;
  readonly words: string;
}

/** Every point of a piece, since each may have a formula of its own. */
export function formulaPoints({ sheet }: SheetState, piece: number): readonly RuledPoint[] {
  return [...(sheet[piece]?.keys() ?? [])].map((point) => ({ piece, point }));
}

/**
 * Each coordinate of a point by itself, since each has a formula of its own: with its sign turned, or as
 * the point of its name moves on another piece.
 */
export function formulaSlips(
  state: SheetState,
  at: RuledPoint,
  redraft: Redraft,
): readonly SuspectedSlip[] {
  const { sheet, pattern } = state;
  const name = nameOf(pattern, at);
  return (['x', 'y'] as const).flatMap((axis) =>
    [...turnedSign(state, at, axis, name), ...asNamesakes(state, at, axis, name)].flatMap(
      ({ kind, right, words, cost }): SuspectedSlip[] => {
        const repairs = redraft(at, axis, right).flatMap(({ at: other, by }) => {
          const moves = sheet[other.piece]?.get(other.point);
          if (moves === undefined) return [];
          const mended = moves.map(({ x, y }, size) => ({
            x: x + (by[size]?.x ?? 0),
            y: y + (by[size]?.y ?? 0),
          }));
          return [{ at: other, moves: mended }];
        });
        return repairs.length === 0
          ? []
          : [{ kind, at, id: words, words: () => words, repairs, cost }];
      },
    ),
  );
}

function turnedSign(
  { sheet }: SheetState,
  at: RuledPoint,
  axis: Axis,
  name: string,
): readonly Wrong[] {
  const moves = along(sheet[at.piece]?.get(at.point) ?? [], axis);
  if (!moves.some((move) => Math.abs(move) > SAME_PLACE)) return [];
  const words = `the sign of d${axis} at ${name} is probably wrong in its formula`;
  return [{ kind: 'sign', right: (move) => -move, words, cost: 0 }];
}

/** Whatever is wrong with a formula, most points of one name move alike on front and back. */
function asNamesakes(
  { sheet, pattern, namesakes }: SheetState,
  at: RuledPoint,
  axis: Axis,
  name: string,
): readonly Wrong[] {
  const now = along(sheet[at.piece]?.get(at.point) ?? [], axis);
  return sameNamed(pattern, namesakes, at).flatMap(({ at: other, isMirrored }): Wrong | [] => {
    const way = axis === 'x' && isMirrored ? -1 : 1;
    const theirs = along(sheet[other.piece]?.get(other.point) ?? [], axis);
    if (theirs.every((move, size) => Math.abs(way * move - (now[size] ?? NaN)) <= SAME_PLACE))
      return [];
    return {
      kind: 'formula',
      right: (_, size) => way * (theirs[size] ?? NaN),
      words:
        `d${axis} at ${name} is probably wrong in its formula, ` +
        `beside that of ${nameOf(pattern, other)}`,
      cost: 2,
    };
  });
}
