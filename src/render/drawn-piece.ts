/** One piece on a sheet: the lines of every size with their labels, and its common words. */
import type { Box } from '../geometry/bounds';
import { boxesOverlap, joinBoxes } from '../geometry/bounds';
import { pointOf } from '../pattern/piece';
import { grainArrow } from './arrows';
import { ladderCorners } from './corner-ladders';
import type { Ladder } from './ladder';
import { LADDER_TYPE, ladder } from './ladder';
import type { NestDrawing } from './nest-drawing';
import type { NestedPiece } from './nested-piece';
import { pieceLines } from './piece-lines';
import { pieceWords } from './piece-words';
import type { Shape } from './scene';
import type { TextLine } from './sketch';
import { stackMark } from './stack-mark';

/** All in the coordinates of the piece. */
export interface DrawnPiece {
  readonly name: string;
  /** The shapes of each size, in the order of the sizes. */
  readonly sizes: readonly (readonly Shape[])[];
  readonly common: readonly Shape[];
  readonly box: Box;
}

/** `caption` says on the piece which sizes it shows. */
export function drawnPiece(
  nested: NestedPiece,
  caption: TextLine,
  drawing: Pick<NestDrawing, 'title' | 'display' | 'stackPoint' | 'labelType'>,
): DrawnPiece {
  const { stackPoint, labelType = LADDER_TYPE } = drawing;
  const words = pieceWords(nested, caption, drawing);
  const ladders = laddersOf(nested, labelType);
  return {
    name: nested.reference.plan.name,
    sizes: nested.sizes.map((size, i) => [
      ...pieceLines(size, nested.lines),
      ...ownGrain(nested, i),
      ...ladders.flatMap(({ rungs }) => rungs[i] ?? []),
    ]),
    common: [
      ...stackMark(nested, stackPoint),
      ...(nested.grain.shared ? grainArrow(nested.grain.shared) : []),
      ...words.shapes,
    ],
    box: joinBoxes([nested.box, words.box, ...ladders.map(({ box }) => box)]),
  };
}

function ownGrain({ sizes, grain }: NestedPiece, i: number): readonly Shape[] {
  const line = grain.own[i];
  return line === undefined ? [] : grainArrow(line, sizes[i]?.style.outline.color);
}

/** A size alone needs no label at its line. On a small piece one ladder may be in another's way. */
function laddersOf(nested: NestedPiece, type: number): readonly Ladder[] {
  if (nested.sizes.length < 2) return [];
  const ladders: Ladder[] = [];
  for (const corner of ladderCorners(nested)) {
    const rungs = nested.sizes.map(({ label, style, piece, cut }) => ({
      label,
      style,
      at:
        (nested.lines === 'net' ? undefined : cut?.corners.get(corner.name)) ??
        pointOf(piece, corner.name),
    }));
    const next = ladder(rungs, corner, nested.box, type);
    if (!ladders.some(({ box }) => boxesOverlap(box, next.box))) ladders.push(next);
  }
  return ladders;
}
