/** The layout common to all sheets: title on top, the pieces and the furniture packed below it, notes. */
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import type { DrawnSize, NestDrawing } from './nest-drawing';
import { linesShown } from './nest-drawing';
import { facts, legend, notes, testSquares, titleBlock } from './furniture';
import { nestedPiece } from './nested-piece';
import type { DrawnPiece } from './drawn-piece';
import { drawnPiece } from './drawn-piece';
import type { Group, Scene, Shape } from './scene';
import type { SizeStyle } from './size-style';
import { keyEntries } from './size-style';
import type { Boxed } from './side-by-side';
import { compact, endOf } from './side-by-side';
import type { TextLine } from './sketch';
import { heightOf, placedAt, widthOf } from './sketch';
import { linesNotes, sheetFacts, sizeWords, TOILE } from './captions';

/** One size as it appears on a sheet. */
export interface SheetSize extends DrawnSize {
  /** Identifier of its group. */
  readonly id: string;
  readonly style: SizeStyle;
}

/** mm around the sheet, and between its parts. */
const MARGIN = 40;
const BETWEEN = 20;
/** mm between what is packed and the words above and below it. */
const APART = 30;
/** mm. What margins and words take about, which speaks for a sheet that is not too wide. */
const AROUND = { width: 2 * MARGIN, height: 220 };
/** mm. No sheet is packed more narrowly, so that a piece stands beside another. */
const NARROW = 800;
/** mm. Widths to which the parts of a sheet are packed. */
const WIDTHS = Array.from({ length: 25 }, (_, i) => NARROW + 50 * i);

/** A sheet of the sizes given; `caption` is what each piece says about them. */
export function sheet(
  drawing: NestDrawing,
  sizes: readonly SheetSize[],
  subtitle: string,
  caption: TextLine,
): Scene {
  const pieces = drawnPieces(drawing, sizes, caption);
  const furniture = [
    legend(keyEntries(sizes, linesShown(drawing) === 'both')),
    facts(sheetFacts(drawing)),
    testSquares(),
  ];
  const parts: readonly Boxed[] = [...pieces, ...furniture];
  const packed = compact(parts, {
    gap: BETWEEN,
    widths: [...WIDTHS, Math.max(NARROW, ...parts.map(widthOf))],
    around: AROUND,
  });
  // One more millimeter lets every zero move to a whole one.
  const width = Math.ceil(endOf(packed).right) + 1;
  const title = titleBlock(drawing.title, subtitle, width);
  const small = notes([...linesNotes(drawing, sizes.length), TOILE], width);
  const top = MARGIN + Math.ceil(heightOf(title)) + APART;
  const zeros = packed.zeros.map(({ x, y }) => point(Math.ceil(MARGIN + x), Math.ceil(top + y)));
  const smallTop = top + Math.ceil(endOf(packed).bottom) + APART;
  const common: Group = {
    kind: 'group',
    id: 'common',
    layer: 'Common',
    children: [
      placedAt(title, point(MARGIN, MARGIN)),
      ...pieces.map(({ name, common: shapes }, i) => pieceGroup(name, zeros[i], shapes)),
      ...furniture.map(({ shapes }, i): Group => ({
        kind: 'group',
        offset: zeros[pieces.length + i] ?? point(0, 0),
        children: shapes,
      })),
      placedAt(small, point(MARGIN, smallTop)),
    ],
  };
  const drawn = sizes.map((size, i) => ({
    base: size.style.base,
    group: sizeGroup(
      size,
      pieces.map(({ name, sizes: shapes }, k) => pieceGroup(name, zeros[k], shapes[i] ?? [])),
    ),
  }));
  return {
    title: `${drawing.title}: ${subtitle}`,
    width: width + 2 * MARGIN,
    height: smallTop + Math.ceil(heightOf(small)) + MARGIN,
    // The base lies on top where lines coincide.
    shapes: [
      ...drawn.filter(({ base }) => !base).map(({ group }) => group),
      ...drawn.filter(({ base }) => base).map(({ group }) => group),
      common,
    ],
  };
}

/** Every piece in the sizes given; the `sizes` of each are in their order. */
export function drawnPieces(
  drawing: NestDrawing,
  sizes: readonly SheetSize[],
  caption: TextLine,
): readonly DrawnPiece[] {
  const names = sizes[0]?.pieces.map(({ plan }) => plan.name) ?? [];
  return names.map((name) => {
    const sized = sizes.flatMap(({ label, style, pieces, cutPieces = [] }) =>
      pieces
        .filter(({ plan }) => plan.name === name)
        .map((piece) => {
          const cut = cutPieces.find((one) => one.piece.plan.name === name);
          return { label, style, piece, cut };
        }),
    );
    return drawnPiece(nestedPiece(sized, linesShown(drawing)), caption, drawing);
  });
}

function sizeGroup(size: SheetSize, children: readonly Shape[]): Group {
  const { id, label } = size;
  return { kind: 'group', id, layer: sizeWords(size), data: { size: label }, children };
}

function pieceGroup(
  name: string,
  offset: Point = point(0, 0),
  children: readonly Shape[] = [],
): Group {
  return { kind: 'group', data: { piece: name }, offset, children };
}
