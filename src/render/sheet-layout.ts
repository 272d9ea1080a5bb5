/** The layout common to all sheets: title on top, the pieces in rows, the furniture below. */
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
import type { TextLine, Sketch } from './sketch';
import { heightOf, placedAt, widthOf } from './sketch';
import { linesNote, OF_ALL_SIZES, sheetFacts, TOILE } from './captions';

/** One size as it appears on a sheet. */
export interface SheetSize extends DrawnSize {
  /** Identifier of its group. */
  readonly id: string;
  readonly style: SizeStyle;
}

/** mm around the sheet, and between its parts. */
const MARGIN = 40;
const BETWEEN = 45;
/** mm between the furniture and the notes. */
const AFTER_BAND = 25;
/** mm. Beyond this width the pieces go on in a further row, so that a sheet stays printable. */
const ROW_WIDTH = 1250;

/** A drawn piece and where its zero lies on the sheet. */
interface PlacedPiece {
  readonly drawn: DrawnPiece;
  readonly zero: Point;
}

/** A sheet of the sizes given; `caption` is what each piece says about them. */
export function sheet(
  drawing: NestDrawing,
  sizes: readonly SheetSize[],
  subtitle: string,
  caption: TextLine,
): Scene {
  const rows = inRows(drawnPieces(drawing, sizes, caption));
  const band = [
    legend(keyEntries(sizes, linesShown(drawing) === 'both')),
    facts(sheetFacts(drawing)),
    testSquares(),
  ];
  const width = Math.ceil(Math.max(...[...rows, band].map(rowWidth)));
  // The furniture fills the width: the legend on the left, the test squares on the right.
  const spare = (width - totalWidth(band)) / (band.length - 1);
  const title = titleBlock(drawing.title, subtitle, width);
  const small = notes(
    [linesNote(drawing, sizes.length), ...(sizes.length > 1 ? [OF_ALL_SIZES] : []), TOILE],
    width,
  );

  const placed = placedRows(rows, MARGIN + Math.ceil(heightOf(title)) + BETWEEN);
  const bandTop = placed.bottom + BETWEEN;
  const smallTop = bandTop + Math.ceil(Math.max(...band.map(heightOf))) + AFTER_BAND;
  const common: Group = {
    kind: 'group',
    id: 'common',
    layer: 'Common',
    children: [
      placedAt(title, point(MARGIN, MARGIN)),
      ...placed.pieces.map(({ drawn: { name, common: shapes }, zero }) =>
        pieceGroup(name, zero, shapes),
      ),
      ...inLine(band, spare).map(({ part, x }) => placedAt(part, point(MARGIN + x, bandTop))),
      placedAt(small, point(MARGIN, smallTop)),
    ],
  };
  const drawn = sizes.map((size, i) => ({
    base: size.style.base,
    group: sizeGroup(
      size,
      placed.pieces.map(({ drawn: { name, sizes: shapes }, zero }) =>
        pieceGroup(name, zero, shapes[i] ?? []),
      ),
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

/** Pieces side by side as long as they fit; what lies, like a band, comes below what stands. */
function inRows(pieces: readonly DrawnPiece[]): readonly (readonly DrawnPiece[])[] {
  const lies = ({ box }: DrawnPiece): boolean => box.right - box.left > box.bottom - box.top;
  const [standing, lying] = [pieces.filter((one) => !lies(one)), pieces.filter(lies)];
  return [standing, lying].flatMap(fitted);
}

function fitted(pieces: readonly DrawnPiece[]): readonly (readonly DrawnPiece[])[] {
  return pieces.reduce<readonly (readonly DrawnPiece[])[]>((rows, next) => {
    const row = rows.at(-1);
    return row === undefined || rowWidth([...row, next]) > ROW_WIDTH
      ? [...rows, [next]]
      : [...rows.slice(0, -1), [...row, next]];
  }, []);
}

/** The rows below each other; the zeros of a row lie on one level and on whole millimeters. */
function placedRows(
  rows: readonly (readonly DrawnPiece[])[],
  top: number,
): { readonly pieces: readonly PlacedPiece[]; readonly bottom: number } {
  const pieces: PlacedPiece[] = [];
  let y = top;
  for (const row of rows) {
    y += Math.ceil(Math.max(...row.map(({ box }) => -box.top)));
    for (const { part, x } of inLine(row, BETWEEN)) {
      pieces.push({ drawn: part, zero: point(Math.ceil(MARGIN + x - part.box.left), y) });
    }
    y += Math.ceil(Math.max(...row.map(({ box }) => box.bottom))) + BETWEEN;
  }
  return { pieces, bottom: y - BETWEEN };
}

type Boxed = Pick<Sketch, 'box'>;

/** Width of parts side by side; one more millimeter lets every zero move to a whole one. */
function rowWidth(parts: readonly Boxed[]): number {
  return totalWidth(parts) + BETWEEN * (parts.length - 1) + 1;
}

function totalWidth(parts: readonly Boxed[]): number {
  return parts.reduce((sum, part) => sum + widthOf(part), 0);
}

/** Parts side by side; `x` is the left side of each, the first one at 0. */
function inLine<Part extends Boxed>(
  parts: readonly Part[],
  gap: number,
): readonly { readonly part: Part; readonly x: number }[] {
  return parts.map((part, i) => ({ part, x: totalWidth(parts.slice(0, i)) + gap * i }));
}

function sizeGroup({ label, id }: SheetSize, children: readonly Shape[]): Group {
  return { kind: 'group', id, layer: `Size ${label}`, data: { size: label }, children };
}

function pieceGroup(name: string, offset: Point, children: readonly Shape[]): Group {
  return { kind: 'group', data: { piece: name }, offset, children };
}
