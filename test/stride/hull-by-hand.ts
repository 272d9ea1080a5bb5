/**
 * Two legs and the band round them by another route than the engine's: both outlines are laid down
 * as points, and the band is the boundary of their convex hull (Andrew's monotone chain). Limb, leg,
 * joint and careful share are those of the engine, so that this tests its geometry and not its figures.
 */

type XY = readonly [number, number];

/** A leg's outline: an ellipse of a girth in mm, `flat` times as wide as deep, at a center. */
function leg(girth: number, [cx, cy]: XY, flat = 1): XY[] {
  const corners = 720;
  const at = (i: number, size: number): XY => {
    const angle = (2 * Math.PI * i) / corners;
    return [size * flat * Math.cos(angle), size * Math.sin(angle)];
  };
  const unit = Array.from({ length: corners }, (_, i) => at(i, 1));
  const size = girth / perimeter(unit);
  return unit.map(([x, y]): XY => [cx + size * x, cy + size * y]);
}

function perimeter(points: readonly XY[]): number {
  return points.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length] ?? [NaN, NaN];
    return sum + Math.hypot(nextX - x, nextY - y);
  }, 0);
}

function convexHull(points: readonly XY[]): XY[] {
  const sorted = points.toSorted(([ax, ay], [bx, by]) => ax - bx || ay - by);
  const half = (way: readonly XY[]): XY[] => {
    const chain: XY[] = [];
    for (const p of way) {
      for (;;) {
        const [a, b] = chain.slice(-2);
        if (a === undefined || b === undefined) break;
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break;
        chain.pop();
      }
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.toReversed())];
}

/**
 * The band in mm round two legs of one girth whose centers are `along` apart fore and aft and
 * `side` apart side by side; a limb's diameter where that is left out.
 */
export function bandRoundLegs(
  girth: number,
  along: number,
  { side = girth / Math.PI, flat = 1 } = {},
): number {
  return perimeter(convexHull([...leg(girth, [0, 0], flat), ...leg(girth, [side, along], flat)]));
}

/** The reference's limb girth in mm at a depth in mm below her hip joint, read off her list. */
export function referenceLimb(depth: number): number {
  const list: readonly XY[] = [
    [0, 570],
    [380, 360],
    [430, 350],
    [480, 350],
    [580, 290],
    [740, 220],
  ];
  const next = list.findIndex(([at]) => at >= depth);
  const [[a, from], [b, to]] = [list[next - 1] ?? [NaN, NaN], list[next] ?? [NaN, NaN]];
  return from + ((to - from) * (depth - a)) / (b - a);
}

/** Leg and hip joint of the reference, mm. */
export const LEG = 820;
export const JOINT = 170;

/** What the engine is set by: this share of the step that the bare band allows is counted on. */
export const CAREFUL_SHARE = 0.88;

/** The band in mm that a careful step of the reference needs at a level below her waist. */
export function needByHand(step: number, level: number): number {
  const depth = level - JOINT;
  return bandRoundLegs(referenceLimb(depth), ((step / CAREFUL_SHARE) * depth) / LEG);
}

/** The careful step in mm that a girth allows the reference at a level, by halving. */
export function stepByHand(girth: number, level: number): number {
  let [least, most] = [0, 2 * LEG];
  for (let i = 0; i < 30; i++) {
    const step = (least + most) / 2;
    if (needByHand(step, level) <= girth) least = step;
    else most = step;
  }
  return least;
}

/** mm above a hem at `hem` at which a cone of cloth from `hip` first is too narrow, mm by mm. */
export function openingByHand(
  step: number,
  [hipLevel, hip]: XY,
  [hemLevel, hem]: XY,
  every = 1,
): number {
  for (let level = 220; level <= hemLevel; level += every) {
    const girth = hip + ((hem - hip) * (level - hipLevel)) / (hemLevel - hipLevel);
    if (needByHand(step, level) > girth) return hemLevel - level;
  }
  return 0;
}
