/** One piece on a sheet: the lines of every size with their labels, and its common words. */
import type { Box } from '../geometry/bounds';
import { boxHolds, boxesOverlap, joinBoxes } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { pointOf } from '../pattern/piece';
import { grainArrow } from './arrows';

import { chordsIn, isClear } from './chords';
import type { LadderCorner } from './corner-ladders';
import { ladderCorners } from './corner-ladders';
import { lineSizes } from './line-sizes';
import type { LinesShown } from './lines-shown';
import type { Ladder } from './ladder';
import { LADDER_TYPE, ladder } from './ladder';
import type { NestDrawing } from './nest-drawing';
import type { NestedPiece } from './nested-piece';
import { pieceLines, pieceMarks } from './piece-lines';
import { pieceWords } from './piece-words';
import { obstacles } from './obstacles';
import type { RowSide } from './row-frame';
import type { Shape } from './scene';
import { shapeBox } from './shape-box';
import { nearWords, sharedLines } from './shared-lines';
import type { SizeMarks } from './size-marks';
import { sizeMarks } from './size-marks';
import type { SizedPiece } from './sized-piece';
import type { TextLine } from './sketch';
import { stackMark } from './stack-mark';

/** Type size of the sizes at marks, as a share of that at corners. No tolerance: a look. */
const MARK_TYPE = 0.4;
/** mm, at least. No tolerance: a look. */
const LEAST_TYPE = 2.6;
/** mm that leaders of a ladder keep from the labels of marks. */
const ASIDE = 3;

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
  const type = Math.max(LEAST_TYPE, MARK_TYPE * labelType);
  const corners = nested.sizes.length < 2 ? [] : ladderCorners(nested);
  const shared = sharedLines(nested, type);
  const marks = marksOfSizes(nested, type, corners);
  const around = {
    ...nested,
    box: joinBoxes([nested.box, marks.box]),
    chords: [...nested.chords, ...chordsIn([...marks.sizes.flat(), ...marks.common])],
  };
  const named = shared.shapes.filter(({ kind }) => kind === 'text').map(shapeBox);
  const words = pieceWords(around, caption, drawing, [...marks.inside, ...named]);
  const ladders = laddersOf(
    nested,
    // A scale labels its side itself.
    corners.filter((one) => corners.length === 1 || !marks.scaled.includes(sideLeft(one))),
    labelType,
    [...marks.sizes.flat(), ...marks.common, ...words.shapes],
  );
  const common = [
    ...shared.shapes,
    ...marks.common,
    ...stackMark(nested, stackPoint),
    ...(nested.grain.shared ? grainArrow(nested.grain.shared) : []),
    ...words.shapes,
  ];
  const led = ladders.flatMap(({ rungs }) => rungs.flat());
  const inWay = [...marks.sizes.flat(), ...common, ...led];
  const near = nearWords(nested, type, drawing.display.unit, inWay);
  const onLines = lineSizes(nested, type, obstacles([...inWay, ...near]));
  return {
    name: nested.reference.plan.name,
    sizes: nested.sizes.map((size, i) => [
      ...pieceLines(size, nested.lines, shared.marks[i]),
      ...(onLines[i] ?? []),
      ...(marks.sizes[i] ?? []),
      ...ownGrain(nested, i),
      ...ladders.flatMap(({ rungs }) => rungs[i] ?? []),
    ]),
    common: [...common, ...near],
    box: joinBoxes([around.box, words.box, ...marks.inside, ...ladders.map(({ box }) => box)]),
  };
}

/** The marks of a size alone need no names. Ladders keep the stretch along which their leaders leave. */
function marksOfSizes(
  nested: NestedPiece,
  type: number,
  corners: readonly LadderCorner[],
): SizeMarks {
  if (nested.sizes.length < 2) {
    const sizes = nested.sizes.map((size) => pieceMarks(size, nested.lines));
    return { sizes, common: [], box: nested.box, inside: [], scaled: [] };
  }
  return sizeMarks(nested, type, (side) =>
    corners
      .filter((corner) => sideLeft(corner) === side)
      .map(({ name, leave }) => {
        const places = nested.sizes.map((size) => {
          const { x, y } = cornerAt(size, name, nested.lines);
          return leave === 'sideways' ? y : x;
        });
        return {
          from: Math.min(...places) - ASIDE,
          to: Math.max(...places) + ASIDE,
          stays: corners.length === 1,
        };
      }),
  );
}

function sideLeft({ leave, side }: LadderCorner): RowSide {
  return leave === 'sideways' ? side : leave;
}

function ownGrain({ sizes, grain }: NestedPiece, i: number): readonly Shape[] {
  const line = grain.own[i];
  return line === undefined ? [] : grainArrow(line, sizes[i]?.style.outline.color);
}

/**
 * A size alone needs no label at its line. On a small piece one ladder may be in another's way. Where
 * `others` beside the nest, marks and words, leave no room for a ladder, it stands beyond them.
 */
function laddersOf(
  nested: NestedPiece,
  corners: readonly LadderCorner[],
  type: number,
  others: readonly Shape[],
): readonly Ladder[] {
  const words = others.filter(({ kind }) => kind === 'text').map(shapeBox);
  const beside = others.map(shapeBox).filter((box) => !boxHolds(nested.box, box));
  const beyond = joinBoxes([nested.box, ...beside]);
  const ladders: Ladder[] = [];
  for (const corner of corners) {
    const rungs = nested.sizes.map((size) => ({
      label: size.label,
      style: size.style,
      at: cornerAt(size, corner.name, nested.lines),
    }));
    const near = ladder(rungs, corner, nested.box, type);
    const isNear = !beside.some((box) => boxesOverlap(box, near.box));
    const next = isNear ? near : ladder(rungs, corner, beyond, type);
    const chords = chordsIn(next.rungs.flat());
    const isClearOfWords = words.every((box) => isClear(box, chords));
    // Where the only other corner is in the way of words too, one ladder is worth more than they are.
    const isLast = ladders.length === 0 && corner === corners.at(-1);
    if (!isClearOfWords && !isLast) continue;
    if (!ladders.some(({ box }) => boxesOverlap(box, next.box))) ladders.push(next);
  }
  return ladders;
}

/** The corner of the line that is shown. */
function cornerAt({ piece, cut }: SizedPiece, name: string, lines: LinesShown): Point {
  return (lines === 'net' ? undefined : cut?.corners.get(name)) ?? pointOf(piece, name);
}
