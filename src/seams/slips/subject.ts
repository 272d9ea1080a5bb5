/** The points whose rules may have a slip, with all that the families of slips ask about them. */
import type { Point } from '../../geometry/point';
import { dot, quarterTurn, subtract } from '../../geometry/point';
import type { Pattern } from '../../pattern/pattern';
import type { Piece } from '../../pattern/piece';
import type { Axis } from '../../rule-sheet/rule-sheet';
import type { Namesakes } from '../evidence/neighbors';
import { namesakeMoves } from '../evidence/neighbors';
import type { StepShapes } from '../evidence/regularity';
import type { RuledPoint } from '../regrade';
import type { SheetMoves } from './sheet-moves';
import type { Subject } from './slip';

/** What is known of a sheet and its garment at the moment. */
export interface SheetState {
  readonly pattern: Pattern;
  readonly labels: readonly string[];
  readonly base: number;
  readonly sheet: SheetMoves;
  readonly shapes: StepShapes;
  readonly namesakes: Namesakes;
  /** The pieces of each size as the sheet makes them. */
  readonly sizes: readonly (readonly Piece[])[];
}

/** What closes the seam in question by one axis of a point in a size; undefined where it cannot. */
export type Closing = (at: RuledPoint, axis: Axis, size: number) => number | undefined;

/**
 * The ruled points of a piece, handles left out, and those without a rule that might want one: its
 * corners, and points whose namesake or mate has one.
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
  if (ruled.length === 0) return [];
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

/** How a point moves as the sheet is, with or without a rule, along and square to the reference line. */
export function movesNow({ pattern, base, sizes }: SheetState, at: RuledPoint): readonly Point[] {
  const along = pattern.pieces[at.piece]?.ruleX ?? { x: 1, y: 0 };
  const place = (pieces: readonly Piece[] | undefined): Point =>
    pieces?.[at.piece]?.points[at.point] ?? { x: 0, y: 0 };
  const from = place(sizes[base]);
  return sizes.map((pieces) => {
    const move = subtract(place(pieces), from);
    return { x: dot(move, along), y: dot(move, quarterTurn(along)) };
  });
}

/** Such as `back waist_side`. */
export function nameOf({ pieces }: Pattern, { piece, point }: RuledPoint): string {
  const plan = pieces[piece]?.base.plan;
  return `${plan?.name ?? ''} ${plan?.pointNames[point] ?? ''}`;
}

function distinct(rules: readonly (readonly Point[])[]): readonly (readonly Point[])[] {
  const keys = new Map(
    rules.map((rule) => [rule.map(({ x, y }) => `${x.toFixed(2)} ${y.toFixed(2)}`).join(), rule]),
  );
  return [...keys.values()];
}
