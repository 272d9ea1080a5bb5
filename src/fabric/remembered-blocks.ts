/**
 * Spans in which one shape blocks another, remembered: the orders of a search set the same shapes
 * down beside each other over and over.
 */
import type { Profile, Interval } from './profile';
import { blocked } from './profile';

/** `blocked` for two profiles, to be asked for one shift (mm) after another. */
export type Blocks = (a: Profile, b: Profile) => (shift: number) => Interval | undefined;

/** Blocks that remember what they were asked; to be kept no longer than one search. */
export function rememberedBlocks(): Blocks {
  const pairs = new Map<Profile, Map<Profile, (shift: number) => Interval | undefined>>();
  return (a, b) => {
    const beside = pairs.get(a) ?? new Map<Profile, (shift: number) => Interval | undefined>();
    pairs.set(a, beside);
    const known = beside.get(b) ?? remembered(a, b);
    beside.set(b, known);
    return known;
  };
}

function remembered(a: Profile, b: Profile): (shift: number) => Interval | undefined {
  const spans = new Map<number, Interval | undefined>();
  return (shift) => {
    const known = spans.get(shift);
    if (known !== undefined || spans.has(shift)) return known;
    const span = blocked(a, b, shift);
    spans.set(shift, span);
    return span;
  };
}
