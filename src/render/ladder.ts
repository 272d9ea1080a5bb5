/** Ladders: the labels of the sizes beside a corner of the nest, each led to its own line. */
import type { Box } from '../geometry/bounds';
import { joinBoxes, pointBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import { rowFrame } from './row-frame';
import type { Shape, Stroke, TextShape } from './scene';
import { polyline } from './scene';
import type { SizeStyle } from './size-style';
import { spreadLabels } from './spread-labels';
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
/** From the nest to the first label on stairs, or to where leaders begin to spread. */
const CLEAR = { stairs: 1, fan: 0.25 };
/** Straight line before a label on stairs, and before one in a row. */
const ELBOW = { stairs: 0.5, fan: 0.25 };
/** Between a leader and the label next to it. */
const GAP = 0.25;
/** Least and greatest length over which slanted leaders spread out. */
const FAN = { least: 0.25, most: 2 };
/** Between these a leader spreads no flatter than this: mm out for each mm aside. No tolerance: a look. */
const SLOPE = 0.5;

/** A label with the way of its leader, which begins at the line. */
interface Led {
  readonly route: readonly Point[];
  readonly words: TextShape;
}

/**
 * The ladder at a corner of a nest whose lines all lie within `nest`; `type` is in mm. Its labels stand
 * level on stairs, or in a row along the side that the leaders leave, whichever takes less.
 */
export function ladder(rungs: readonly Rung[], way: LadderWay, nest: Box, type: number): Ladder {
  const ways = [
    ...(way.leave === 'sideways' ? [] : [stairs(rungs, way, way.leave, nest, type)]),
    fan(rungs, way, nest, type),
  ];
  const { edge } = rowFrame(way.leave === 'sideways' ? way.side : way.leave);
  const [best] = ways
    .map((led) => ({
      led,
      box: joinBoxes(led.flatMap(({ route, words }) => [pointBounds(route), textBox(words)])),
    }))
    .toSorted((a, b) => edge(a.box) - edge(b.box));
  const { led, box } = best ?? { led: [], box: nest };
  return {
    rungs: led.map(({ route, words }, i) => {
      const leader: Stroke = { color: words.color, width: rungs[i]?.style.base ? 0.5 : 0.3 };
      return [polyline('leader', route, leader), words];
    }),
    box,
  };
}

function styleOf({ style: { outline, base } }: Rung): Pick<TextShape, 'color' | 'weight'> {
  return { color: outline.color, weight: base ? 'bold' : 'normal' };
}

/**
 * Leaders straight away from the nest, each with its label at its foot. A label reaches over the
 * leaders on its side, so it stands beyond the ends of all that it reaches; where the lines are
 * far enough apart all labels share one row.
 */
function stairs(
  rungs: readonly Rung[],
  { side }: LadderWay,
  leave: 'up' | 'down',
  nest: Box,
  type: number,
): readonly Led[] {
  const out = side === 'right' ? 1 : -1;
  const down = leave === 'down' ? 1 : -1;
  const first =
    leave === 'down' ? nest.bottom + CLEAR.stairs * type : nest.top - CLEAR.stairs * type;
  const rows = rungs.map(() => 0);
  const outward = rungs.map((_, i) => i);
  // From the outermost line inwards; of lines in one place the larger size counts as outermost.
  outward.sort((a, b) => out * (xOf(rungs, b) - xOf(rungs, a)) || b - a);
  outward.forEach((i, rank) => {
    const reach = (ELBOW.stairs + 2 * GAP) * type + textWidth(rungs[i]?.label ?? '', type);
    const below = outward.slice(0, rank);
    const reached = below.filter((k) => out * (xOf(rungs, k) - xOf(rungs, i)) < reach);
    rows[i] = Math.max(0, ...reached.map((k) => (rows[k] ?? 0) + 1));
  });
  return rungs.map((rung, i) => {
    const { x, y: corner } = rung.at;
    const y = first + down * PITCH * type * (rows[i] ?? 0);
    const end = x + out * ELBOW.stairs * type;
    const words = text(rung.label, point(end + out * GAP * type, y + CAP_MIDDLE * type), type, {
      ...styleOf(rung),
      anchor: side === 'right' ? 'start' : 'end',
    });
    return { route: [point(x, corner + down * OFF * type), point(x, y), point(end, y)], words };
  });
}

function xOf(rungs: readonly Rung[], i: number): number {
  return rungs[i]?.at.x ?? 0;
}

/** Leaders out of the nest that spread to a row of labels along its side, which read away from it. */
function fan(
  rungs: readonly Rung[],
  { leave, side }: LadderWay,
  nest: Box,
  type: number,
): readonly Led[] {
  const frame = rowFrame(leave === 'sideways' ? side : leave);
  const places = rungs.map(({ at }) => frame.along(at));
  const order = rungs.map((_, i) => i);
  order.sort((a, b) => (places[a] ?? 0) - (places[b] ?? 0) || a - b);
  const spread = spreadLabels(
    order.map((i) => ({ at: places[i] ?? 0, half: (PITCH / 2) * type, weight: 1 })),
  );
  const slots = rungs.map((_, i) => spread[order.indexOf(i)] ?? 0);
  const aside = Math.max(...slots.map((slot, i) => Math.abs(slot - (places[i] ?? slot))));
  const start = frame.edge(nest) + CLEAR.fan * type;
  const end = start + Math.min(FAN.most * type, Math.max(FAN.least * type, SLOPE * aside));
  return rungs.map((rung, i) => {
    const [along, slot] = [places[i] ?? 0, slots[i] ?? 0];
    const foot = end + ELBOW.fan * type;
    return {
      route: [
        frame.at(along, frame.out(rung.at) + OFF * type),
        frame.at(along, start),
        frame.at(slot, end),
        frame.at(slot, foot),
      ],
      words: frame.words(rung.label, slot, foot + GAP * type, { size: type, ...styleOf(rung) }),
    };
  });
}
