/** A small drawing of one point in all sizes: where it lies, with dx and dy written beside it. */
import { pointBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import type { Scene, Shape } from '../render/scene';
import { circle, polyline } from '../render/scene';
import { INK, SOFT_INK, sizeStyle } from '../render/size-style';
import { CAP_MIDDLE, text, textWidth } from '../render/type';
import type { LengthDisplay } from '../units';
import { UNIT_WORDS, showNumber } from '../units';
import type { Derivation } from './derivation';

/** mm. The longer side of the ladder, however small the moves are. */
const DRAWN = 90;
const MARGIN = 12;
const LABEL = 3.6;
const TITLE = 5;
const PITCH = 6;
const RADIUS = 1.1;
/** mm from the ladder to the column of figures. */
const LEADER = 34;

/** The ladder of a derivation, enlarged to fit; the scale is written on it. */
export function ladderDrawing(derived: Derivation, display: LengthDisplay): Scene {
  const { piece, point: name, base, ladder } = derived;
  const box = pointBounds(ladder);
  const longest = Math.max(box.right - box.left, box.bottom - box.top);
  const scale = longest < 1e-6 ? 1 : DRAWN / longest;
  const top = MARGIN + 3 * TITLE;
  const column = PITCH * (ladder.length + 1);
  const tall = Math.max((box.bottom - box.top) * scale, column);
  const drop = (tall - (box.bottom - box.top) * scale) / 2;
  const place = ({ x, y }: Point): Point =>
    point(MARGIN + 8 + (x - box.left) * scale, top + drop + (y - box.top) * scale);
  const figures = MARGIN + 8 + (box.right - box.left) * scale + LEADER;
  const rows = ladder.map(({ size, x, y }) => [
    size,
    showNumber(x, display),
    showNumber(y, display),
  ]);
  const wide = (i: number, head: string): number =>
    Math.max(textWidth(head, LABEL), ...rows.map((row) => textWidth(row[i] ?? '', LABEL)));
  const columns = [figures, figures + wide(0, 'size') + 6];
  columns.push((columns[1] ?? 0) + wide(1, 'dx') + 6);
  const level = (row: number): number => top + (tall - column) / 2 + PITCH * (row + 1);
  // Figures stand in the order of the points, so that no leader crosses another.
  const order = ladder
    .map((_, i) => i)
    .sort((a, b) => (ladder[a]?.y ?? 0) - (ladder[b]?.y ?? 0) || a - b);
  const title = `${piece}.${name}, base ${base}, in ${UNIT_WORDS[display.unit]}`;
  const note = `enlarged ${showNumber(scale, { unit: 'mm', fractions: false })} times`;
  return {
    title,
    width: Math.max((columns[2] ?? 0) + wide(2, 'dy'), textWidth(title, TITLE)) + 2 * MARGIN,
    height: top + tall + 2 * MARGIN,
    shapes: [
      text(title, point(MARGIN, MARGIN + TITLE), TITLE, { weight: 'bold' }),
      text(note, point(MARGIN, MARGIN + 2 * TITLE + 1), LABEL, { color: SOFT_INK }),
      ...axes(place(point(0, 0))),
      polyline('ladder', ladder.map(place), { color: SOFT_INK, width: 0.25 }),
      ...['size', 'dx', 'dy'].map((head, i) =>
        text(head, point(columns[i] ?? 0, level(-1) + CAP_MIDDLE * LABEL), LABEL, {
          color: SOFT_INK,
        }),
      ),
      ...order.flatMap((i, row): Shape[] => {
        const rung = ladder[i];
        if (rung === undefined) return [];
        const at = place(rung);
        const { outline } = sizeStyle(i, rung.size === base);
        const y = level(row);
        const bend = point(figures - 8, y);
        return [
          circle('rung', at, RADIUS, { color: outline.color, width: 0.6 }),
          polyline('leader', [at, bend, point(figures - 2, y)], {
            color: outline.color,
            width: 0.2,
          }),
          ...(rows[i] ?? []).map((cell, c) =>
            text(cell, point(columns[c] ?? 0, y + CAP_MIDDLE * LABEL), LABEL, {
              weight: rung.size === base ? 'bold' : 'normal',
              color: outline.color,
            }),
          ),
        ];
      }),
    ],
  };
}

/** Two short arrows from the base's place: x to the side, y down. */
function axes({ x, y }: Point): readonly Shape[] {
  const stroke = { color: INK, width: 0.3 };
  const reach = 7;
  return [
    polyline('axis', [point(x, y), point(x + reach, y)], stroke),
    polyline('axis', [point(x, y), point(x, y + reach)], stroke),
    text('x', point(x + reach + 0.8, y - 0.8), LABEL, { color: SOFT_INK }),
    text('y', point(x - 0.8, y + reach + LABEL), LABEL, { color: SOFT_INK, anchor: 'end' }),
  ];
}
