/** Rows of a sheet taken for one another: one copied into another, or two exchanged. */
import { SAME_PLACE } from '../../tolerance';
import type { AnswerKey, PointKey } from './answer-key';
import type { Axis } from '../../rule-sheet/rule-sheet';
import type { SeriesName } from './series';
import type { Slip } from './slip';

/** Two points of a piece whose rows along an axis both say something, and not the same. */
interface Rows {
  readonly own: PointKey;
  readonly other: PointKey;
  readonly axis: Axis;
}

/**
 * For every two rows of a sheet that can be told apart: the one copied to the other, and both
 * exchanged. `series` are the rows that the sheet has.
 */
export function rowSlips({ points }: AnswerKey, series: readonly SeriesName[]): readonly Slip[] {
  const given = new Set(series.map(({ piece, point }) => `${piece}.${point}`));
  const all = [...points].filter(([name]) => given.has(name)).map(([, point]) => point);
  const pairs = all.flatMap((own, i) =>
    all
      .slice(i + 1)
      .filter((other) => other.piece === own.piece)
      .flatMap((other) =>
        (['x', 'y'] as const).map((axis): Rows => ({ own, other, axis })).filter(canBeToldApart),
      ),
  );
  return [
    ...pairs.map(exchanged),
    ...pairs.flatMap((rows) => [
      copied(rows),
      copied({ ...rows, own: rows.other, other: rows.own }),
    ]),
  ];
}

function canBeToldApart({ own, other, axis }: Rows): boolean {
  return (
    moves(own, axis) &&
    moves(other, axis) &&
    own.moves[axis].some((mm, i) => Math.abs(mm - (other.moves[axis][i] ?? NaN)) > SAME_PLACE)
  );
}

function moves(point: PointKey, axis: Axis): boolean {
  return point.moves[axis].some((mm) => Math.abs(mm) > SAME_PLACE);
}

const nameOf = ({ piece, point }: PointKey): string => `${piece}.${point}`;

const ADVICE = 'lay a ruler under the row that is written';

function exchanged({ own, other, axis: along }: Rows): Slip {
  return {
    id: `rows ${nameOf(own)} ${other.point} ${along}`,
    kind: 'rows',
    stage: 'share',
    words: `rows exchanged: d${along} of ${nameOf(own)} has the numbers of ${nameOf(other)}, and the reverse`,
    advice: ADVICE,
    alone: true,
    distort: (_, { point, axis }) =>
      axis !== along
        ? undefined
        : point === own
          ? other.moves[axis]
          : point === other
            ? own.moves[axis]
            : undefined,
  };
}

function copied({ own: to, other: from, axis: along }: Rows): Slip {
  return {
    id: `copied ${nameOf(to)} ${from.point} ${along}`,
    kind: 'copied',
    stage: 'share',
    words: `a row copied: d${along} of ${nameOf(to)} has the numbers of ${nameOf(from)}`,
    advice: ADVICE,
    alone: true,
    distort: (_, { point, axis }) =>
      point === to && axis === along ? from.moves[axis] : undefined,
  };
}
