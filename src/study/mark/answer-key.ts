/** The right answers of a rule sheet: every move of every point, and what it is made of. */
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
  /** How far each measurement is from the base's, mm, one a size. */
  readonly increments: ReadonlyMap<string, readonly number[]>;
}

/** The key of a graded chart, exact, with the zero on the range's own stack point. */
export function answerKey({ range, chart }: Grade & Drafted): AnswerKey {
  const { base, moves } = range.exactRules;
  const drawn = range.sizes.find(({ label }) => label === range.base)?.pieces;
  const points = range.plans.flatMap((plan, p) =>
    plan.pointNames.map((point, k): [string, PointKey] => {
      const along = (axis: Axis): readonly number[] =>
        moves.map((pieces) => pieces[p]?.[k]?.[axis] ?? NaN);
      const rule = range.draft.ruleFormulas[p]?.[k];
      const slopes = (axis: Axis): ReadonlyMap<string, number> =>
        rule?.[axis].coefficients ?? new Map<string, number>();
      return [
        `${plan.name}.${point}`,
        {
          piece: plan.name,
          point,
          moves: { x: along('x'), y: along('y') },
          slopes: { x: slopes('x'), y: slopes('y') },
          role: roleOf(plan, point),
          side: sideOf(plan, point),
          place: drawn?.[p]?.points[k] ?? { x: NaN, y: NaN },
        },
      ];
    }),
  );
  const increments = chart.rows.map(({ name, values }): [string, readonly number[]] => {
    const from = values[base] ?? NaN;
    return [name, values.map((value) => (value ?? NaN) - from)];
  });
  return {
    sizes: chart.sizes,
    base,
    points: new Map(points),
    increments: new Map(increments),
  };
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
