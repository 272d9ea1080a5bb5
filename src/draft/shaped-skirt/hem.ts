/**
 * The hem of a panel, as formulas: level at the center and square to the side, and between them the
 * parabola of these two directions, so that it hangs level.
 */
import type { Edge } from '../../pattern/piece';
import type { PointDefinition } from '../block';
import type { PanelShape } from './panel-shape';
import { straightStart } from './side';

/** From the side's end, whose place is the side's, to the center. */
export function hemPoints(shape: PanelShape): readonly PointDefinition[] {
  const start = straightStart(shape);
  return [
    // Square to the side: the direction of its straight end, turned.
    {
      name: 'side_hem_handle',
      x: `side_hem.x - side_hem.x/3*(side_hem.y - ${start}.y)/side_line`,
      y: `side_hem.y + side_hem.x/3*(side_hem.x - ${start}.x)/side_line`,
      handle: true,
    },
    { name: 'center_hem_handle', x: 'side_hem.x/3', y: 'center_hem.y', handle: true },
    { name: 'center_hem', x: '0', y: 'skirt_length' },
  ];
}

/** One curve from the side to the center. */
export const HEM_EDGE: Edge = {
  kind: 'cubic',
  from: 'side_hem',
  leave: 'side_hem_handle',
  arrive: 'center_hem_handle',
  to: 'center_hem',
  seam: 'hem',
};
