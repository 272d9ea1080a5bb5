/**
 * The quarter method trued: its girths, darts and levels, drawn by the lines of the shaped skirt.
 *
 * The waist is drawn over the closed dart, level at the center and square to the side. The side point is
 * raised until that edge no longer has to fall before it meets the side: as far as the panel needs that
 * needs more of it, and not at all where neither does.
 */
import type { BlockPiece, RangeFacts, ValueDefinition } from './block';
import type { LengthLines } from './length-lines';
import { panelPiece } from './shaped-skirt/panel';
import type { Panel } from './shaped-skirt/panel-shape';
import { TAPER_VALUES } from './shaped-skirt/taper';
import { lengthValue, numberValue } from './shaped-skirt/values';

/** What the shaped skirt has as parameters, as the quarter method has it. */
export const TRUED_VALUES: readonly ValueDefinition[] = [
  ...panelValues('front'),
  ...panelValues('back'),
  numberValue('half_rule', '0'),
  numberValue('axis_square', '0'),
  numberValue('press_to_side', '0'),
  lengthValue('side_rise', 'max(front_need, back_need, 0 mm)'),
  lengthValue('taper_start', '0 mm'),
  // As in the shaped skirt.
  lengthValue('taper_blend', 'abs(skirt_length - waist_to_hip)/4'),
  ...TAPER_VALUES,
];

function panelValues(panel: Panel): readonly ValueDefinition[] {
  const [width, take, intake] = ['hip_width', 'side_take_up', 'intake'].map(
    (name) => `${panel}_${name}`,
  );
  return [
    lengthValue(`${panel}_hip_width`, 'hip_girth/4 + hip_ease/4'),
    lengthValue(`${panel}_intake`, `${panel}_dart_intake`),
    lengthValue(`${panel}_side_take_up`, `${width} - waist_girth/4 - waist_ease/4 - ${intake}`),
    numberValue(`${panel}_dart_position`, '1/2'),
    lengthValue(`center_${panel}_drop`, '0 mm'),
    // From the dart the open edge falls at the angle of the dart and ends square to the side, which leans
    // by 2*take_up/(depth + rise): as a parabola it rises by its width times the mean of both. A rise of
    // that much leaves the edge level up to the dart; less, and it would have to fall first.
    lengthValue(`${panel}_beyond`, `(${width} - ${take} - ${intake})/2`),
    lengthValue(`${panel}_fall`, `${panel}_beyond*atan(${intake}/(2*${panel}_dart_length))`),
    lengthValue(
      `${panel}_need`,
      `(sqrt((waist_to_hip - ${panel}_fall)^2 + 4*${panel}_beyond*${take}) - waist_to_hip - ${panel}_fall)/2`,
    ),
  ];
}

/** The panel in the points of the shaped skirt, one dart and nothing below the hip but the taper. */
export function truedQuarter(
  panel: Panel,
  { alwaysZero }: RangeFacts,
  lines: LengthLines,
): BlockPiece {
  const tapered = !alwaysZero('hem_taper');
  return panelPiece({
    ...{ panel, darts: 1, tapered, blended: tapered, lines },
    ...{ taperedBelowHip: false, flared: false, vent: 'none', highHip: false },
  });
}
