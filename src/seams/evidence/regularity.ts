/** Whether the steps of a point are regular: alike, or in the proportions of other points. */
import { growthOf } from '../../rule-sheet/moves-and-steps';
import { NOTHING_ODD, SAME_PLACE, SEAM_MATCH, STEP_SHAPE } from '../../tolerance';
import type { SheetMoves } from '../slips/sheet-moves';
import { along } from '../slips/sheet-moves';
import { misfit } from './misfit';

/** The proportions of steps that several rules of a sheet have, the most frequent first. */
export interface StepShapes {
  readonly shapes: readonly (readonly number[])[];
  /** mm by which the steps of this sheet usually are off from them. */
  readonly spread: number;
}

/** Of the frequent shapes only so many are tried: a chart has few ways of growing. */
const MOST_SHAPES = 8;
/** Those of which two may be mixed in one rule. */
const MIXED_SHAPES = 4;
/** Nats for a rule that mixes two shapes, and for one that breaks at a size of its own. */
const MIXED = 1.5;
const OWN_BREAK = 5;
/** Steps are exact where seams are not, so an odd one weighs more than a gap of its size. */
const ODD_STEP = 1.5;

/** The shapes of a sheet; steps that are all alike are always one of them. */
export function stepShapes(sheet: SheetMoves): StepShapes {
  const vectors = growthsOf(sheet);
  const counts = new Map<string, { shape: readonly number[]; count: number }>();
  for (const growth of vectors) {
    const whole = growth.reduce((sum, step) => sum + Math.abs(step), 0);
    if (whole <= SEAM_MATCH) continue;
    const lead = growth.find((step) => Math.abs(step) > SAME_PLACE) ?? 1;
    const shape = growth.map((step) => (step / whole) * Math.sign(lead));
    const key = shape.map((share) => Math.round(share / STEP_SHAPE)).join();
    const entry = counts.get(key) ?? { shape, count: 0 };
    entry.count++;
    counts.set(key, entry);
  }
  const steps = vectors[0]?.length ?? 0;
  const shared = [...counts.values()]
    .filter(({ count }) => count > 2)
    .sort((a, b) => b.count - a.count)
    .slice(0, MOST_SHAPES)
    .map(({ shape }) => shape);
  const shapes = [Array<number>(steps).fill(1 / Math.max(1, steps)), ...shared];
  const offs = vectors
    .filter((growth) => growth.some((step) => Math.abs(step) > SEAM_MATCH))
    .map((growth) => medianOff(growth, shapes))
    .sort((a, b) => a - b);
  return { shapes, spread: Math.max(SEAM_MATCH, offs[Math.floor(offs.length / 2)] ?? 0) };
}

/** The growth of every rule along both axes, each rule that several points share once. */
function growthsOf(sheet: SheetMoves): readonly (readonly number[])[] {
  const rules = new Set(sheet.flatMap((own) => [...own.values()]));
  return [...rules].flatMap((moves) =>
    (['x', 'y'] as const).map((axis) => growthOf(along(moves, axis))),
  );
}

function medianOff(growth: readonly number[], shapes: readonly (readonly number[])[]): number {
  const offs = fits(growth, shapes).map(({ fitted }) => {
    const off = growth.map((step, k) => Math.abs(step - (fitted[k] ?? NaN)));
    return Math.max(...off);
  });
  return Math.min(...offs);
}

/** What speaks against steps being a rule, in nats: how far they are from the nearest shape. */
export function irregularity(growth: readonly number[], { shapes, spread }: StepShapes): number {
  let least = Infinity;
  for (const shape of shapes) {
    const share = shape[0] ?? 0;
    if (Math.abs(share) < STEP_SHAPE) continue;
    const height = (growth[0] ?? 0) / share;
    least = Math.min(
      least,
      offCost(
        growth,
        shape.map((other) => other * height),
        spread,
      ),
    );
    if (least < NOTHING_ODD) return least;
  }
  for (const { fitted, cost } of fits(growth, shapes))
    least = Math.min(least, cost + offCost(growth, fitted, spread));
  return Math.min(least, breakCost(growth, spread));
}

function offCost(growth: readonly number[], fitted: readonly number[], spread: number): number {
  return growth.reduce(
    (sum, step, k) => sum + ODD_STEP * misfit(step - (fitted[k] ?? NaN), spread),
    0,
  );
}

interface Fit {
  readonly fitted: readonly number[];
  readonly cost: number;
}

/** The shapes at each height at which one step fits exactly, and mixes of two that fit in two. */
function fits(growth: readonly number[], shapes: readonly (readonly number[])[]): readonly Fit[] {
  const found: Fit[] = [{ fitted: growth.map(() => 0), cost: 0 }];
  for (const shape of shapes)
    growth.forEach((step, k) => {
      const share = shape[k] ?? 0;
      if (Math.abs(share) < STEP_SHAPE) return;
      found.push({ fitted: shape.map((other) => (other * step) / share), cost: 0 });
    });
  const mixed = shapes.slice(0, MIXED_SHAPES);
  mixed.forEach((a, i) => {
    for (const b of mixed.slice(i + 1))
      for (let k = 0; k < growth.length; k++)
        for (let l = k + 1; l < growth.length; l++) {
          const [ak = 0, al = 0, bk = 0, bl = 0] = [a[k], a[l], b[k], b[l]];
          const det = ak * bl - al * bk;
          if (Math.abs(det) < STEP_SHAPE ** 2) continue;
          const [gk = 0, gl = 0] = [growth[k], growth[l]];
          const [ca, cb] = [(gk * bl - gl * bk) / det, (ak * gl - al * gk) / det];
          found.push({
            fitted: a.map((share, m) => ca * share + cb * (b[m] ?? 0)),
            cost: MIXED,
          });
        }
  });
  return found;
}

/** Two runs of equal steps: a break of the rule's own. */
function breakCost(growth: readonly number[], spread: number): number {
  let least = Infinity;
  for (let k = 1; k < growth.length; k++) {
    const levels = [middle(growth.slice(0, k)), middle(growth.slice(k))];
    const fitted = growth.map((_, m) => levels[m < k ? 0 : 1] ?? NaN);
    if ((levels[0] ?? 0) * (levels[1] ?? 0) < 0) continue;
    least = Math.min(least, OWN_BREAK + offCost(growth, fitted, spread));
  }
  return least;
}

function middle(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.floor((sorted.length - 1) / 2)] ?? 0;
}

/** What growth `k` would be by the other ones, those that are `spoiled` left out; undefined if none. */
export function regularGrowth(
  growth: readonly number[],
  k: number,
  spoiled: readonly number[],
  { shapes, spread }: StepShapes,
): number | undefined {
  const known = (all: readonly number[]): readonly number[] =>
    all.filter((_, m) => !spoiled.includes(m));
  const own = known(growth);
  if (own.length === 0) return undefined;
  let best: { step: number; cost: number } | undefined;
  for (const shape of shapes) {
    for (const { fitted } of fits(own, [known(shape)])) {
      const cost = offCost(own, fitted, spread);
      if (best !== undefined && cost >= best.cost) continue;
      const m = known(shape).findIndex((share) => Math.abs(share) >= STEP_SHAPE);
      const height = (fitted[m] ?? 0) / (known(shape)[m] ?? 1);
      best = { step: height * (shape[k] ?? 0), cost };
    }
  }
  return best?.step;
}
