/** A girth down the body or down a skirt, known at some levels and even in between. */

/** A girth in mm at a level in mm below the waist line. */
export interface GirthAt {
  readonly level: number;
  readonly girth: number;
}

/** From the highest level to the lowest; at least one. */
export type GirthProfile = readonly GirthAt[];

/** The girth at any level in mm: straight between the levels, and as at the ends beyond them. */
export function girthAt(profile: GirthProfile, level: number): number {
  const below = profile.findIndex((entry) => entry.level >= level);
  const next = profile[below] ?? profile.at(-1);
  const last = profile[below - 1];
  if (next === undefined) return NaN;
  if (below < 0 || last === undefined) return next.girth;
  const t = (level - last.level) / (next.level - last.level);
  return last.girth + t * (next.girth - last.girth);
}

/** The levels at which either profile turns, from `top` to `bottom`, both ends included. */
export function turnsBetween(
  profiles: readonly GirthProfile[],
  top: number,
  bottom: number,
): readonly number[] {
  const inside = profiles
    .flatMap((profile) => profile.map(({ level }) => level))
    .filter((level) => level > top && level < bottom);
  return [top, ...inside.sort((a, b) => a - b), ...(bottom > top ? [bottom] : [])];
}
