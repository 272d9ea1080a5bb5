/** The plane: all pieces side by side at true scale, each size in a layer of its own. */
import type { Box } from '../geometry/bounds';
import { grownBox } from '../geometry/bounds';
import type { NestDrawing } from '../render/nest-drawing';
import type { Group, Shape } from '../render/scene';
import type { SheetSize } from '../render/sheet-layout';
import { drawnPieces } from '../render/sheet-layout';
import type { Arrangement } from '../render/side-by-side';
import { sizeIds } from '../render/size-id';
import { aloneStyle, sizeStyle } from '../render/size-style';
import { sizeWords, sizesDrawn } from '../render/captions';
import type { Ink } from './ink';
import { inkOf } from './ink';

/** A piece, or a block of words, that is to be laid on the plane. */
export interface PlanePart {
  readonly name: string;
  /** The shapes of each size, in the order of the sizes. */
  readonly sizes: readonly (readonly Shape[])[];
  /** What belongs to all sizes. */
  readonly common: readonly Shape[];
  readonly ink: Ink;
  /** Holds all ink, and some room around it. */
  readonly box: Box;
  /** What no join of sheets may cut, in the coordinates of the part. */
  readonly whole?: readonly Box[];
}

/** The layer of what belongs to all sizes. */
export const ALL_SIZES = 'All sizes: names, grain, folds';

/** The sizes as they are drawn together: by color and dash, or one alone by an unbroken line. */
export function drawnSizes({ sizes, baseSize }: NestDrawing): readonly SheetSize[] {
  const ids = sizeIds(sizes.map(({ label }) => label));
  return sizes.map((size, rank) => {
    const style = sizeStyle(rank, size.label === baseSize);
    return { ...size, id: ids[rank] ?? '', style: sizes.length > 1 ? style : aloneStyle(style) };
  });
}

/** Type size in mm of the sizes' line on a piece. */
const CAPTION = 9;

/** Every piece as a part; `drawing` says how large the labels of the sizes are. */
export function pieceParts(
  drawing: NestDrawing,
  sizes: readonly SheetSize[],
): readonly PlanePart[] {
  const words = sizesDrawn(drawing);
  // The ring is for laying drawings of single sizes over each other; on cloth it would be a drill hole.
  const drawn = drawnPieces({ ...drawing, stackPoint: '' }, sizes, { words, size: CAPTION });
  return drawn.map(({ name, sizes: shapes, common }) => part(name, shapes, common));
}

/** mm that keep a line from the edge of a sheet, where it would be cut away or overlooked. */
const CLEAR = 3;

/** A part with the ink of its shapes. */
export function part(name: string, sizes: PlanePart['sizes'], common: readonly Shape[]): PlanePart {
  const ink = inkOf([...sizes.flat(), ...common]);
  return { name, sizes, common, ink, box: grownBox(ink.box, CLEAR) };
}

/** One group a size, the base on top of the others, and over them the group of all sizes. */
export function planeShapes(
  { parts, zeros }: Arrangement<PlanePart>,
  sizes: readonly SheetSize[],
): readonly Group[] {
  const placed = (shapesOf: (part: PlanePart) => readonly Shape[]): readonly Group[] =>
    parts.map((part, i) => ({
      kind: 'group',
      offset: zeros[i] ?? { x: 0, y: 0 },
      children: shapesOf(part),
    }));
  const drawn = sizes.map((size, i) => ({
    base: size.style.base,
    group: {
      kind: 'group' as const,
      layer: sizeWords(size),
      children: placed((part) => part.sizes[i] ?? []),
    },
  }));
  return [
    ...drawn.filter(({ base }) => !base).map(({ group }) => group),
    ...drawn.filter(({ base }) => base).map(({ group }) => group),
    { kind: 'group', layer: ALL_SIZES, children: placed(({ common }) => common) },
  ];
}
