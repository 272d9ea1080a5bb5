/** The right answers of a rule sheet: every move of every point, and what it is made of. */
import type { Point } from '../../geometry/point';
import type { GradedPattern } from '../../grade/graded-pattern';
import type { Drafted, Grade } from '../../jobs/grade-result';
import type { PiecePlan } from '../../pattern/piece';
import type { Axis } from '../../rule-sheet/rule-sheet';

/** Something of each axis. */
export type Axes<T> = Readonly<Record<Axis, T>>;

/** One point of the key. Moves are cumulative, mm, one a size; x away from the center, y down. */
export interface PointKey {
  readonly piece: string;
  readonly point: string;
  readonly moves: Axes<readonly number[]>;
  /** mm that the point moves for each mm of a measurement; exact for linear rules. */
  readonly slopes: Axes<ReadonlyMap<string, number>>;
  /** `tip` and `leg` belong to a dart. */
  readonly role: 'tip' | 'leg' | 'other';
  /** Which leg of a dart it is; undefined for what is no leg. */
  readonly side: 'inner' | 'outer' | undefined;
  /** Where the point lies in the base size, mm from the zero. */
  readonly place: Axes<number>;
}

/** The right answers of all points in all sizes, seen from the base size. */
export interface AnswerKey {
  /** Labels from the smallest size. */
  readonly sizes: readonly string[];
  /** Place of the base size in `sizes`. */
  readonly base: number;
  /** By `piece.point`, in the order of the plans. */
  readonly points: ReadonlyMap<string, PointKey>;
  /**
   * How far each measurement is from the base's, mm, one a size; where no measurement is known each point
   * along each axis.
   */
  readonly increments: ReadonlyMap<string, readonly number[]>;
}

/** The key of a graded chart, exact, with the zero on the range's own stack point. */
export function answerKey({ range, chart }: Grade & Drafted): AnswerKey {
  const { base } = range.exactRules;
  const increments = chart.rows.map(({ name, values }): [string, readonly number[]] => {
    const from = values[base] ?? NaN;
    return [name, values.map((value) => (value ?? NaN) - from)];
  });
  return {
    sizes: chart.sizes,
    base,
    points: pointKeys(
      range,
      (_, move) => move,
      (p, k, axis) => range.draft.ruleFormulas[p]?.[k]?.[axis].coefficients ?? new Map(),
    ),
    increments: new Map(increments),
  };
}

/** The key of a given pattern, as its rules have it; `along` turns a move on the paper into their axes. */
export function givenKey(
  range: GradedPattern,
  along: (piece: string, move: Point) => Point,
): AnswerKey {
  const points = pointKeys(range, along, () => new Map());
  return {
    sizes: range.sizes.map(({ label }) => label),
    base: range.exactRules.base,
    points,
    // What the body grows by is not known, but where the steps of a point change is.
    increments: new Map(
      [...points].flatMap(([name, { moves }]) => [
        [`${name} x`, moves.x],
        [`${name} y`, moves.y],
      ]),
    ),
  };
}

function pointKeys(
  { plans, sizes, base, exactRules }: GradedPattern,
  along: (piece: string, move: Point) => Point,
  slopesAt: (p: number, k: number, axis: Axis) => ReadonlyMap<string, number>,
): ReadonlyMap<string, PointKey> {
  const drawn = sizes.find(({ label }) => label === base)?.pieces;
  const nowhere = { x: NaN, y: NaN };
  return new Map(
    plans.flatMap((plan, p) =>
      plan.pointNames.map((point, k): [string, PointKey] => {
        const moves = exactRules.moves.map((pieces) => along(plan.name, pieces[p]?.[k] ?? nowhere));
        return [
          `${plan.name}.${point}`,
          {
            piece: plan.name,
            point,
            moves: { x: moves.map(({ x }) => x), y: moves.map(({ y }) => y) },
            slopes: { x: slopesAt(p, k, 'x'), y: slopesAt(p, k, 'y') },
            role: roleOf(plan, point),
            side: sideOf(plan, point),
            place: along(plan.name, drawn?.[p]?.points[k] ?? nowhere),
          },
        ];
      }),
    ),
  );
}

function roleOf({ darts }: PiecePlan, point: string): PointKey['role'] {
  if (darts.some(({ tip }) => tip === point)) return 'tip';
  return darts.some(({ from, to }) => from === point || to === point) ? 'leg' : 'other';
}

function sideOf({ darts }: PiecePlan, point: string): PointKey['side'] {
  if (darts.some(({ from }) => from === point)) return 'inner';
  return darts.some(({ to }) => to === point) ? 'outer' : undefined;
}

/**
 * The corners of a piece's outline: the points that a grader gives rules to. Handles follow their
 * ends, and points of inner marks are not asked for, though they are marked where they are given.
 */
export function askedPoints({ outline }: PiecePlan): readonly string[] {
  const names = outline.flatMap((edge) =>
    edge.kind === 'dart' ? [edge.from, edge.tip, edge.to] : [edge.from, edge.to],
  );
  return [...new Set(names)];
}
