/** Half a front or half a back of the shaped skirt: its waist, side, hem and center put together. */
import type { Edge } from '../../pattern/piece';
import { panelCutting } from '../block';
import type { BlockPiece } from '../block';
import { flareValues } from './flare';
import { HEM_EDGE, hemPoints } from './hem';
import type { PanelShape } from './panel-shape';
import { lengthLineMarks, lengthLinePoints } from '../length-lines';
import { hipDepthValues, sideEdges, sideEnds, sidePoints, sideValues } from './side';
import { centerBackEdges, centerBackMarks, ventPoints, zipPoints } from './vent';
import { dartMarks, waistEdges, waistPoints, waistValues } from './waist';

/**
 * The panel in one shape, every coordinate a formula: center waist at the zero of x, the waist near
 * the zero of y.
 */
export function panelPiece(shape: PanelShape): BlockPiece {
  const { panel, vent } = shape;
  const isBack = panel === 'back';
  const fold: Edge = { kind: 'fold', from: 'center_hem', to: 'center_waist', seam: 'center_front' };
  return {
    name: panel,
    cuttings: panelCutting(panel),
    values: [
      ...waistValues(shape),
      ...sideValues(shape),
      ...flareValues(shape),
      ...hipDepthValues(shape),
    ],
    points: [
      ...waistPoints(shape),
      ...sidePoints(shape),
      ...hemPoints(shape),
      { name: 'center_hip', x: '0', y: 'waist_to_hip' },
      ...(shape.highHip ? [{ name: 'center_high_hip', x: '0', y: 'waist_to_high_hip' }] : []),
      ...lengthLinePoints(shape.lines, (depths) => sideEnds(shape, depths)),
      ...(isBack ? [...ventPoints(vent), ...zipPoints(vent)] : []),
    ],
    outline: [
      ...waistEdges(shape),
      ...sideEdges(shape),
      HEM_EDGE,
      ...(isBack ? centerBackEdges(vent) : [fold]),
    ],
    marks: [
      { name: 'hip-line', through: ['center_hip', 'side_hip'] },
      ...lengthLineMarks(shape.lines),
      ...dartMarks(shape),
      ...(isBack ? centerBackMarks(vent) : []),
    ],
  };
}
