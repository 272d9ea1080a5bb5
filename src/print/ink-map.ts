/** A coarse map of ink, which answers for any box in a few steps. */
import type { Box } from '../geometry/bounds';
import { SPREAD } from './ink';
import type { Ink } from './ink';

/** mm. Ink counts for its whole cell, so a box may be taken for printed by this much too much. */
const CELL = 2.5;

/** Whether a box may have ink; never false where there is some. */
export type InkMap = (box: Box) => boolean;

/** Sums of the cells above and left of each corner answer for a box by its four corners. */
export function inkMap({ chords, words, box }: Ink): InkMap {
  const columns = Math.ceil((box.right - box.left) / CELL) + 1;
  const rows = Math.ceil((box.bottom - box.top) / CELL) + 1;
  const stride = columns + 1;
  const sums = new Uint32Array(stride * (rows + 1));
  const column = (x: number): number => clamped(Math.floor((x - box.left) / CELL), columns - 1);
  const row = (y: number): number => clamped(Math.floor((y - box.top) / CELL), rows - 1);
  const mark = (c: number, r: number): void => {
    sums[(r + 1) * stride + c + 1] = 1;
  };
  const markBox = ({ left, top, right, bottom }: Box): void => {
    const [first, last] = [column(left), column(right)];
    const lowest = row(bottom);
    for (let r = row(top); r <= lowest; r++) for (let c = first; c <= last; c++) mark(c, r);
  };
  for (const word of words) markBox(word);
  for (const { from, to } of chords) {
    const steps = Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / CELL);
    let [x1, y1] = [from.x, from.y];
    for (let k = 1; k <= steps; k++) {
      const x2 = from.x + ((to.x - from.x) * k) / steps;
      const y2 = from.y + ((to.y - from.y) * k) / steps;
      markBox({
        left: Math.min(x1, x2) - SPREAD,
        right: Math.max(x1, x2) + SPREAD,
        top: Math.min(y1, y2) - SPREAD,
        bottom: Math.max(y1, y2) + SPREAD,
      });
      [x1, y1] = [x2, y2];
    }
  }
  for (let r = 1; r <= rows; r++) {
    let inRow = 0;
    for (let c = 1; c <= columns; c++) {
      const i = r * stride + c;
      inRow += sums[i] ?? 0;
      sums[i] = inRow + (sums[i - stride] ?? 0);
    }
  }
  const sum = (c: number, r: number): number => sums[r * stride + c] ?? 0;
  return ({ left, top, right, bottom }) => {
    if (left >= box.right || right <= box.left || top >= box.bottom || bottom <= box.top) {
      return false;
    }
    const [c1, c2, r1, r2] = [column(left), column(right) + 1, row(top), row(bottom) + 1];
    return sum(c2, r2) - sum(c1, r2) - sum(c2, r1) + sum(c1, r1) > 0;
  };
}

function clamped(index: number, most: number): number {
  return Math.max(0, Math.min(most, index));
}
