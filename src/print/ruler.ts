/** The scale bar: 100 mm above the line and 4 in below it, so that any sheet can be measured. */
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import type { Shape, Stroke } from '../render/scene';
import { polyline } from '../render/scene';
import { INK } from '../render/size-style';
import { text } from '../render/type';
import { toMillimeters } from '../units';

const LINE: Stroke = { color: INK, width: 0.3 };
/** mm. */
const TICK = 1.8;
const TYPE = 2.4;
const MILLIMETERS = 100;
const INCHES = 4;
/** mm from the zero of the ruler to the end of its words. */
export const RULER_LENGTH = 116;

/** `zero` is the left end of the line; ticks stand every 10 mm and every inch. */
export function ruler(zero: Point): readonly Shape[] {
  const end = toMillimeters(INCHES, 'in');
  const tick = (x: number, y: number): Shape =>
    polyline('ruler', [point(zero.x + x, zero.y), point(zero.x + x, zero.y + y)], LINE);
  const tens = Array.from({ length: MILLIMETERS / 10 + 1 }, (_, i) => tick(10 * i, -TICK));
  const inches = Array.from({ length: INCHES + 1 }, (_, i) => tick(toMillimeters(i, 'in'), TICK));
  return [
    polyline('ruler', [zero, point(zero.x + end, zero.y)], LINE),
    ...tens,
    ...inches,
    text(`${MILLIMETERS} mm`, point(zero.x + end + 1, zero.y - 0.5), TYPE),
    text(`${INCHES} in`, point(zero.x + end + 1, zero.y + TICK + 0.5), TYPE),
  ];
}
