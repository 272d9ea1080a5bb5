/** How far a cut line keeps from its sewing line, beside what its allowances ask for. */
import { boxSearch } from '../geometry/box-tree';
import { controlBounds, grownBox, pointBounds, segmentBounds } from '../geometry/bounds';
import type { Crossing } from '../geometry/crossings';
import { crossings } from '../geometry/crossings';
import { nearestOn } from '../geometry/nearest';
import type { Point } from '../geometry/point';
import { cross, distance, dot, subtract, unit } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { segmentAt, segmentLength, segmentTangent } from '../geometry/segment';
import { ALLOWANCE_KEPT, BARE_END, SAME_PLACE } from '../tolerance';
import type { Strip } from './strip';

/** The place where a cut line is nearest to its sewing line for what it should be. */
export interface NearestPlace {
  readonly seam: string;
  /** mm. */
  readonly kept: number;
  readonly wanted: number;
}

/** mm between the places of the cut line that are measured. */
const STEP = 15;
const LEAST_PLACES = 4;
/** mm from a corner along the seam in which a curve may bend toward the end of its allowance. */
const BESIDE_CORNER = 8;
/** Cosine of 30 degrees: a turn by less is no corner. */
const SMOOTH = Math.cos(Math.PI / 6);

/**
 * Walks the cut line and measures to every strip. At a corner, and as far from it as a mirrored hem
 * or a squared end cuts into its neighbor, the narrower of the two allowances is enough. Undefined
 * where there is nothing to keep.
 */
export function nearestPlace(
  cut: readonly Segment[],
  strips: readonly Strip[],
): NearestPlace | undefined {
  const near = strips.flatMap((strip, i) => {
    const [before, after] = [strips.at(i - 1) ?? strip, strips[(i + 1) % strips.length] ?? strip];
    if (strip.width <= 0) return [];
    return {
      ...strip,
      box: grownBox(segmentBounds(strip.net), strip.width),
      corners: [cornerOf(strip.net.from, before, strip), cornerOf(strip.net.to, strip, after)],
    };
  });
  const stripsAt = boxSearch(near, ({ box }) => box);
  let worst: NearestPlace | undefined;
  for (const p of cut.flatMap(places)) {
    for (const i of stripsAt(pointBounds([p]))) {
      const { net, seam, width, corners } = near[i] as (typeof near)[number];
      const t = nearestOn(net, p);
      const foot = segmentAt(net, t);
      const kept = distance(p, foot);
      // No more than the width of the strip is wanted, so this place is no nearer to its seam.
      if (worst !== undefined && kept - width >= worst.kept - worst.wanted) continue;
      // Across a narrow piece the cut line of the other side may be near: that is no matter.
      const isInside = cross(segmentTangent(net, t), subtract(p, foot)) > 0;
      if (isInside || corners.some((corner) => isPassed(corner, foot, p))) continue;
      const wanted = corners.reduce(
        (least, { at, reach, narrower }) =>
          Math.hypot(kept, reach) >= distance(p, at) ? Math.min(least, narrower) : least,
        width,
      );
      if (worst === undefined || kept - wanted < worst.kept - worst.wanted)
        worst = { seam, kept, wanted };
    }
  }
  return worst;
}

/** Seams that a cut line crosses, apart from ends where the allowance is next to nothing. */
export function crossedSeams(cut: readonly Segment[], strips: readonly Strip[]): readonly string[] {
  const isBare = ({ width }: Strip): boolean => width <= ALLOWANCE_KEPT;
  const bare = strips.filter(isBare).flatMap(({ net }) => [net.from, net.to]);
  const bareNear = boxSearch(bare, (p) => grownBox(pointBounds([p]), BARE_END));
  const isBeside = ({ at }: Crossing): boolean =>
    bareNear(pointBounds([at])).some((i) => distance(bare[i] as Point, at) <= BARE_END);
  const cutNear = boxSearch(cut, controlBounds);
  return strips
    .filter(
      (strip) =>
        !isBare(strip) &&
        cutNear(controlBounds(strip.net)).some((i) =>
          crossings(cut[i] as Segment, strip.net).some((crossing) => !isBeside(crossing)),
        ),
    )
    .map(({ seam }) => seam);
}

function places(segment: Segment): readonly Point[] {
  const count = Math.max(LEAST_PLACES, Math.ceil(segmentLength(segment) / STEP));
  return Array.from({ length: count }, (_, k) => segmentAt(segment, k / count));
}

interface StripCorner {
  readonly at: Point;
  /** mm from the corner along the seam. */
  readonly reach: number;
  readonly narrower: number;
  /** Directions of the seam before and after. */
  readonly arriving: Point;
  readonly leaving: Point;
}

/** Whether the sewing line comes nearer to `p` beyond a corner than at it. */
function isPassed({ at, arriving, leaving }: StripCorner, foot: Point, p: Point): boolean {
  if (distance(at, foot) > SAME_PLACE) return false;
  const way = subtract(p, at);
  return dot(way, arriving) < -SAME_PLACE || dot(way, leaving) > SAME_PLACE;
}

function cornerOf(at: Point, before: Strip, after: Strip): StripCorner {
  const arriving = unit(segmentTangent(before.net, 1));
  const leaving = unit(segmentTangent(after.net, 0));
  const turn = cross(arriving, leaving);
  const ahead = dot(arriving, leaving);
  const widest = Math.max(before.width, after.width);
  // The corner's angle is the turn's supplement, so that both have the same cotangent up to sign.
  const isCorner = turn > 0 && ahead < SMOOTH;
  return {
    at,
    reach: BESIDE_CORNER + (isCorner ? Math.abs((widest * ahead) / turn) : 0),
    narrower: Math.min(before.width, after.width),
    arriving,
    leaving,
  };
}
