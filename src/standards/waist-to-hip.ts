/** How the waist-to-hip depth grows with the hip on measured bodies. */
import type { PublishedTable } from './published-table';

/** The survey whose comment lines state the slope. */
export const WAIST_TO_HIP_SURVEY = 'ansur-1988';

/**
 * Millimeters of depth per millimeter of hip girth, as stated in the comment line `waist_to_hip:`
 * of a survey. That figure rests on each woman measured; the classes of the table have lost the
 * spread inside them, so a slope through their means is less certain.
 */
export function waistToHipSlope(survey: PublishedTable): number {
  const stated = survey.notes
    .filter((note) => note.startsWith('waist_to_hip:'))
    .flatMap((note) => /slope ([\d.]+) cm per cm of hip/.exec(note)?.[1] ?? []);
  const [slope] = stated;
  if (slope === undefined) throw new Error(`The bundled table ${survey.id} states no slope`);
  return Number(slope);
}
