/** Which edges of a pattern are sewn together. */
import type { Place } from '../errors';

/** An edge of a piece by its name; walked from its end to its start where it lies mirrored. */
export interface SeamEdge {
  readonly piece: string;
  readonly edge: string;
  /** True where the walk goes against the order of the outline, as on the other half of a garment. */
  readonly back?: true;
}

/** Edges that are sewn one after another. */
export interface SeamSide {
  readonly edges: readonly SeamEdge[];
}

/** The ease of one stretch of a seam, from a notch, join or end of either side to the next. */
export interface EasedStretch {
  /** As `piece.point`. */
  readonly from: string;
  readonly to: string;
  /** mm by which the first side is meant to be longer there. */
  readonly ease: number;
  /** Where it is stated. */
  readonly place: Place;
}

/** Two sides of a seam that are sewn together. */
export interface SeamPair {
  readonly name: string;
  readonly sides: readonly [SeamSide, SeamSide];
  /** mm by which the first side is meant to be longer, or the parameter that holds them in each size. */
  readonly ease: number | string;
  /** Whether the ease lies anywhere, or is spread evenly, so that notches stand at equal shares. */
  readonly spread: 'anywhere' | 'even';
  /** Stretches whose ease is stated; the rest of the ease lies in the others. */
  readonly eased?: readonly EasedStretch[] | undefined;
  /** Whether notches of one side meet those of the other, or belong to other seams. */
  readonly notches: 'met' | 'left out';
  /** Whether both sides run the same way round in their outlines; undefined is found by fit. */
  readonly way: 'same' | 'opposite' | undefined;
  /** Whether the edges beside the seam run on across it, at its start and at its end. */
  readonly runsOn: readonly [boolean, boolean];
}

/** A pair of which only the sides and the ease are known. */
export function seamPair(
  name: string,
  sides: SeamPair['sides'],
  more: Partial<Omit<SeamPair, 'name' | 'sides'>> = {},
): SeamPair {
  return {
    name,
    sides,
    ease: 0,
    spread: 'anywhere',
    notches: 'met',
    way: undefined,
    runsOn: [true, true],
    ...more,
  };
}

/** Whether an edge meets its own mirror image, as at a fold or a center seam. */
export function meetsItself({ sides: [first, second] }: SeamPair): boolean {
  const [a, b] = [first.edges[0], second.edges[0]];
  return (
    first.edges.length === 1 &&
    second.edges.length === 1 &&
    a?.piece === b?.piece &&
    a?.edge === b?.edge
  );
}

/** mm of ease in a size with these parameters. Throws a RangeError if the parameter has no value. */
export function easeOf(
  { ease, name }: Pick<SeamPair, 'ease' | 'name'>,
  parameters: ReadonlyMap<string, number>,
): number {
  if (typeof ease === 'number') return ease;
  const width = parameters.get(ease);
  if (width === undefined) throw new RangeError(`${ease} of the seam ${name} has no value`);
  return width;
}
