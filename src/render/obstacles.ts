/** What stands in the way of further words, as lines that nothing may cross. */
import type { Box } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { add, point } from '../geometry/point';
import type { Chord } from './chords';
import { chordsIn } from './chords';
import type { Shape } from './scene';
import { textBox } from './type';

/** mm between the lines across words: less than the smallest words are high. */
const ACROSS = 1.5;

/** The lines of shapes, and lines all across their words; `by` is where their zero lies. */
export function obstacles(shapes: readonly Shape[], by: Point = point(0, 0)): readonly Chord[] {
  return shapes.flatMap((shape): readonly Chord[] => {
    if (shape.kind === 'group')
      return obstacles(shape.children, add(by, shape.offset ?? point(0, 0)));
    if (shape.kind === 'text') return across(textBox({ ...shape, at: add(shape.at, by) }));
    return chordsIn([shape]).map(({ from, to }) => ({ from: add(from, by), to: add(to, by) }));
  });
}

function across({ left, top, right, bottom }: Box): readonly Chord[] {
  const count = Math.ceil((bottom - top) / ACROSS);
  return Array.from({ length: count + 1 }, (_, i) => {
    const y = top + ((bottom - top) * i) / count;
    return { from: point(left, y), to: point(right, y) };
  });
}
