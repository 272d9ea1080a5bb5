/**
 * Which of the two grid lines beside it each level takes, so that sums of lengths hold: a search by
 * small changes, one and two at a time, for as long as anything gets better.
 */
import { GRID_GAIN } from '../tolerance';
import type { GridLines, GridStart, GridSum } from './grid-state';
import { GridState } from './grid-state';

/** Changes after which it is enough, so that no rounding of numbers can loop for ever. */
const MOST_CHANGES = 1000;

/** Levels brought to their upper or lower lines; `other` is whichever they are not on. */
interface Change {
  readonly set: readonly number[];
  readonly to: 'upper' | 'lower' | 'other';
}

/**
 * Chooses a line for every level, true for the upper one. `sets` are the levels that are tried
 * together, some of them by themselves. The result depends on the numbers alone.
 */
export function chooseGrid(
  lines: readonly GridLines[],
  sums: readonly GridSum[],
  sets: readonly (readonly number[])[],
  start: GridStart,
): readonly boolean[] {
  const state = new GridState(lines, sums, start);
  const changes = sets.flatMap((set): Change[] =>
    set.length === 1
      ? [{ set, to: 'other' }]
      : [
          { set, to: 'lower' },
          { set, to: 'upper' },
        ],
  );
  const { after, before } = beside(changes, state, sums.length);
  const open = new Uint8Array(changes.length).fill(1);
  let left = MOST_CHANGES;
  for (let again = true; again && left > 0;) {
    again = false;
    for (let i = 0; i < changes.length && left > 0; i++) {
      if (open[i] === 0) continue;
      open[i] = 0;
      const second = bestWith(state, changes, i, after[i] as readonly number[]);
      if (second === undefined) continue;
      if (second >= 0) apply(state, changes[second] as Change);
      left--;
      again = true;
      for (const changed of [i, second])
        for (const near of [after[changed], before[changed]])
          for (const j of near ?? []) open[j] = 1;
    }
  }
  return state.chosen();
}

/**
 * Makes change `i` and finds which other makes it best: its place, or -1 for none. Where nothing is
 * gained, undoes it and gives undefined.
 */
function bestWith(
  state: GridState,
  changes: readonly Change[],
  i: number,
  near: readonly number[],
): number | undefined {
  const first = apply(state, changes[i] as Change);
  if (first.flipped.length === 0) return undefined;
  let [least, best] = [first.cost, -1];
  for (const j of near) {
    const cost = first.cost + trial(state, changes[j] as Change);
    if (cost < least - GRID_GAIN) [least, best] = [cost, j];
  }
  if (least <= -GRID_GAIN) return best;
  for (const c of first.flipped) state.flip(c);
  return undefined;
}

/** Makes a change; gives what it costs and which levels it has brought to their other lines. */
function apply(
  state: GridState,
  { set, to }: Change,
): { cost: number; flipped: readonly number[] } {
  let cost = 0;
  const flipped: number[] = [];
  for (const c of set) {
    if (to !== 'other' && state.isUpper(c) === (to === 'upper')) continue;
    cost += state.costOfFlip(c);
    state.flip(c);
    flipped.push(c);
  }
  return { cost, flipped };
}

function trial(state: GridState, change: Change): number {
  const [only] = change.set;
  if (change.to === 'other' && only !== undefined) return state.costOfFlip(only);
  const { cost, flipped } = apply(state, change);
  for (const c of flipped) state.flip(c);
  return cost;
}

/** For each change those after it and before it in the list that touch one of its sums. */
function beside(
  changes: readonly Change[],
  state: GridState,
  sums: number,
): { readonly after: readonly number[][]; readonly before: readonly number[][] } {
  const touching = Array.from({ length: sums }, (): number[] => []);
  const touched = changes.map(({ set }) => new Set(set.flatMap((c) => [...state.sumsOf(c)])));
  touched.forEach((all, i) => {
    for (const k of all) touching[k]?.push(i);
  });
  const after = changes.map((): number[] => []);
  const before = changes.map((): number[] => []);
  const seen = new Int32Array(changes.length).fill(-1);
  touched.forEach((all, i) => {
    for (const k of all)
      for (const j of touching[k] as readonly number[])
        if (j > i && seen[j] !== i) {
          seen[j] = i;
          after[i]?.push(j);
          before[j]?.push(i);
        }
  });
  return { after, before };
}
