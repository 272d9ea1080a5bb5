/** What is drawn once on a piece for all its sizes: its words, the grainline, the fold. */
import type { Box } from '../geometry/bounds';
import { joinBoxes, pointBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { add, between, point } from '../geometry/point';
import { grainlines } from './arrows';
import { centerLines } from './center-line';
import { roomIn } from './room';
import { shapeBox } from './shape-box';
import { stackMark } from './stack-mark';
import type { NestedPiece } from './nested-piece';
import type { NestDrawing } from './nest-drawing';
import { detailBlocks, nameBlocks } from './piece-label';
import { markPoints } from './piece-lines';
import type { Line, Sketch } from './sketch';
import { blocks, leftOf } from './sketch';
import { spelled } from './captions';
import { zipWords } from './zip-words';

/** Type sizes, mm. */
const WORDS = 8;

/** The common shapes of a piece; `sizes` is the line that says which sizes it shows. */
export function pieceWords(
  nested: NestedPiece,
  sizes: Line,
  drawing: Pick<NestDrawing, 'title' | 'display' | 'stackPoint'>,
): Sketch {
  const { plan } = nested.reference;
  const room = roomIn(nested);
  for (const ring of stackMark(nested, drawing.stackPoint)) room.reserve(shapeBox(ring));
  const home = commonBox(nested);
  const width = home.right - home.left;
  const height = home.bottom - home.top;
  const at = (across: number, down: number): Point =>
    point(home.left + across * width, home.top + down * height);
  // A waistband must not give, so its length lies along the grain.
  const isBand = plan.part === 'waistband' && width > height;
  // One that is folded along its middle has room above and below.
  const level = plan.marks.some((mark) => mark.name === 'fold-line') ? 0.25 : 0.5;

  const names = nameBlocks(nested, sizes);
  const centers = centerLines(nested, room, WORDS);
  const details = detailBlocks(nested, drawing);
  const forName = { choices: names, near: isBand ? at(0.5, 1 - level) : at(0.5, 0.47) };
  const forDetails = { choices: details, near: isBand ? at(0.3, level) : at(0.5, 0.64) };
  const [name, told] = room.putTogether([forName, ...(details.length > 0 ? [forDetails] : [])]) ?? [
    room.put(forName.choices, forName.near),
    room.put(forDetails.choices, forDetails.near),
  ];
  const hasGrain = plan.marks.some((mark) => mark.name === 'grainline');
  const grain = hasGrain
    ? undefined
    : isBand
      ? room.put(grainlines(width, 'across', WORDS), at(0.77, level))
      : room.put(grainlines(height, 'down', WORDS), at(0.5, 0.77));
  const levels = plan.marks
    .filter((mark) => mark.name === 'hip-line')
    .map((mark) => {
      const path = markPoints(nested.reference, mark);
      const [start = at(0, 0), end = start] = [path[0], path.at(-1)];
      const above = add(between(start, end, 0.72), point(0, -WORDS));
      return room.put(blocks([{ words: spelled(mark.name), size: WORDS - 1 }]), above);
    });

  const zip = zipWords(nested, drawing.display);
  const beside = zip === undefined ? [] : [zip];
  // A piece too small for its words still gets them.
  const missing = [
    ...(name === undefined ? names.slice(0, 1) : []),
    ...(told === undefined ? details.slice(0, 1) : []),
  ];
  for (const sketch of missing) {
    const nest = joinBoxes([nested.box, ...beside.map(({ box }) => box)]);
    beside.push(leftOf(nest, sketch, at(0.5, 0.5).y));
  }
  return {
    shapes: [
      ...centers,
      ...[name, told, grain, ...levels].filter((placed) => placed !== undefined),
      ...beside.flatMap(({ shapes }) => shapes),
    ],
    box: joinBoxes(beside.map(({ box }) => box)),
  };
}

/** What the boxes of all sizes have in common: the part of the sheet where words belong. */
function commonBox({ outlines }: NestedPiece): Box {
  return outlines.map(pointBounds).reduce((a, b) => ({
    left: Math.max(a.left, b.left),
    top: Math.max(a.top, b.top),
    right: Math.min(a.right, b.right),
    bottom: Math.min(a.bottom, b.bottom),
  }));
}
