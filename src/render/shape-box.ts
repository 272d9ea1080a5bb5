/** The room that shapes take. */
import type { Box } from '../geometry/bounds';
import { grownBox, joinBoxes, segmentsBounds } from '../geometry/bounds';
import { point } from '../geometry/point';
import type { Shape } from './scene';
import { textBox } from './type';

/** The upright box that holds a shape with the width of its line and the estimate of its words. */
export function shapeBox(shape: Shape): Box {
  switch (shape.kind) {
    case 'path':
      return grownBox(segmentsBounds(shape.segments), (shape.stroke?.width ?? 0) / 2);
    case 'text':
      return textBox(shape);
    case 'group': {
      const { x, y } = shape.offset ?? point(0, 0);
      const { left, top, right, bottom } = joinBoxes(shape.children.map(shapeBox));
      return { left: left + x, top: top + y, right: right + x, bottom: bottom + y };
    }
  }
}
