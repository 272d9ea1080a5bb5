/** One picture for a projector: thick lines between scales along its edges, to set it up by a ruler. */
import type { Box } from '../geometry/bounds';
import { point } from '../geometry/point';
import type { PdfPage } from '../render/pdf';
import type { Group, Shape } from '../render/scene';
import { LEADING, fitted, text, wrapped } from '../render/type';
import type { LengthUnit } from '../units';
import { toMillimeters } from '../units';
import type { Span } from './edge-scale';
import { LENGTHS_TOLD, SCALE_DEPTH, edgeScale, setUpLengths } from './edge-scale';

/** The layer to hide once the picture has its true size. */
export const SCALE_LAYER = 'Edge scale';

/** A projector's picture is a few dots for a millimeter: lines and their dashes grow by this factor. */
export const THICKER = 2.5;
/** Type size in mm of the words about the scale. */
const TYPE = 8;
/** mm that stay free between the scale, the words and the pattern. */
const FREE = 20;
/** mm. Longer lines of words are hard to read. */
const MEASURE = 700;
/** mm outside of the corners, where their crosses reach. */
const OUTSIDE = 15;

const HOW =
  'Set up this picture with a ruler where it lies. The edge scale counts centimeters above and on the ' +
  'left, inches below and on the right, from the left and from above. Measure from corner cross to ' +
  'corner cross, both ways and from corner to corner: turn, move and zoom until every length is as ' +
  'it says here. Where the two from corner to corner differ, the projector does not look straight at ' +
  `the cloth. Then hide the layer "${SCALE_LAYER}".`;

/** The shapes, which lie in `box`, in a picture that is whole cm or inches from corner cross to corner cross. */
export function projectorPage(
  title: string,
  shapes: readonly Group[],
  box: Box,
  unit: LengthUnit,
): PdfPage {
  const step = toMillimeters(1, unit === 'in' ? 'in' : 'cm');
  const whole = (mm: number): number => step * Math.ceil(mm / step);
  const side = SCALE_DEPTH + FREE;
  const across = whole(box.right - box.left + 2 * side);
  const how = wrapped(HOW, TYPE, Math.min(MEASURE, across - 2 * side));
  const head = side + LEADING * TYPE * (how.length + LENGTHS_TOLD) + FREE;
  const span: Span = { across, down: whole(head + box.bottom - box.top + side) };
  const words = [...how, ...setUpLengths(span)].map((line, i) => {
    const size = fitted(line, TYPE, across - 2 * side);
    return text(line, point(side, side + LEADING * TYPE * (i + 0.7)), size, { weight: 'bold' });
  });
  const corner = point(OUTSIDE, OUTSIDE);
  const scale: Group = {
    kind: 'group',
    layer: SCALE_LAYER,
    offset: corner,
    children: [...edgeScale(span), ...words],
  };
  const moved: Group = {
    kind: 'group',
    offset: point(corner.x + side - box.left, corner.y + head - box.top),
    children: shapes.map(thicker),
  };
  const [width, height] = [across + 2 * OUTSIDE, span.down + 2 * OUTSIDE];
  return { scene: { title, width, height, shapes: [scale, moved] }, windows: [] };
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
