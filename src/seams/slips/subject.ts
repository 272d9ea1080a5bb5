/** The points whose rules may have a slip, with all that the families of slips ask about them. */
import type { Point } from '../../geometry/point';
import type { Pattern } from '../../pattern/pattern';
import type { Axis } from '../../rule-sheet/rule-sheet';
import { namesakeMoves } from '../evidence/namesakes';
import type { RuledPoint } from '../../rule-sheet/point-rules';
import type { SheetState } from './sheet-state';
import { movesNow, nameOf } from './sheet-state';
import type { Subject } from './suspected-slip';

/** Points of a piece that a person rules; a piece with more was ruled by a program, which makes no slips. */
const MOST_TYPED = 40;

/** What closes the seam in question by one axis of a point in a size; undefined where it cannot. */
export type Closing = (at: RuledPoint, axis: Axis, size: number) => number | undefined;

/** Whether no person ruled a piece point by point. */
export function isRuledByProgram(
  { pattern, sheet }: Pick<SheetState, 'pattern' | 'sheet'>,
  piece: number,
): boolean {
  const { plan } = pattern.pieces[piece]?.base ?? {};
  const ruled = [...(sheet[piece]?.keys() ?? [])].filter(
    (point) => plan?.handles.has(plan.pointNames[point] ?? '') !== true,
  );
  return ruled.length > MOST_TYPED;
}

/**
 * The ruled points of a piece, handles left out, and those without a rule that might want one: its
 * corners, and points whose namesake or mate has one. None of a piece that a program ruled.
 */
export function subjectPoints(
  { pattern, sheet, namesakes }: SheetState,
  piece: number,
): readonly RuledPoint[] {
  const { handles, pointNames } = pattern.pieces[piece]?.base.plan ?? {
    handles: new Set<string>(),
    pointNames: [],
  };
  const own = sheet[piece] ?? new Map<number, readonly Point[]>();
  const ruled = [...own.keys()].filter((point) => !handles.has(pointNames[point] ?? ''));
  if (ruled.length === 0 || ruled.length > MOST_TYPED) return [];
  const like = pointNames.flatMap((name, point) =>
    !own.has(point) &&
    !handles.has(name) &&
    (namesakes[piece]?.[point] ?? []).some(({ at }) => sheet[at.piece]?.has(at.point) === true)
      ? [point]
      : [],
  );
  const missing = new Set([...unruledCorners(pattern, own, piece), ...like]);
  return [...ruled, ...missing].map((point) => ({ piece, point }));
}

/** Where two edges meet that are not one smooth curve, and no rule and no notch stands. */
function unruledCorners(
  { pieces }: Pattern,
  own: ReadonlyMap<number, unknown>,
  piece: number,
): readonly number[] {
  const given = pieces[piece];
  if (given === undefined) return [];
  const { outline, index } = given.base.plan;
  const smooth = new Set(given.splines.flatMap(({ points }) => points.slice(1, -1)));
  return outline.flatMap(({ from }) => {
    const point = index.get(from) ?? -1;
    return own.has(point) || smooth.has(point) ? [] : [point];
  });
}

/** Everything that the families ask about a point. */
export function subjectAt(state: SheetState, at: RuledPoint, closing: Closing): Subject {
  const { pattern, labels, base, sheet, shapes, namesakes } = state;
  const own = namesakes[at.piece]?.[at.point] ?? [];
  const others = [
    ...[...(sheet[at.piece]?.keys() ?? [])]
      .filter((point) => point !== at.point)
      .map((point) => ({ piece: at.piece, point })),
    ...own.flatMap((one) => (sheet[one.at.piece]?.has(one.at.point) === true ? [one.at] : [])),
  ];
  return {
    at,
    name: nameOf(pattern, at),
    moves: sheet[at.piece]?.get(at.point),
    sheet,
    sizes: labels,
    base,
    shapes,
    others: others.map((other) => ({ at: other, name: nameOf(pattern, other) })),
    namesakes: distinct(namesakeMoves(own, sheet)),
    following: movesNow(state, at),
    bareCorners: unruledCorners(pattern, sheet[at.piece] ?? new Map(), at.piece).length,
    closing: (axis, size) => closing(at, axis, size),
  };
}

function distinct(rules: readonly (readonly Point[])[]): readonly (readonly Point[])[] {
  const keys = new Map(
    rules.map((rule) => [rule.map(({ x, y }) => `${x.toFixed(2)} ${y.toFixed(2)}`).join(), rule]),
  );
  return [...keys.values()];
}
