/** Which of many boxes meet another, found without asking each of them. */
import type { Box } from './bounds';
import { boxesMeet, joinBoxes } from './bounds';

/** Boxes in their order from `start` to before `end`, and the box around all of them. */
interface Branch {
  readonly box: Box;
  readonly start: number;
  readonly end: number;
  readonly halves: readonly Branch[];
}

/** Boxes that are asked one by one, since halving them again would take longer. */
const LEAF = 4;

/**
 * A search among boxes: given a box, it tells the places in `boxes` of all that have a point in common
 * with it, ascending. The list is halved in its own order, so boxes that follow each other should lie
 * near each other, as the stretches of an outline do; then a search that finds few takes log n steps.
 */
export function boxSearch(boxes: readonly Box[]): (near: Box) => readonly number[] {
  const root = branch(boxes, 0, boxes.length);
  return (near) => {
    const found: number[] = [];
    const search = ({ box, start, end, halves }: Branch): void => {
      if (!boxesMeet(box, near)) return;
      if (halves.length > 0) for (const half of halves) search(half);
      else for (let i = start; i < end; i++) if (boxesMeet(boxes[i] as Box, near)) found.push(i);
    };
    search(root);
    return found;
  };
}

/**
 * As `boxSearch`, but tells whether `holds` is true of the place of any box that meets a given one, and
 * looks no further.
 */
export function boxProbe(
  boxes: readonly Box[],
): (near: Box, holds: (place: number) => boolean) => boolean {
  const root = branch(boxes, 0, boxes.length);
  return (near, holds) => {
    const probe = ({ box, start, end, halves }: Branch): boolean => {
      if (!boxesMeet(box, near)) return false;
      if (halves.length > 0) return halves.some(probe);
      for (let i = start; i < end; i++)
        if (boxesMeet(boxes[i] as Box, near) && holds(i)) return true;
      return false;
    };
    return probe(root);
  };
}

function branch(boxes: readonly Box[], start: number, end: number): Branch {
  if (end - start <= LEAF)
    return { box: joinBoxes(boxes.slice(start, end)), start, end, halves: [] };
  const middle = (start + end) >> 1;
  const halves = [branch(boxes, start, middle), branch(boxes, middle, end)];
  return { box: joinBoxes(halves.map(({ box }) => box)), start, end, halves };
}
