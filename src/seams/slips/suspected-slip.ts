/** A slip that a rule sheet may have: what was done wrong, and the rules without it. */
import type { Axis } from '../../rule-sheet/rule-sheet';
import type { LengthDisplay } from '../../units';
import { SAME_PLACE } from '../../tolerance';
import type { RuledPoint } from '../../rule-sheet/point-rules';
import type { StepShapes } from '../evidence/regularity';
import type { Point } from '../../geometry/point';
import type { SheetMoves, Repair } from './sheet-moves';

/** What kind of slip it is; two slips of one kind at one point differ only in where it happened. */
export type SlipKind =
  | 'sign'
  | 'axes exchanged'
  | 'rule missing'
  | 'rules exchanged'
  | 'factor'
  | 'formula'
  | 'one size off'
  | 'sizes exchanged';

/** One way of going wrong at one place, and how it is undone. */
export interface SuspectedSlip {
  readonly kind: SlipKind;
  /** The point that it is told of. */
  readonly at: RuledPoint;
  /** The same for slips at this point that are told alike, whatever number would have been right. */
  readonly id: string;
  /** In words, as a whole clause that names the point. */
  readonly words: (display: LengthDisplay) => string;
  readonly repairs: readonly Repair[];
  /** How unlikely it is before any evidence, in nats: rare kinds, and many places it could be at. */
  readonly cost: number;
}

/** A point whose rule may have a slip. */
export interface Subject {
  readonly at: RuledPoint;
  /** Such as `back waist_side`. */
  readonly name: string;
  /** Its own moves; undefined where it has no rule. */
  readonly moves: readonly Point[] | undefined;
  readonly sheet: SheetMoves;
  /** Labels of the sizes. */
  readonly sizes: readonly string[];
  readonly base: number;
  readonly shapes: StepShapes;
  /** The points that its rule may have been mixed up with. */
  readonly others: readonly { readonly at: RuledPoint; readonly name: string }[];
  /** The moves that points of its name on other pieces would give it. */
  readonly namesakes: readonly (readonly Point[])[];
  /** How it moves without a rule of its own, one a size; only where it has none. */
  readonly following: readonly Point[];
  /** How many corners of its piece have no rule. */
  readonly bareCorners: number;
  /** Moves of its axis that would close the seams in a size; undefined where none does. */
  readonly closing: (axis: Axis, size: number) => number | undefined;
}

/** All ways of going wrong in one respect, at one point. */
export type SlipFamily = (subject: Subject) => readonly SuspectedSlip[];

/** Every set of axes that a slip may be made along: those along which the point moves at all. */
export function movedAxes(moves: readonly Point[]): readonly (readonly Axis[])[] {
  const single = (['x', 'y'] as const).filter((axis) =>
    moves.some((move) => Math.abs(move[axis]) > SAME_PLACE),
  );
  return [...single.map((axis) => [axis]), ...(single.length === 2 ? [single] : [])];
}

/** `dx`, `dy`, or `dx and dy`. */
export function axisWords(axes: readonly Axis[]): string {
  return axes.map((axis) => `d${axis}`).join(' and ');
}

/** Places of all sizes but the base. */
export function gradedSizes({ sizes, base }: Pick<Subject, 'sizes' | 'base'>): readonly number[] {
  return sizes.flatMap((_, size) => (size === base ? [] : [size]));
}
