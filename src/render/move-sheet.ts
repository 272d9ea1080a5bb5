/** The moves of a range as arrows: every piece in its base size, side by side. */
import { point } from '../geometry/point';
import { counted } from '../table/counted';
import { trimmed } from '../units';
import { legend, notes, titleBlock } from './furniture';
import type { MovedPoints } from './move-arrows';
import { BASE_LINE, TO_LARGER, TO_SMALLER, arrowPoints, moveArrows } from './move-arrows';
import type { Group, Scene } from './scene';
import { compact, endOf } from './side-by-side';
import { heightOf, placedAt, widthOf } from './sketch';

/** mm around the sheet, between pieces, and between them and the words. */
const [MARGIN, BETWEEN, APART] = [40, 40, 30];
/** mm. A sheet is no narrower, so that its words have room. */
const NARROW = 500;
/** mm. About as long the longest arrow is drawn where nobody says how long. */
const LONG = 80;

/** What a sheet of moves is drawn from. */
export interface MoveDrawing {
  readonly title: string;
  /** Labels, smallest first, and the rank of the base. */
  readonly sizes: readonly string[];
  readonly base: number;
  readonly pieces: readonly MovedPoints[];
  /** How many times as long as it is each move is drawn; a whole number that suits the longest if absent. */
  readonly times?: number | undefined;
}

/** The sheet; what its arrows mean stands below it. */
export function moveSheet(drawing: MoveDrawing): Scene {
  const { title, sizes, base, pieces, times = suiting(pieces) } = drawing;
  const sketches = pieces.map((moved) => moveArrows(moved, times));
  const unnamed = sketches.reduce((sum, sketch) => sum + sketch.unnamed, 0);
  const key = legend([
    { words: `size ${sizes[base] ?? ''}, base`, stroke: BASE_LINE, base: true },
    ...(base < sizes.length - 1
      ? [{ words: `to ${sizes.at(-1) ?? ''}, the largest`, stroke: TO_LARGER, base: false }]
      : []),
    ...(base > 0
      ? [{ words: `to ${sizes[0] ?? ''}, the smallest`, stroke: TO_SMALLER, base: false }]
      : []),
  ]);
  const packed = compact([...sketches, key], { gap: BETWEEN });
  const width = Math.max(NARROW, Math.ceil(endOf(packed).right));
  const long = times === 1 ? 'as long as it is' : `${trimmed(times, 3)} times as long as it is`;
  const head = titleBlock(
    title,
    `Moves from size ${sizes[base] ?? ''}, each drawn ${long}.`,
    width,
  );
  const below = notes(
    [
      'An arrow leads from where a point lies in the base to its move in the last size; a ring on its way is a ' +
        'size between. A bend is a step unlike the one before it. A lone ring is a point that stays.',
      times === 1
        ? 'Pieces and arrows are drawn at true size.'
        : `The pieces are drawn at true size. An arrow is ${trimmed(times, 3)} times as long as its move.`,
      ...(unnamed === 0
        ? []
        : [`For ${counted(unnamed, 'name')} there is no room; grade-rules.csv has all points.`]),
    ],
    width,
  );
  const top = MARGIN + Math.ceil(heightOf(head)) + APART;
  const belowTop = top + Math.ceil(endOf(packed).bottom) + APART;
  const placed = packed.parts.map(({ shapes }, i): Group => {
    const zero = packed.zeros[i] ?? point(0, 0);
    const name = pieces[i]?.piece.plan.name;
    return {
      kind: 'group',
      offset: point(MARGIN + zero.x, top + zero.y),
      children: shapes,
      ...(name === undefined ? {} : { data: { piece: name } }),
    };
  });
  return {
    title: `${title}: moves from size ${sizes[base] ?? ''}, drawn ${long}`,
    width: Math.max(width, widthOf(head)) + 2 * MARGIN,
    height: belowTop + Math.ceil(heightOf(below)) + MARGIN,
    shapes: [
      placedAt(head, point(MARGIN, MARGIN)),
      ...placed,
      placedAt(below, point(MARGIN, belowTop)),
    ],
  };
}

/** At least once as long. */
function suiting(pieces: readonly MovedPoints[]): number {
  const longest = Math.max(
    0,
    ...pieces.flatMap((moved) =>
      arrowPoints(moved).flatMap(({ moves }) => moves.map(({ x, y }) => Math.hypot(x, y))),
    ),
  );
  return longest === 0 ? 1 : Math.max(1, Math.round(LONG / longest));
}
