/** What is drawn once on a piece for all its sizes: its words, the grainline, the fold. */
import type { Box } from '../geometry/bounds';
import { joinBoxes, pointBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { add, between, point } from '../geometry/point';
import type { LengthDisplay } from '../units';
import { grainlines } from './arrows';
import { centerLines } from './center-line';
import { roomIn } from './room';
import type { NestedPiece } from './nested-piece';
import { markPoints } from './piece-lines';
import type { Line, Sketch } from './sketch';
import { block, blocks, leftOf } from './sketch';
import { cuttings, spelled } from './wording';
import { zipWords } from './zip-words';

/** Type sizes, mm. */
const WORDS = 8;
const NAME = 16;

/** The common shapes of a piece; `sizes` is the line that says which sizes it shows. */
export function pieceWords(nested: NestedPiece, sizes: Line, display: LengthDisplay): Sketch {
  const { plan } = nested.reference;
  const room = roomIn(nested);
  const home = commonBox(nested);
  const width = home.right - home.left;
  const height = home.bottom - home.top;
  const at = (across: number, down: number): Point =>
    point(home.left + across * width, home.top + down * height);
  // A waistband must not give, so its length lies along the grain.
  const isBand = plan.part === 'waistband' && width > height;

  const title: readonly Line[] = [
    { words: spelled(plan.name), size: NAME, weight: 'bold' },
    sizes,
    ...cuttings(plan).map((words) => ({ words, size: WORDS + 1 })),
  ];
  const centers = centerLines(nested, room, WORDS);
  const name = room.put(blocks(title), isBand ? at(0.5, 0.5) : at(0.5, 0.47));
  const hasGrain = plan.marks.some((mark) => mark.name === 'grainline');
  const grain = hasGrain
    ? undefined
    : isBand
      ? room.put(grainlines(width, 'across', WORDS), at(0.77, 0.5))
      : room.put(grainlines(height, 'down', WORDS), at(0.5, 0.77));
  const levels = plan.marks
    .filter((mark) => mark.name === 'hip-line')
    .map((mark) => {
      const path = markPoints(nested.reference, mark);
      const [start = at(0, 0), end = start] = [path[0], path.at(-1)];
      const above = add(between(start, end, 0.72), point(0, -WORDS));
      return room.put(blocks([{ words: spelled(mark.name), size: WORDS - 1 }]), above);
    });

  const zip = zipWords(nested, display);
  const beside = zip === undefined ? [] : [zip];
  // A piece too small for its name still gets one.
  if (name === undefined) {
    const nest = joinBoxes([nested.box, ...beside.map(({ box }) => box)]);
    beside.push(leftOf(nest, block(title), at(0.5, 0.5).y));
  }
  return {
    shapes: [
      ...centers,
      ...[name, grain, ...levels].filter((placed) => placed !== undefined),
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
