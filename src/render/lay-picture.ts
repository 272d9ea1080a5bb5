/** A small picture of a lay with the words below it. */
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import type { Lay } from '../fabric/lay';
import { clothBox, clothShapes, edgeWords, foldShapes } from './lay-cloth';
import { smallPiece } from './lay-piece';
import type { Shape } from './scene';
import type { Sketch } from './sketch';
import { sketchOf } from './sketch';
import { paragraph } from './furniture';

/** mm on the cloth for one on paper: two widths of open cloth have room beside each other on A4. */
const REDUCTION = 24;
const EDGE_WORDS = 2;
const EDGE = 1.5;
const CAPTION = 2.5;
const BETWEEN = 2;
/** mm across that a caption has, however narrow the cloth is. */
const LEAST_CAPTION = 42;

/** A lay with what is told of it. */
export interface PicturedLay {
  readonly lay: Lay;
  /** mm of cloth that is bought. */
  readonly bought: number;
  /** The first is set in bold type. */
  readonly captions: readonly string[];
}

/** The picture, its left edge at 0. */
export function layPicture({ lay, bought, captions }: PicturedLay): Sketch {
  const table = { lay, bought };
  const box = clothBox(table);
  const left = 2 * EDGE_WORDS;
  const toPaper = ({ x, y }: Point): Point =>
    point(left + (x - box.left) / REDUCTION, y / REDUCTION);
  const shapes: Shape[] = [
    ...clothShapes(table, toPaper),
    ...edgeWords(table, toPaper, EDGE_WORDS, EDGE),
    ...lay.placements.flatMap((placement) => smallPiece(placement, toPaper)),
    ...foldShapes(table, toPaper),
  ];
  const across = (box.right - box.left) / REDUCTION + 2 * left;
  const width = Math.max(LEAST_CAPTION, across);
  let y = box.bottom / REDUCTION + BETWEEN;
  for (const [i, words] of captions.entries()) {
    const set = paragraph(words, CAPTION, width, y, i === 0 ? 'bold' : 'normal');
    shapes.push(...set.shapes);
    y = set.bottom;
  }
  return sketchOf(shapes);
}
