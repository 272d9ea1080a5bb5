/** How many darts the skirt of a sheet has in each panel, as its points are named. */
import { pointsNamed } from '../../rule-sheet/points-named';
import { labelKey } from '../../table/label';

/** Panels that have darts, each with a parameter for their number. */
const PANELS = ['front', 'back'] as const;

/**
 * `front_darts` and `back_darts` as a sheet tells them: two where it names an inner or outer dart of the
 * panel, one where it names a dart; a panel without a point of a dart is left out.
 */
export function dartsNamed(sheet: string, file: string): Readonly<Record<string, string>> {
  const names = pointsNamed(sheet, file).map(labelKey);
  const has = (start: string): boolean => names.some((name) => name.startsWith(start));
  return Object.fromEntries(
    PANELS.flatMap((panel) => {
      if (has(`${panel}innerdart`) || has(`${panel}outerdart`)) return [[`${panel}_darts`, '2']];
      return has(`${panel}dart`) ? [[`${panel}_darts`, '1']] : [];
    }),
  );
}
