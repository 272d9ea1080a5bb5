/**
 * The side seam of a panel from waist to hem, as formulas.
 *
 * Down to the hip line it is the parabola that is vertical there. Then it runs straight down to
 * where the taper begins, and by a second parabola of the depth `taper_blend` into the straight taper: the
 * two lines that it is tangent to meet halfway down, at the level `taper_level` of the block.
 */
import type { Edge } from '../../pattern/piece';
import type { PointDefinition, ValueDefinition } from '../block';
import { flaredPoints } from './flare';
import type { SideEnds } from '../length-lines';
import { HIP_DEPTH_LINE, onLine } from '../length-lines';
import type { PanelShape } from './panel-shape';
import { lastDart } from './panel-shape';
import { lengthValue, numberValue } from './values';

/** What the side curve takes in over which depth. */
export function sideValues(shape: PanelShape): readonly ValueDefinition[] {
  const end = straightStart(shape);
  return [
    lengthValue('side_depth', 'waist_to_hip + rise'),
    // The angle by which the waist must rise at the side to be square to it.
    numberValue('side_angle', 'atan(2*take_up/side_depth)'),
    lengthValue('side_line', `sqrt((side_hem.x - ${end}.x)^2 + (side_hem.y - ${end}.y)^2)`),
  ];
}

/** From the handle below the side point of the waist down to the hem. */
export function sidePoints(shape: PanelShape): readonly PointDefinition[] {
  const { panel, tapered, taperedBelowHip, blended } = shape;
  const hip = `${panel}_hip_width`;
  return flaredPoints(shape, [
    {
      name: 'side_waist_handle',
      x: 'edge + 2/3*take_up',
      y: '-rise + side_depth/3',
      handle: true,
    },
    { name: 'side_hip_handle', x: hip, y: 'waist_to_hip - side_depth/3', handle: true },
    { name: 'side_hip', x: hip, y: 'waist_to_hip' },
    ...(taperedBelowHip ? [{ name: 'side_taper', x: hip, y: 'waist_to_hip + taper_start' }] : []),
    ...(blended ? blendPoints(hip) : []),
    {
      name: 'side_hem',
      x: tapered ? `${hip} - hem_taper` : hip,
      y: tapered ? 'taper_level + taper_depth' : 'skirt_length',
    },
  ]);
}

/** From straight down into the line from the level `taper_level` at the hip's width to the hem. */
function blendPoints(hip: string): readonly PointDefinition[] {
  const inward = 'hem_taper*taper_blend/taper_depth';
  return [
    {
      name: 'side_blend_upper_handle',
      x: hip,
      y: 'taper_level - taper_blend/6',
      handle: true,
    },
    {
      name: 'side_blend_lower_handle',
      x: `${hip} - ${inward}/6`,
      y: 'taper_level + taper_blend/6',
      handle: true,
    },
    { name: 'side_blend', x: `${hip} - ${inward}/2`, y: 'taper_level + taper_blend/2' },
  ];
}

/** The point where a side that runs straight down ends, above the taper if there is one. */
function verticalEnd({ taperedBelowHip }: PanelShape): string {
  return taperedBelowHip ? 'side_taper' : 'side_hip';
}

/** The point from which the side runs in one line to the hem. */
export function straightStart(shape: PanelShape): string {
  return shape.blended ? 'side_blend' : verticalEnd(shape);
}

/**
 * How far above the hip line the side, turned with a flare, comes to the depth of the hip-depth line. The
 * side is x = hip - bend*s^2 at s above the hip line; turned about the tip of the dart its depth is the
 * one wanted where sine*bend*s^2 - cosine*s + apart = 0, of which s is the smaller root.
 */
export function hipDepthValues(shape: PanelShape): readonly ValueDefinition[] {
  const { panel, flared, lines } = shape;
  if (lines.hipDepth === undefined) return [];
  const depth = HIP_DEPTH_LINE;
  if (!flared) return [lengthValue('above_hip', `waist_to_hip - ${depth}`)];
  const tip = `${lastDart(shape)}_tip`;
  return [
    lengthValue(
      'apart_from_hip_depth',
      `(waist_to_hip - ${tip}.y)*turn_x - (${panel}_hip_width - ${tip}.x)*turn_y + ${tip}.y - ${depth}`,
    ),
    lengthValue(
      'above_hip',
      '2*apart_from_hip_depth/' +
        '(turn_x + sqrt(turn_x^2 - 4*turn_y*take_up/side_depth^2*apart_from_hip_depth))',
    ),
  ];
}

/** The side at a depth below the hip: straight down, then the parabola into the taper, then that. */
function blendedAt(hip: string, depth: string): string {
  const below = `(${depth} - (taper_level - taper_blend/2))`;
  const inCurve = `min(max(${below}, 0 mm), taper_blend)`;
  // A size may have no curve, and then nothing is in it.
  return (
    `${hip} - hem_taper/taper_depth*(${inCurve}^2/(2*max(taper_blend, 0.01 mm)) + ` +
    `max(${below} - taper_blend, 0 mm))`
  );
}

/** Where the lines at which the panel is lengthened or shortened end at the side. */
export function sideEnds(
  shape: PanelShape,
  depths: { readonly length: string; readonly hipDepth: string },
): SideEnds {
  const hip = `${shape.panel}_hip_width`;
  const [onCurve] = flaredPoints(shape, [
    { name: '', x: `${hip} - take_up*(above_hip/side_depth)^2`, y: 'waist_to_hip - above_hip' },
  ]);
  return {
    length:
      shape.blended && !shape.flared
        ? { x: blendedAt(hip, depths.length), y: depths.length }
        : onLine(straightStart(shape), 'side_hem', depths.length),
    hipDepth: { x: onCurve?.x ?? '0', y: depths.hipDepth },
  };
}

/** The side from waist to hip, with two handles. */
export const HIP_CURVE: Edge = {
  kind: 'cubic',
  from: 'side_waist',
  leave: 'side_waist_handle',
  arrive: 'side_hip_handle',
  to: 'side_hip',
  seam: 'side',
};

/** From the waist to the hem. */
export function sideEdges(shape: PanelShape): readonly Edge[] {
  const { taperedBelowHip, blended } = shape;
  const line = (from: string, to: string): Edge => ({ kind: 'line', from, to, seam: 'side' });
  return [
    HIP_CURVE,
    ...(taperedBelowHip ? [line('side_hip', 'side_taper')] : []),
    ...(blended
      ? [
          {
            kind: 'cubic' as const,
            from: verticalEnd(shape),
            leave: 'side_blend_upper_handle',
            arrive: 'side_blend_lower_handle',
            to: 'side_blend',
            seam: 'side',
          },
        ]
      : []),
    line(straightStart(shape), 'side_hem'),
  ];
}
