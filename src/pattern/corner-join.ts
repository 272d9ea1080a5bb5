/** How two strips of allowance meet at a corner. */
import { crossings } from '../geometry/crossings';
import type { Point } from '../geometry/point';
import { add, between, cross, distance, dot, scale, subtract } from '../geometry/point';
import type { Line, Segment } from '../geometry/segment';
import { segmentPart } from '../geometry/segment';
import { CUT_OVERLAP, CUT_TURN, SAME_PLACE } from '../tolerance';

/** One of two strips at a corner, seen toward it. */
export interface Arm {
  /** The corner of the sewing line. */
  readonly corner: Point;
  /** Unit vector along the edge, on beyond the corner. */
  readonly ahead: Point;
  /** Unit vector from the edge to its cut line. */
  readonly outward: Point;
  /** mm. */
  readonly width: number;
  /** The cut line, running toward the corner. */
  readonly chain: readonly Segment[];
}

/**
 * `mirrored`: the second arm is a hem; the first one's cut line goes on below it as its mirror image,
 * so that the turn-up is as wide as what it lies against. `squared`: the first arm is a seam that is
 * pressed open; its allowance ends square to it, where its sewing line meets the second cut line, so
 * that both layers of the seam end alike. `stepped`: beyond its narrower neighbor's width the wider
 * allowance ends on the seam line. `mitered`: both cut lines run on until they meet. `fold`: the
 * same, however far; a fold must run on straight.
 */
export type CornerShape = 'mirrored' | 'squared' | 'stepped' | 'mitered' | 'fold';

/** The arms cut off or lengthened, and the points that join them, from the first to the second. */
export interface CornerJoin {
  readonly first: readonly Segment[];
  readonly path: readonly Point[];
  readonly second: readonly Segment[];
}

/** Widths from the corner beyond which a miter is cut off. */
const MITER_LIMIT = 4;

/**
 * Joins two arms of one corner. A turn inward cuts both cut lines where they cross. Where the widths
 * are so different that the narrower cut line would cut into the wider allowance, the wider one
 * ends square at the corner. Where a seam bends into its own allowance, `shape` gives way.
 */
export function joinAt(a: Arm, b: Arm, shape: CornerShape): CornerJoin {
  const cos = dot(a.ahead, b.ahead);
  const parted = Math.abs(cross(a.ahead, b.ahead)) * Math.max(a.width, b.width, 1);
  if (parted < CUT_TURN && cos < 0) return { first: a.chain, path: [], second: b.chain };
  if (dot(a.outward, b.ahead) < 0) return inward(a, b);
  if (shape === 'fold') return mitered(a, b, FAR) ?? blunt(a, b);
  if (shape === 'mirrored') return mirroredJoin(a, b) ?? blunt(a, b);
  if (b.width * cos + a.width < 0) return square(a, b, cos);
  if (a.width * cos + b.width < 0) return swapped(square(b, a, cos));
  if (isShort(a) || isShort(b)) return bentIn(a, b);
  const shaped =
    shape === 'squared' ? squared(a, b) : shape === 'stepped' ? stepped(a, b, cos) : undefined;
  const limit = MITER_LIMIT * Math.max(a.width, b.width);
  return shaped ?? mitered(a, b, limit) ?? blunt(a, b);
}

/**
 * A seam that bends into its allowance at the corner needs its cut line as far as it goes, and no
 * other shape: a miter, or where that would cut it off, the straight way across.
 */
function bentIn(a: Arm, b: Arm): CornerJoin {
  const met = mitered(a, b, MITER_LIMIT * Math.max(a.width, b.width));
  const isWhole =
    met !== undefined && met.first.length > a.chain.length && met.second.length > b.chain.length;
  return isWhole ? met : { first: a.chain, path: [], second: b.chain };
}

/** mm. Farther than any corner of a skirt reaches. */
const FAR = 1000;

function inward(a: Arm, b: Arm): CornerJoin {
  const met = meet(a.chain, b.chain, a.corner);
  if (met !== undefined) return { first: met.first, path: [], second: met.second };
  // A turn so slight that the crossing is lost between two ends that all but touch.
  const [one, other] = [a.chain.at(-1)?.to, b.chain.at(-1)?.to];
  if (one !== undefined && other !== undefined && distance(one, other) < CUT_OVERLAP)
    return { first: a.chain, path: [between(one, other, 0.5)], second: b.chain };
  return { first: a.chain, path: [a.corner], second: b.chain };
}

function mitered(a: Arm, b: Arm, limit: number): CornerJoin | undefined {
  const met = meet(runOn(a, limit), runOn(b, limit), a.corner);
  if (met === undefined || distance(met.at, a.corner) > limit + SAME_PLACE) return undefined;
  return { first: met.first, path: [], second: met.second };
}

function mirroredJoin(a: Arm, hem: Arm): CornerJoin | undefined {
  const limit = MITER_LIMIT * Math.max(a.width, hem.width);
  const fold = meet(runOn(a, limit), [ray(hem.corner, hem.ahead, limit)], a.corner);
  if (fold === undefined) return undefined;
  const down = subtract(a.ahead, scale(hem.ahead, 2 * dot(a.ahead, hem.ahead)));
  const below = meet([ray(fold.at, down, limit)], runOn(hem, limit), fold.at);
  return below && { first: fold.first, path: [below.at], second: below.second };
}

function squared(a: Arm, b: Arm): CornerJoin | undefined {
  const limit = MITER_LIMIT * Math.max(a.width, b.width);
  const met = meet([ray(a.corner, a.ahead, limit)], runOn(b, limit), a.corner);
  if (met === undefined) return undefined;
  const end = add(met.at, scale(a.outward, a.width));
  return { first: a.chain, path: [end, met.at], second: met.second };
}

function stepped(a: Arm, b: Arm, cos: number): CornerJoin | undefined {
  if (b.width < a.width) {
    const other = stepped(b, a, cos);
    return other && swapped(other);
  }
  const sin = Math.abs(cross(a.ahead, b.ahead));
  const limit = MITER_LIMIT * Math.max(a.width, b.width);
  const met = meet([ray(a.corner, a.ahead, limit)], runOn(b, limit), a.corner);
  if (met === undefined || sin < 1 / MITER_LIMIT) return undefined;
  const along = (a.width * (1 + cos)) / sin;
  const outer = add(add(a.corner, scale(a.ahead, along)), scale(a.outward, a.width));
  const inner = add(a.corner, scale(a.ahead, a.width / sin));
  return { first: a.chain, path: [outer, inner, met.at], second: met.second };
}

/** Whether a seam bends into its allowance at the corner, so that its cut line ends before it. */
function isShort({ chain, corner, outward, width }: Arm): boolean {
  const end = chain.at(-1)?.to ?? corner;
  return distance(end, add(corner, scale(outward, width))) > CUT_TURN;
}

/** The wider arm `b` ends square at the corner; the narrower one runs on to meet its end. */
function square(a: Arm, b: Arm, cos: number): CornerJoin {
  const end = add(b.corner, scale(b.outward, a.width / -cos));
  return { first: a.chain, path: [end], second: b.chain };
}

/** The tip of a sharp corner cut off, no nearer to it than the wider allowance. */
function blunt(a: Arm, b: Arm): CornerJoin {
  const far = Math.max(a.width, b.width);
  const tip = ({ corner, outward, width, ahead }: Arm): Point =>
    add(add(corner, scale(outward, width)), scale(ahead, far));
  return { first: a.chain, path: [tip(a), tip(b)], second: b.chain };
}

function swapped({ first, path, second }: CornerJoin): CornerJoin {
  return { first: second, path: path.toReversed(), second: first };
}

function ray(from: Point, along: Point, long: number): Line {
  return { kind: 'line', from, to: add(from, scale(along, long)) };
}

/** The cut line of an arm, on beyond its corner in the edge's own direction. */
function runOn({ chain, corner, outward, width, ahead }: Arm, long: number): readonly Segment[] {
  const end = chain.at(-1)?.to ?? add(corner, scale(outward, width));
  return [...chain, ray(end, ahead, long)];
}

interface Meeting {
  readonly at: Point;
  /** Both chains as far as they meet. */
  readonly first: readonly Segment[];
  readonly second: readonly Segment[];
}

/** Where two chains meet; nearest to `corner`, if they do so more than once. */
function meet(
  one: readonly Segment[],
  other: readonly Segment[],
  corner: Point,
): Meeting | undefined {
  let best: Meeting | undefined;
  one.forEach((a, i) => {
    other.forEach((b, k) => {
      for (const { t, u, at } of crossings(a, b)) {
        if (best !== undefined && distance(best.at, corner) <= distance(at, corner)) continue;
        best = {
          at,
          first: [...one.slice(0, i), segmentPart(a, 0, t)],
          second: [...other.slice(0, k), segmentPart(b, 0, u)],
        };
      }
    });
  });
  return best;
}
