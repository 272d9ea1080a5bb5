/** Which of many things may meet a box, found by boxes around several of them without asking each. */
import type { Box } from './bounds';
import { boxesMeet, joinBoxes } from './bounds';

/** How many things that follow each other one box is put around, and how many of these boxes the next. */
const BLOCK = 4;

/** Is told the places of things until it answers true; the answer then is true. */
type Visit = (near: Box, isEnough: (place: number) => boolean) => boolean;

/**
 * A search among things by their boxes: given a box, it tells the places in `things` of all whose own boxes
 * have a point in common with it, ascending. Things that follow each other should lie near each other, as the
 * stretches of an outline do; then a search that finds few takes log n steps.
 */
export function boxSearch<Thing>(
  things: readonly Thing[],
  boxOf: (thing: Thing) => Box,
): (near: Box) => readonly number[] {
  const visit = boxProbe(things, boxOf);
  return (near) => {
    const found: number[] = [];
    visit(near, (place) => found.push(place) < 0);
    return found;
  };
}

/**
 * As `boxSearch`, but tells whether something is true of the place of any thing whose box meets a given one, and
 * looks no further.
 */
export function boxProbe<Thing>(things: readonly Thing[], boxOf: (thing: Thing) => Box): Visit {
  const boxAt = (place: number): Box => boxOf(things[place] as Thing);
  const levels = levelsOf(things.length, boxAt);
  return (near, isEnough) => {
    /** Of a level of boxes, 0 that of the things themselves, those from `start` to before `end`. */
    const visit = (level: number, start: number, end: number): boolean => {
      const boxes = levels[level - 1];
      const last = Math.min(end, boxes?.length ?? things.length);
      for (let i = start; i < last; i++) {
        if (!boxesMeet(boxes?.[i] ?? boxAt(i), near)) continue;
        if (level === 0 ? isEnough(i) : visit(level - 1, i * BLOCK, (i + 1) * BLOCK)) return true;
      }
      return false;
    };
    return visit(levels.length, 0, BLOCK);
  };
}

/** Boxes around blocks of `count` boxes, boxes around blocks of these, and so on until one block is left. */
function levelsOf(count: number, boxAt: (place: number) => Box): readonly (readonly Box[])[] {
  if (count <= BLOCK) return [];
  const boxes = Array.from({ length: Math.ceil(count / BLOCK) }, (_, i) => {
    const size = Math.min(BLOCK, count - i * BLOCK);
    return joinBoxes(Array.from({ length: size }, (_, k) => boxAt(i * BLOCK + k)));
  });
  return [boxes, ...levelsOf(boxes.length, (place) => boxes[place] as Box)];
}
