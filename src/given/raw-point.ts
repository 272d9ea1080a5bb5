/** The points of a piece as a file lists them, before they are joined into an outline. */
import type { Place } from '../errors';
import { InputError } from '../errors';
import type { Point } from '../geometry/point';
import type { Cutting } from '../pattern/piece';
import type { TypedCell } from '../table/typed-table';

/**
 * `corner`, `curve` and `notch` points are passed by the outline in the order of the file; a pair
 * of `handle` points between two of them bends the edge, and a `dart` point is the tip of a dart.
 * The others lie beside the outline: `grain` and `reference` lines of two points, `inside` lines,
 * `drill` holes.
 */
export const POINT_KINDS = [
  'corner',
  'curve',
  'notch',
  'handle',
  'dart',
  'grain',
  'reference',
  'inside',
  'drill',
] as const;

/** What a point is there for: see `POINT_KINDS`. */
export type PointKind = (typeof POINT_KINDS)[number];

/** A point as its row has it, not yet held against the others of its piece. */
export interface RawPoint {
  readonly name: string;
  readonly kind: PointKind;
  /** mm, y down. */
  readonly at: Point;
  /** The edge that leaves the point, or the inside line that it is on. */
  readonly edge: string;
  /** The seam in which that edge is sewn; empty if it is not. */
  readonly seam: string;
  /** Whether that edge lies on the fold of the cloth. */
  readonly fold: boolean;
  /** A named rule; its text is empty for none. */
  readonly rule: TypedCell;
  readonly place: Place;
}

/** A piece as a file lists it. */
export interface RawPiece {
  readonly name: string;
  readonly points: readonly RawPoint[];
  readonly cuttings: readonly Cutting[];
  /** The allowance in mm outside each edge, by its name; empty for a piece without any. */
  readonly allowances: ReadonlyMap<string, number>;
  /** Corners and curve points of the line that is cut, where the file gives it; else empty. */
  readonly cutLine: readonly RawPoint[];
  /** Notches beside the outline, on the cut line. */
  readonly cutNotches: readonly RawPoint[];
  /** Where those meet the outline, by their names, where the file says it. */
  readonly sewnNotches?: ReadonlyMap<string, RawPoint>;
  /** Names of double notches. */
  readonly doubleNotches: ReadonlySet<string>;
}

/** The refusal of an outline, for the caller to throw. */
export function outlineError(
  { name, kind, place }: Pick<RawPoint, 'name' | 'kind' | 'place'>,
  what: string,
  allowed: string,
): InputError {
  return new InputError('outline-malformed', {
    what,
    allowed,
    got: `${kind} ${name}`,
    place: { ...place, point: name },
  });
}
