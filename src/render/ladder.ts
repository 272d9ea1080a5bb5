/** Ladders: the labels of the sizes beside a corner of the nest, each led to its own line. */
import type { Box } from '../geometry/bounds';
import { joinBoxes, pointBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import type { Shape, Stroke } from './scene';
import { polyline } from './scene';
import type { SizeStyle } from './size-style';
import { CAP_MIDDLE, text, textBox, textWidth } from './type';

/** One size at the corner: where its line turns, and how it is drawn. */
export interface Rung {
  readonly label: string;
  readonly at: Point;
  readonly style: SizeStyle;
}

/** Which way the leaders leave the nest, and to which side the labels stand. */
export interface LadderWay {
  readonly leave: 'up' | 'down' | 'sideways';
  readonly side: 'left' | 'right';
}

/** Shapes for each rung in the order given, and the box around all of them. */
export interface Ladder {
  readonly rungs: readonly (readonly Shape[])[];
  readonly box: Box;
}

/** Type size of the labels in mm where nothing else is asked for. */
export const LADDER_TYPE = 8;

// Lengths in type sizes.
/** From one label to the next across the lines. */
const PITCH = 1.3125;
/** Between the corner and its leader, so that nobody takes the leader for a seam. */
const OFF = 0.3125;
/** From the nest to the first label. */
const CLEAR = 1.5;
/** Level line before a label. */
const ELBOW = 0.5;
/** Between a leader and the label next to it. */
const GAP = 0.25;
/** Over which slanted leaders spread out. */
const FAN = 3.75;

/** The ladder at a corner of a nest whose lines all lie within `nest`; `type` is in mm. */
export function ladder(rungs: readonly Rung[], way: LadderWay, nest: Box, type: number): Ladder {
  const routes =
    way.leave === 'sideways' ? fan(rungs, way, nest, type) : stairs(rungs, way, nest, type);
  const out = way.side === 'right' ? 1 : -1;
  const drawn = rungs.map(({ label, style: { outline, base } }, i) => {
    const route = routes[i] ?? [];
    const end = route.at(-1) ?? point(0, 0);
    const leader: Stroke = { color: outline.color, width: base ? 0.5 : 0.3 };
    const words = text(label, point(end.x + out * GAP * type, end.y + CAP_MIDDLE * type), type, {
      weight: base ? 'bold' : 'normal',
      anchor: way.side === 'right' ? 'start' : 'end',
      color: outline.color,
    });
    return { shapes: [polyline('leader', route, leader), words], points: route, words };
  });
  return {
    rungs: drawn.map(({ shapes }) => shapes),
    box: joinBoxes(drawn.flatMap(({ points, words }) => [pointBounds(points), textBox(words)])),
  };
}

/**
 * Leaders straight away from the nest, each with its label at its foot. A label reaches over the
 * leaders on its side, so it stands beyond the ends of all that it reaches; where the lines are
 * far enough apart all labels share one row.
 */
function stairs(
  rungs: readonly Rung[],
  { leave, side }: LadderWay,
  nest: Box,
  type: number,
): Point[][] {
  const out = side === 'right' ? 1 : -1;
  const down = leave === 'down' ? 1 : -1;
  const first = leave === 'down' ? nest.bottom + CLEAR * type : nest.top - CLEAR * type;
  const rows = rungs.map(() => 0);
  const outward = rungs.map((_, i) => i);
  // From the outermost line inwards; of lines in one place the larger size counts as outermost.
  outward.sort((a, b) => out * (xOf(rungs, b) - xOf(rungs, a)) || b - a);
  outward.forEach((i, rank) => {
    const reach = (ELBOW + 2 * GAP) * type + textWidth(rungs[i]?.label ?? '', type);
    const below = outward.slice(0, rank);
    const reached = below.filter((k) => out * (xOf(rungs, k) - xOf(rungs, i)) < reach);
    rows[i] = Math.max(0, ...reached.map((k) => (rows[k] ?? 0) + 1));
  });
  return rungs.map(({ at }, i) => {
    const y = first + down * PITCH * type * (rows[i] ?? 0);
    return [
      point(at.x, at.y + down * OFF * type),
      point(at.x, y),
      point(at.x + out * ELBOW * type, y),
    ];
  });
}

function xOf(rungs: readonly Rung[], i: number): number {
  return rungs[i]?.at.x ?? 0;
}

/** Level leaders out of the nest that spread to a column of labels, for lines one above another. */
function fan(rungs: readonly Rung[], { side }: LadderWay, nest: Box, type: number): Point[][] {
  const out = side === 'right' ? 1 : -1;
  const edge = side === 'right' ? nest.right : nest.left;
  const downward = rungs.map((_, i) => i);
  downward.sort((a, b) => (rungs[a]?.at.y ?? 0) - (rungs[b]?.at.y ?? 0) || a - b);
  // Each label on the level of its line, or as far below it as the one before makes it.
  const levels = rungs.map(() => 0);
  downward.forEach((i, rank) => {
    const above = downward[rank - 1];
    const free = above === undefined ? -Infinity : (levels[above] ?? 0) + PITCH * type;
    levels[i] = Math.max(rungs[i]?.at.y ?? 0, free);
  });
  const sunk = rungs.reduce((sum, { at }, i) => sum + (levels[i] ?? 0) - at.y, 0) / rungs.length;
  return rungs.map(({ at }, i) => {
    const y = (levels[i] ?? 0) - sunk;
    return [
      point(at.x + out * OFF * type, at.y),
      point(edge + out * CLEAR * type, at.y),
      point(edge + out * (CLEAR + FAN) * type, y),
      point(edge + out * (CLEAR + FAN + ELBOW) * type, y),
    ];
  });
}
