/** One picture for a projector: thick lines over a grid to set up by. */
import type { Box } from '../geometry/bounds';
import { point } from '../geometry/point';
import type { PdfPage } from '../render/pdf';
import type { Group, Shape, Stroke } from '../render/scene';
import { polyline, rectangle } from '../render/scene';
import { text } from '../render/type';
import type { LengthUnit } from '../units';
import { toMillimeters } from '../units';

/** The layer to hide once the picture has its true size. */
export const GRID_LAYER = 'Calibration grid';

/** A projector's picture is a few dots for a millimeter: lines and their dashes grow by this factor. */
export const THICKER = 2.5;
const GRID: Stroke = { color: '#b9c3cf', width: 0.6 };
const BORDER: Stroke = { color: '#7a8797', width: 1.5 };
/** Type size in mm of the words at the grid. */
const TYPE = 8;

/** The shapes, which lie in `box`, on a page of whole squares of the grid, 50 mm or 2 in wide. */
export function projectorPage(
  title: string,
  shapes: readonly Group[],
  box: Box,
  unit: LengthUnit,
): PdfPage {
  const [square, name] = unit === 'in' ? [toMillimeters(2, 'in'), '2 in'] : [50, '50 mm'];
  // One square on every side stays free of the pattern.
  const across = Math.ceil((box.right - box.left) / square) + 2;
  const down = Math.ceil((box.bottom - box.top) / square) + 2;
  const [width, height] = [across * square, down * square];
  const grid: Group = {
    kind: 'group',
    layer: GRID_LAYER,
    children: [
      ...counted(across - 1).map((i) =>
        polyline('grid', [point(i * square, 0), point(i * square, height)], GRID),
      ),
      ...counted(down - 1).map((i) =>
        polyline('grid', [point(0, i * square), point(width, i * square)], GRID),
      ),
      rectangle(
        'grid-border',
        {
          left: square / 2,
          top: square / 2,
          right: width - square / 2,
          bottom: height - square / 2,
        },
        BORDER,
      ),
      // Both diagonals are equally long where the picture is square.
      polyline('grid', [point(0, 0), point(width, height)], GRID),
      polyline('grid', [point(0, height), point(width, 0)], GRID),
      text(`Grid of ${name}`, point(square, 0.4 * square), TYPE, { weight: 'bold' }),
    ],
  };
  const moved: Group = {
    kind: 'group',
    offset: point(square - box.left, square - box.top),
    children: shapes.map(thicker),
  };
  return { scene: { title, width, height, shapes: [grid, moved] }, windows: [] };
}

function counted(count: number): readonly number[] {
  return Array.from({ length: count }, (_, i) => i + 1);
}

function thicker(shape: Shape): Shape {
  if (shape.kind === 'group') return { ...shape, children: shape.children.map(thicker) };
  if (shape.kind === 'text') return { ...shape, weight: 'bold' };
  if (shape.stroke === undefined) return shape;
  const { color, width, dash } = shape.stroke;
  const grown = { color, width: THICKER * width };
  const stroke =
    dash === undefined ? grown : { ...grown, dash: dash.map((length) => THICKER * length) };
  return { ...shape, stroke };
}
