/** The flare: what lies beyond the last dart, turned about its tip until part of the dart is closed. */
import type { PointDefinition, ValueDefinition } from '../block';
import type { PanelShape } from './panel-shape';
import { lastDart } from './panel-shape';
import { numberValue } from './values';

/** The turn that closes the share `dart_closing` of the dart nearest the side and opens the hem. */
export function flareValues(shape: PanelShape): readonly ValueDefinition[] {
  if (!shape.flared) return [];
  return [
    numberValue('turn', `2*dart_closing*${lastDart(shape)}_half_angle`),
    numberValue('turn_x', 'cos(turn)'),
    numberValue('turn_y', 'sin(turn)'),
  ];
}

/** Points beyond the last dart, turned about its tip where the skirt is flared. */
export function flaredPoints(
  shape: PanelShape,
  points: readonly PointDefinition[],
): readonly PointDefinition[] {
  if (!shape.flared) return points;
  const tip = `${lastDart(shape)}_tip`;
  return points.map((definition) => {
    const [dx, dy] = [`(${definition.x} - ${tip}.x)`, `(${definition.y} - ${tip}.y)`];
    return {
      ...definition,
      x: `${tip}.x + ${dx}*turn_x + ${dy}*turn_y`,
      y: `${tip}.y - ${dx}*turn_y + ${dy}*turn_x`,
    };
  });
}
