/** Diamonds across the edges of tiles: their halves meet where two sheets are joined. */
import type { Box } from '../geometry/bounds';
import { grownBox, pointBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import type { Shape, Stroke } from '../render/scene';
import { polyline } from '../render/scene';
import { INK } from '../render/size-style';
import type { Ink } from './ink';
import { hasInk } from './ink';

/** mm from the middle of a mark to its corners. */
export const HALF_MARK = 3.5;
const MARK: Stroke = { color: INK, width: 0.35 };
/** Shares of an edge at which a mark may stand, the best first. */
const SHARES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.45, 0.55, 0.35, 0.65];

/** The ways to the neighbors of a tile. */
export const SIDES = [
  { across: -1, down: 0 },
  { across: 1, down: 0 },
  { across: 0, down: -1 },
  { across: 0, down: 1 },
] as const;

/**
 * The middle of the mark on one edge of a tile, on the plane: where it covers nothing, if there is
 * such a place. It depends on the edge alone, so that both sheets put it there.
 */
export function matchPlace(ink: Ink, box: Box, across: number, down: number): Point {
  const [x, y] = [across > 0 ? box.right : box.left, down > 0 ? box.bottom : box.top];
  const places = SHARES.map((share) =>
    down === 0
      ? point(x, box.top + share * (box.bottom - box.top))
      : point(box.left + share * (box.right - box.left), y),
  );
  return places.find((at) => !hasInk(ink, markRoom(at))) ?? places[0] ?? point(x, y);
}

/** The room that a mark takes, with some to spare. */
export function markRoom(at: Point): Box {
  return grownBox(pointBounds([at]), HALF_MARK + 1.5);
}

/** The half of the mark on this side of the edge, which lies in the direction given; or all of it. */
export function matchMark(
  middle: Point,
  across: number,
  down: number,
  whole: boolean,
): readonly Shape[] {
  const ends = [-HALF_MARK, HALF_MARK].map((by) =>
    point(middle.x + by * Math.abs(down), middle.y + by * Math.abs(across)),
  );
  const tips = (whole ? [-HALF_MARK, HALF_MARK] : [-HALF_MARK]).map((by) =>
    point(middle.x + by * across, middle.y + by * down),
  );
  return tips.map((tip) => polyline('match-mark', [ends[0] ?? tip, tip, ends[1] ?? tip], MARK));
}
