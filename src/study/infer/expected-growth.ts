/** What the other sizes lead one to expect of a size, since bodies grow in even steps or nearly so. */

/** Increments of one measurement, mm from the base, one a size; undefined where they are not known. */
export type Growth = readonly (number | undefined)[];

/** By a straight line through the nearest known sizes, one on each side or both on the same. */
export function expectedAt(growth: Growth, size: number): number | undefined {
  const known = growth.flatMap((mm, i) => (mm === undefined || i === size ? [] : [{ mm, i }]));
  const below = known.filter(({ i }) => i < size).toReversed();
  const above = known.filter(({ i }) => i > size);
  const [a, b] =
    below.length === 0
      ? above
      : above.length === 0
        ? below
        : [...below.slice(0, 1), ...above.slice(0, 1)];
  if (a === undefined || b === undefined) return undefined;
  return a.mm + ((b.mm - a.mm) * (size - a.i)) / (b.i - a.i);
}

/** Factor between what was meant and what was typed where the point slipped by one digit. */
const DIGIT = 10;

/**
 * Of sizes that lie far from their neighbors, while a tenth or ten times of them lies within a step of
 * these: what was meant. The one that makes the growth most even goes first, and the others are then
 * held against the rest.
 */
export function slippedDigits(growth: Growth): ReadonlyMap<number, number> {
  const found = new Map<number, number>();
  for (;;) {
    const rest = growth.map((mm, i) => found.get(i) ?? mm);
    const [best] = rest
      .flatMap((_, i) => {
        const meant = found.has(i) ? undefined : meantAt(rest, i);
        return meant === undefined
          ? []
          : [{ i, meant, left: unevenness(rest.map((mm, k) => (k === i ? meant : mm))) }];
      })
      .toSorted((a, b) => a.left - b.left);
    if (best === undefined || best.left >= unevenness(rest)) return found;
    found.set(best.i, best.meant);
  }
}

/** mm by which each step differs from the one before it, in all. */
function unevenness(growth: Growth): number {
  const known = growth.filter((mm) => mm !== undefined);
  const steps = known.slice(1).map((mm, i) => mm - (known[i] ?? NaN));
  return steps.slice(1).reduce((sum, step, i) => sum + Math.abs(step - (steps[i] ?? NaN)), 0);
}

function meantAt(growth: Growth, size: number): number | undefined {
  const [own, expected] = [growth[size], expectedAt(growth, size)];
  if (own === undefined || expected === undefined) return undefined;
  const known = growth.filter((mm, i): mm is number => mm !== undefined && i !== size);
  const steps = known
    .slice(1)
    .map((mm, i) => Math.abs(mm - (known[i] ?? NaN)))
    .toSorted((a, b) => a - b);
  // The middle one is moved neither by a break nor by the gap where the size itself is left out.
  const step = steps[Math.floor((steps.length - 1) / 2)] ?? 0;
  if (steps.length < 2 || Math.abs(own - expected) <= step) return undefined;
  return [own / DIGIT, own * DIGIT].find((meant) => Math.abs(meant - expected) <= step);
}
