/** The changes of a range that may be worth making, each with what it would win. */
import type { SizeBody } from '../bodies/fit-rules';
import type { Crowd } from './coverage';
import { coverageOf } from './coverage';
import type { FitRules, FittedSize } from '../bodies/fit';
import { fittedSize } from '../bodies/fit';
import { servedShare } from './served';

/** What is done to a range. */
export type ChangeKind = 'smaller-size' | 'larger-size' | 'step' | 'hips' | 'second-drop';

/** One change, the best of its kind. */
export interface Change {
  readonly kind: ChangeKind;
  /** Sizes that it adds. */
  readonly added: number;
  /** Share of the crowd that it wins, from 0 to 1; negative where it would lose some. */
  readonly wins: number;
  /** mm: of a step by how much its waist grows more, of the hips by how much they are larger. */
  readonly by: number;
  /** The size that is added, or the one from which on a step is altered; empty for all. */
  readonly size: string;
  readonly sizes: readonly SizeBody[];
}

/** What a change may be made of. */
interface Candidate extends Pick<Change, 'kind' | 'by' | 'size'> {
  readonly sizes: readonly SizeBody[];
}

/**
 * The best change of each kind, what wins most first: a size added at either end by the step there, one
 * step made larger or smaller, all hips made larger or smaller, or the range made again for another drop.
 * `grid` is the length in mm by which girths are told apart, 1 cm or 1/2 in.
 */
export function bestChanges(
  crowd: Crowd,
  bodies: readonly SizeBody[],
  rules: FitRules,
  grid: number,
): readonly Change[] {
  const share = servedShare(crowd);
  const fitted = (sizes: readonly SizeBody[]): readonly FittedSize[] =>
    sizes.map((size) => fittedSize(size, rules));
  const now = coverageOf(crowd, fitted(bodies)).served;
  const best = new Map<ChangeKind, { readonly candidate: Candidate; readonly share: number }>();
  for (const candidate of candidates(bodies, grid)) {
    const reached = share(fitted(candidate.sizes));
    if (reached > (best.get(candidate.kind)?.share ?? -1))
      best.set(candidate.kind, { candidate, share: reached });
  }
  return [...best.values()]
    .map(({ candidate }) => ({
      ...candidate,
      added: candidate.sizes.length - bodies.length,
      wins: coverageOf(crowd, fitted(candidate.sizes)).served - now,
    }))
    .sort((a, b) => b.wins - a.wins);
}

function candidates(bodies: readonly SizeBody[], grid: number): readonly Candidate[] {
  return [
    ...ends(bodies),
    ...bodies.slice(1).flatMap((size, i) => steps(bodies, i + 1, size.label, grid)),
    ...drops(grid, 4).map((by): Candidate => ({
      kind: 'hips',
      by,
      size: '',
      sizes: bodies.map((size) => ({ ...size, hip: size.hip + by })),
    })),
    ...drops(grid, 12).map((by): Candidate => ({
      kind: 'second-drop',
      by,
      size: '',
      sizes: [...bodies, ...bodies.map((size) => ({ ...size, hip: size.hip + by }))],
    })),
  ];
}

function ends(bodies: readonly SizeBody[]): readonly Candidate[] {
  const [first, second] = bodies;
  const [before, last] = bodies.slice(-2);
  if (first === undefined || second === undefined || before === undefined || last === undefined)
    return [];
  const beside = (from: SizeBody, end: SizeBody, label: string): SizeBody => ({
    label,
    waist: 2 * end.waist - from.waist,
    hip: 2 * end.hip - from.hip,
  });
  const smaller = beside(second, first, `below ${first.label}`);
  const larger = beside(before, last, `above ${last.label}`);
  return [
    { kind: 'smaller-size', by: 0, size: smaller.label, sizes: [smaller, ...bodies] },
    { kind: 'larger-size', by: 0, size: larger.label, sizes: [...bodies, larger] },
  ];
}

/** The step to size `at` altered in waist and hip alike, as long as girths still grow. */
function steps(
  bodies: readonly SizeBody[],
  at: number,
  label: string,
  grid: number,
): readonly Candidate[] {
  const [from, to] = [bodies[at - 1], bodies[at]];
  if (from === undefined || to === undefined) return [];
  return drops(grid, 2)
    .filter((by) => to.waist + by > from.waist && to.hip + by > from.hip)
    .map((by) => ({
      kind: 'step',
      by,
      size: label,
      sizes: bodies.map((size, i) =>
        i < at ? size : { ...size, waist: size.waist + by, hip: size.hip + by },
      ),
    }));
}

/** Up to `most` times the grid, either way. */
function drops(grid: number, most: number): readonly number[] {
  return Array.from({ length: most }, (_, i) => (i + 1) * grid).flatMap((by) => [-by, by]);
}
