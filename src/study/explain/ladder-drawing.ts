/** A small drawing of one point in all sizes: where it lies, with dx and dy written beside it. */
import { joinBoxes, pointBounds } from '../../geometry/bounds';
import type { Point } from '../../geometry/point';
import { point } from '../../geometry/point';
import type { Scene, Shape, TextShape } from '../../render/scene';
import { circle, polyline } from '../../render/scene';
import { SOFT_INK, sizeStyle } from '../../render/size-style';
import { CAP_MIDDLE, text, textBox, textWidth } from '../../render/type';
import type { LengthDisplay } from '../../units';
import { UNIT_WORDS, showNumber, trimmed } from '../../units';
import type { Derivation } from './derivation';
import { SAME_PLACE } from '../../tolerance';

/** mm. The longer side of the ladder, however small or large the moves are. */
const DRAWN = 100;
const MARGIN = 10;
const LABEL = 3.6;
const TITLE = 5;
/** mm from one label to the next across the lines. */
const PITCH = 5.5;
const RADIUS = 1.1;
/** mm from the ladder to the bend of the leaders, and from there to the labels. */
const CLEAR = 10;
const FAN = 8;

/**
 * The ladder of a derivation, scaled to fit; the scale is written on it. A ladder that runs sideways
 * has its labels above, upright; one that runs down has them on the right.
 */
export function ladderDrawing(derived: Derivation, display: LengthDisplay): Scene {
  const { piece, point: name, base, ladder } = derived;
  const { left, right, top, bottom } = pointBounds(ladder);
  const [wide, tall] = [right - left, bottom - top];
  const longest = Math.max(wide, tall);
  const scale = longest < SAME_PLACE ? 1 : DRAWN / longest;
  const at = ladder.map(({ x, y }) => point(x * scale, y * scale));
  const sideways = wide >= tall;
  const slots = spread(at.map(({ x, y }) => (sideways ? x : y)));
  const edge = sideways ? top * scale - CLEAR : right * scale + CLEAR;
  const drawn = ladder.map(({ size, x, y }, i) => {
    const own = at[i] ?? point(0, 0);
    const { outline } = sizeStyle(i, size === base);
    const slot = slots[i] ?? 0;
    const bend = sideways ? point(own.x, edge) : point(edge, own.y);
    const end = sideways ? point(slot, edge - FAN) : point(edge + FAN, slot);
    const off = CAP_MIDDLE * LABEL;
    const words = text(
      `${size}: dx ${showNumber(x, display)}, dy ${showNumber(y, display)}`,
      sideways ? point(end.x + off, end.y - 1.5) : point(end.x + 1.5, end.y + off),
      LABEL,
      {
        rotation: sideways ? -90 : 0,
        weight: size === base ? 'bold' : 'normal',
        color: outline.color,
      },
    );
    const shapes: readonly Shape[] = [
      circle('rung', own, RADIUS, { color: outline.color, width: 0.6 }),
      polyline('leader', [own, bend, end], { color: outline.color, width: 0.2 }),
      words,
    ];
    return { shapes, words };
  });
  return sheet(
    `${piece}.${name}, base ${base}, in ${UNIT_WORDS[display.unit]}`,
    `${enlarged(longest, scale)}; x to the side, y down`,
    [
      polyline('ladder', at, { color: SOFT_INK, width: 0.25 }),
      ...drawn.flatMap(({ shapes }) => shapes),
    ],
    drawn.map(({ words }) => words),
    at,
  );
}

/** How the drawing stands to the moves, of which the longest is given in mm. */
function enlarged(longest: number, scale: number): string {
  if (longest < SAME_PLACE) return 'the point lies in one place in all sizes';
  const times = trimmed(scale, 2);
  return times === '1' ? 'drawn in true size' : `drawn ${times} times as large`;
}

/** Places at least PITCH apart in the order of the given ones, and about their middle. */
function spread(wanted: readonly number[]): readonly number[] {
  const order = wanted
    .map((_, i) => i)
    .sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0) || a - b);
  const slots = wanted.map(() => 0);
  let free = -Infinity;
  for (const i of order) {
    slots[i] = Math.max(wanted[i] ?? 0, free);
    free = (slots[i] ?? 0) + PITCH;
  }
  const pushed = slots.reduce((sum, slot, i) => sum + slot - (wanted[i] ?? 0), 0) / slots.length;
  return slots.map((slot) => slot - pushed);
}

/** The shapes on a sheet of their own size, under the title. */
function sheet(
  title: string,
  note: string,
  shapes: readonly Shape[],
  labels: readonly TextShape[],
  at: readonly Point[],
): Scene {
  const box = joinBoxes([...labels.map(textBox), pointBounds(at)]);
  const head = MARGIN + 3 * TITLE;
  const offset = point(MARGIN - box.left, head - box.top);
  const room = Math.max(box.right - box.left, textWidth(title, TITLE), textWidth(note, LABEL));
  return {
    title,
    width: room + 2 * MARGIN,
    height: head + box.bottom - box.top + MARGIN + RADIUS,
    shapes: [
      text(title, point(MARGIN, MARGIN + TITLE), TITLE, { weight: 'bold' }),
      text(note, point(MARGIN, MARGIN + 2 * TITLE), LABEL, { color: SOFT_INK }),
      { kind: 'group', children: shapes, offset },
    ],
  };
}
