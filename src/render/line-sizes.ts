/** The size on its own line along a side, again and again, so that a sheet shows whose each line is. */
import type { Box } from '../geometry/bounds';
import { boxesOverlap, pointBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { add, point, scale, subtract, unit } from '../geometry/point';
import { LINES_APART } from '../tolerance';
import type { Chord } from './chords';
import { chordsOf, clearOf, flattened } from './chords';
import type { NestedPiece } from './nested-piece';
import type { TextShape } from './scene';
import { strongLines } from './shared-runs';
import { downOf, readingAngle } from './sketch';
import { DASH_COUNT, INK } from './size-style';
import { CAP_MIDDLE, text, textBox } from './type';

/** mm from row to row, less than any sheet is high, and from the ends of the piece, where sizes are led out. */
const PITCH = 130;
const FROM_ENDS = 110;
/** mm by which a size is moved along its line until nothing is in its way. */
const ASIDE = [0, 10, -10, 20, -20, 30, -30];
/** mm. A line climbs over so much as it does beside its size. */
const REACH = 4;
/** From a line to the middle of its size, in type sizes. */
const OFF = 0.75;

/**
 * Of each size its labels; none where so few sizes are shown that dashes alone tell them. `others` are lines
 * of what else is drawn, among them crosses over words; `type` is in mm.
 */
export function lineSizes(
  nested: NestedPiece,
  type: number,
  others: readonly Chord[],
): readonly (readonly TextShape[])[] {
  const { sizes, box, chords } = nested;
  const outlines = strongLines(nested).map((own) => chordsOf([flattened(own)]));
  if (sizes.length <= DASH_COUNT) return sizes.map(() => []);
  const isFree = clearOf([...chords, ...others]);
  const side = sideOf(outlines, (box.top + box.bottom) / 2);
  const crossings = outlines.map((own) => crossingOf(own, side));
  const rows = Math.max(0, Math.floor((box.bottom - box.top - 2 * FROM_ENDS) / PITCH) + 1);
  const middle = (box.top + box.bottom) / 2;
  const levels = Array.from({ length: rows }, (_, i) => middle + (i - (rows - 1) / 2) * PITCH);
  const placed: Box[] = [];
  return sizes.map(({ label, style }, rank) => {
    const color = style.outline.color ?? INK;
    const weight = style.base ? 'bold' : 'normal';
    return levels.flatMap((level): readonly TextShape[] => {
      for (const by of ASIDE) {
        const [at, above, below] = [0, -REACH, REACH].map((reach) =>
          crossings[rank]?.(level + by + reach),
        );
        if (at === undefined || above === undefined || below === undefined) continue;
        // A line of several sizes is named as theirs, if at all.
        const isShared = crossings.some((crossingAt, i) => {
          const near = i === rank ? undefined : crossingAt(at.y);
          return near !== undefined && Math.abs(near.x - at.x) < LINES_APART;
        });
        if (isShared) continue;
        const angle = readingAngle(unit(subtract(below, above)));
        const down = downOf(angle);
        // Always on the piece's own side of the line, so that none is taken for its neighbor's.
        const off = -side * Math.sign(down.x === 0 ? 1 : down.x) * OFF + CAP_MIDDLE;
        const own = text(label, add(at, scale(down, off * type)), type, {
          anchor: 'middle',
          rotation: angle,
          color,
          weight,
        });
        const room = textBox(own);
        if (!isFree(room) || placed.some((other) => boxesOverlap(other, room))) continue;
        placed.push(room);
        return [own];
      }
      return [];
    });
  });
}

/** On which side sizes lie apart: 1 for the right one, -1 for the left one. */
function sideOf(outlines: readonly (readonly Chord[])[], level: number): 1 | -1 {
  const spread = (side: 1 | -1): number => {
    const places = outlines.flatMap((own) => crossingOf(own, side)(level) ?? []);
    const { left, right } = pointBounds(places);
    return right - left;
  };
  return spread(1) >= spread(-1) ? 1 : -1;
}

/** Tells where an outline is farthest out on a side at a level; every size asks for the same few levels. */
function crossingOf(chords: readonly Chord[], side: 1 | -1): (y: number) => Point | undefined {
  const known = new Map<number, Point | undefined>();
  return (y) => {
    if (!known.has(y)) known.set(y, farthest(chords, y, side));
    return known.get(y);
  };
}

function farthest(chords: readonly Chord[], y: number, side: 1 | -1): Point | undefined {
  let best: Point | undefined;
  for (const { from, to } of chords) {
    if (from.y === to.y || y < Math.min(from.y, to.y) || y > Math.max(from.y, to.y)) continue;
    const x = from.x + ((to.x - from.x) * (y - from.y)) / (to.y - from.y);
    if (best === undefined || side * x > side * best.x) best = point(x, y);
  }
  return best;
}
