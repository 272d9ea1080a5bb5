/** The room to walk in one size of a skirt, and the opening that a whole range needs. */
import type { Piece } from '../pattern/piece';
import { panelsOf } from '../pattern/piece';
import { ARITHMETIC } from '../tolerance';
import type { GirthProfile } from './girth-profile';
import { girthAt } from './girth-profile';
import { depthOf, hemDepth, skirtProfile } from './skirt-profile';
import type { Stride } from './stride';
import { longestStride, openingForStep } from './stride';
import type { Walker } from './walker';
import { walkerOf, wantedStep } from './walker';

/** What is known of a size: body and parameters in mm or plain numbers, and its pieces. */
export interface WalkedSize {
  readonly body: ReadonlyMap<string, number>;
  readonly parameters: ReadonlyMap<string, number>;
  readonly pieces: readonly Piece[];
}

/** All in millimeters. */
export interface WalkingRoom {
  readonly walker: Walker;
  /** The step that is wanted. */
  readonly wanted: number;
  /** The longest step, above the vent or slit if there is one. */
  readonly allowed: Stride;
  /** The girth round the knee; undefined where the hem or the opening leaves it free. */
  readonly kneeGirth: number | undefined;
  /** Level of the hem below the waist line. */
  readonly hem: number;
  /** How far above the hem the vent or slit begins; 0 if there is none. */
  readonly opening: number;
  /** How far above the hem it must begin for the wanted step; 0 if none is needed. */
  readonly needed: number;
}

/** Measures the room to walk in a size, drafted or graded. */
export function walkingRoom(size: WalkedSize): WalkingRoom {
  const walker = walkerIn(size);
  const skirt = skirtOf(size);
  const opening = openingOf(size);
  const hem = skirt.at(-1)?.level ?? NaN;
  return {
    walker,
    wanted: stepIn(size, walker),
    allowed: longestStride(skirt, walker, opening),
    kneeGirth: walker.knee > hem - opening ? undefined : girthAt(skirt, walker.knee),
    hem,
    opening,
    needed: openingForStep(stepIn(size, walker), skirt, walker),
  };
}

/** mm by which the vent or slit of a size begins above the knee of its walker; negative below it. */
export function openAboveKnee(size: WalkedSize): number {
  const hem = hipLevel(size) + hemDepth(size.pieces);
  return walkerIn(size).knee - (hem - openingOf(size));
}

/** The longest step in mm in a size, above the vent or slit if there is one. */
export function allowedStep(size: WalkedSize): number {
  return longestStride(skirtOf(size), walkerIn(size), openingOf(size)).step;
}

/** mm above the hem at which a vent or slit must begin for the wanted step; 0 if none is needed. */
function neededOpening(size: WalkedSize): number {
  const walker = walkerIn(size);
  return openingForStep(stepIn(size, walker), skirtOf(size), walker);
}

/** The step in mm that is wanted. */
function stepIn({ parameters }: WalkedSize, walker: Walker): number {
  return parameters.get('stride_wanted') ?? wantedStep(walker);
}

function walkerIn({ body, parameters }: WalkedSize): Walker {
  return walkerOf(body, parameters.get('stature'));
}

function skirtOf(size: WalkedSize): GirthProfile {
  return skirtProfile(size.pieces, hipLevel(size));
}

function hipLevel({ parameters }: WalkedSize): number {
  return parameters.get('waist_to_hip') ?? 0;
}

/** mm from the hem up to the top of the vent or slit; 0 if there is none. */
function openingOf({ pieces }: WalkedSize): number {
  const open = panelsOf(pieces).find(({ plan }) => plan.index.has('vent_top'));
  return open === undefined ? 0 : depthOf(open, 'center_hem') - depthOf(open, 'vent_top');
}

/**
 * The largest opening in mm that any size needs, rounded up to a whole number of `step` mm and `least` mm
 * at least; 0 if none needs any.
 */
export function strideOpening(
  sizes: readonly WalkedSize[],
  { step, least }: { readonly step: number; readonly least: number },
): number {
  const needed = Math.max(0, ...sizes.map(neededOpening));
  if (needed === 0) return 0;
  return Math.max(least, step * Math.ceil(needed / step - ARITHMETIC));
}
