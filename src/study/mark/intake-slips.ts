/** A dart whose intake is graded along, though the style keeps it. */
import type { LengthUnit } from '../../units';
import { inchFraction, toMillimeters, trimmed } from '../../units';
import type { Slip } from './slip';

/** What a dart is opened by from size to size. Common practice, no source. */
const OPENED: Readonly<Record<LengthUnit, readonly number[]>> = {
  in: [1 / 32, 1 / 16, 1 / 8, 1 / 4],
  cm: [0.1, 0.2, 0.25, 0.5],
  mm: [1, 2, 2.5, 5],
};

/** The legs of a dart apart by more in every size: half of it at each leg. */
export function intakeSlips(unit: LengthUnit): readonly Slip[] {
  return OPENED[unit].map((length) => {
    const mm = toMillimeters(length, unit);
    const opened = unit === 'in' ? `${inchFraction(mm)} in` : `${trimmed(length, 2)} ${unit}`;
    return {
      id: `intake ${opened}`,
      kind: 'intake',
      stage: 'share',
      words: `the intake of a dart graded along: its legs open by ${opened} more in each size`,
      advice:
        'where the style keeps the intake both legs move alike; what the waist grows by goes to the side',
      alone: true,
      distort: (moves, { key: { base }, point, axis }) =>
        point.side === undefined || axis === 'y'
          ? undefined
          : moves.map(
              (move, i) => move + ((point.side === 'outer' ? 1 : -1) * (i - base) * mm) / 2,
            ),
    };
  });
}
