/** A coarse map of ink, which answers for any box in a few steps. */
import { SPREAD, inParts } from './ink';
import type { Ink } from './ink';

/** mm. Ink counts for its whole cell, so a box may be taken for printed by this much too much. */
const CELL = 2.5;

/** Whether a box, by its sides, may have ink; never false where there is some. */
export type InkMap = (left: number, top: number, right: number, bottom: number) => boolean;

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
  const markBox = (left: number, top: number, right: number, bottom: number): void => {
    const first = column(left);
    const last = column(right);
    const lowest = row(bottom);
    for (let r = row(top); r <= lowest; r++) for (let c = first; c <= last; c++) mark(c, r);
  };
  for (const { left, top, right, bottom } of words) markBox(left, top, right, bottom);
  for (const { from, to } of chords) {
    const steps = Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / CELL);
    inParts({ from, to }, steps, (left, top, right, bottom) => {
      markBox(left - SPREAD, top - SPREAD, right + SPREAD, bottom + SPREAD);
    });
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
  return (left, top, right, bottom) => {
    if (left >= box.right || right <= box.left || top >= box.bottom || bottom <= box.top) {
      return false;
    }
    const c1 = column(left);
    const c2 = column(right) + 1;
    const r1 = row(top);
    const r2 = row(bottom) + 1;
    return sum(c2, r2) - sum(c1, r2) - sum(c2, r1) + sum(c1, r1) > 0;
  };
}

function clamped(index: number, most: number): number {
  return Math.max(0, Math.min(most, index));
}
