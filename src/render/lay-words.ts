/** Words inside a piece on a drawn lay, where none of its cut line runs through them. */
import type { Box } from '../geometry/bounds';
import { grownBox, pointBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import { chordsOf, isClear, isInside } from './chords';
import type { Shape } from './scene';
import type { TextLine, Sketch } from './sketch';
import { block, moved, widthOf, heightOf } from './sketch';

/** Type sizes in mm: the name of a piece, and what is told below it. No tolerance: a look. */
const NAME = 4.2;
const DETAIL = 3.2;
/** mm that words keep from the cut line. */
export const CLEARANCE = 1.2;
/** The same for a word that stands for others. */
const LEAST_CLEARANCE = 0.3;
/** A piece narrower than this, in mm, has its words along it in one line. */
const NARROW = 25;

/** Shares of the type size that are tried, and of the width and height where the middle goes. */
const LEAST = 0.4;
const SIZES = [1, 0.85, 0.7, 0.55, LEAST];
const PLACES = [0.5, 0.45, 0.55, 0.4, 0.6, 0.35, 0.65, 0.3, 0.7, 0.25, 0.75, 0.2, 0.8];

/** Words at their place on the sheet, and the box that they take there, in mm. */
export interface Words {
  readonly shapes: readonly Shape[];
  readonly box: Box;
}

/**
 * The first of `lines` large and the others below it, near the middle of the piece and as large as
 * they fit; so many places are tried across and down. Where they fit nowhere, the `short` word stands for
 * them; one that does not fit either stands in the middle, in the smallest size.
 */
export function wordsInside(
  lines: readonly string[],
  corners: readonly Point[],
  most = PLACES.length,
  short?: string,
): Words {
  const places = PLACES.slice(0, most);
  const box = pointBounds(corners);
  const ring = [...corners, ...corners.slice(0, 1)];
  const chords = chordsOf([ring]);
  const at = (across: number, down: number): Point =>
    point(box.left + across * (box.right - box.left), box.top + down * (box.bottom - box.top));
  const fitting = (told: readonly string[], clearance: number): Words | undefined => {
    for (const share of SIZES) {
      const sketch = sketchOf(told, share, box);
      for (const down of places) {
        for (const across of places) {
          const placed = centered(sketch, at(across, down));
          const { x, y } = at(across, down);
          const free = grownBox(placed.box, clearance);
          if (isInside(x, y, ring) && isClear(free, chords)) return placed;
        }
      }
    }
    return undefined;
  };
  const named = fitting(lines, CLEARANCE);
  if (named !== undefined) return named;
  const last = short === undefined ? lines : [short];
  return fitting(last, LEAST_CLEARANCE) ?? centered(sketchOf(last, LEAST, box), at(0.5, 0.5));
}

function sketchOf(lines: readonly string[], share: number, piece: Box): Sketch {
  const narrow = piece.right - piece.left < NARROW && piece.bottom - piece.top > NARROW;
  const typed = (words: string, size: number): TextLine => ({
    words,
    size: share * size,
    weight: size === NAME ? 'bold' : 'normal',
  });
  return narrow
    ? block([typed(lines.join(', '), NAME)], -90)
    : block(lines.map((words, i) => typed(words, i === 0 ? NAME : DETAIL)));
}

function centered(sketch: Sketch, { x, y }: Point): Words {
  return moved(sketch, point(x - widthOf(sketch) / 2, y - heightOf(sketch) / 2));
}
