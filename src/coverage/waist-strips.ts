/** The waists of a normal cut into strips in which the same sizes fit. */
import type { FittedSize } from '../bodies/fit';
import type { Spread } from './population';

/** Standard deviations to which a normal is integrated: beyond lie less than 2e-15. No tolerance. */
export const REACH = 8;

/** From one waist in mm to the next: strips of `widest` deviations at most, which end where a size does. */
export function waistStrips(
  { mean, sd }: Spread,
  sizes: readonly FittedSize[],
  widest: number,
): readonly (readonly [from: number, to: number])[] {
  const [least, most] = [mean - REACH * sd, mean + REACH * sd];
  const regular = Array.from(
    { length: (2 * REACH) / widest + 1 },
    (_, i) => least + sd * i * widest,
  );
  const edges = sizes.flatMap(({ waist, waistTolerance: { larger, smaller } }) => [
    waist - smaller,
    waist,
    waist + larger,
  ]);
  const all = [...regular, ...edges.filter((edge) => edge > least && edge < most)].sort(
    (a, b) => a - b,
  );
  return all.slice(1).map((to, i) => [all[i] ?? to, to] as const);
}
