/** Where shapes leave ink: asked box by box, to print no sheet for nothing. */
import type { Box } from '../geometry/bounds';
import { boxesOverlap, grownBox, joinBoxes, pointBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { add, point } from '../geometry/point';
import type { Chord } from '../render/chords';
import { chordsOf, clearOf, flattened } from '../render/chords';
import type { Shape } from '../render/scene';
import { shapeBox } from '../render/shape-box';

/** Lines as chords and words as boxes. */
export interface Ink {
  readonly chords: readonly Chord[];
  readonly words: readonly Box[];
  readonly box: Box;
  /** Whether no chord has a point in a box. */
  readonly isClear: (box: Box) => boolean;
}

/** mm. Half of the widest line, and what a curve may lie beside its chords. */
export const SPREAD = 0.75;

/** The ink of shapes at their places; the box around it is larger by `SPREAD`. */
export function inkOf(shapes: readonly Shape[]): Ink {
  const chords: Chord[] = [];
  const words: Box[] = [];
  collect(shapes, point(0, 0), chords, words);
  const ends = pointBounds(chords.flatMap(({ from, to }) => [from, to]));
  let clear: Ink['isClear'] | undefined;
  return {
    chords,
    words,
    box: grownBox(joinBoxes([ends, ...words]), SPREAD),
    isClear: (box) => (clear ??= clearOf(chords))(box),
  };
}

/** Marks a chord part by part, each by the sides of its box. */
export function inParts(
  { from, to }: Chord,
  parts: number,
  mark: (left: number, top: number, right: number, bottom: number) => void,
): void {
  let { x: x1, y: y1 } = from;
  for (let k = 1; k <= parts; k++) {
    const x2 = from.x + ((to.x - from.x) * k) / parts;
    const y2 = from.y + ((to.y - from.y) * k) / parts;
    mark(Math.min(x1, x2), Math.min(y1, y2), Math.max(x1, x2), Math.max(y1, y2));
    x1 = x2;
    y1 = y2;
  }
}

function collect(shapes: readonly Shape[], zero: Point, chords: Chord[], words: Box[]): void {
  for (const shape of shapes) {
    if (shape.kind === 'group') {
      collect(shape.children, add(zero, shape.offset ?? point(0, 0)), chords, words);
    } else if (shape.kind === 'text') {
      words.push(shapeBox({ ...shape, at: add(shape.at, zero) }));
    } else {
      for (const segment of shape.segments) {
        chords.push(...chordsOf([flattened([segment]).map((p) => add(p, zero))]));
      }
    }
  }
}

/** Whether anything is printed in a box. */
export function hasInk({ isClear, words, box: all }: Ink, box: Box): boolean {
  if (!boxesOverlap(all, box)) return false;
  return words.some((word) => boxesOverlap(word, box)) || !isClear(grownBox(box, SPREAD));
}
