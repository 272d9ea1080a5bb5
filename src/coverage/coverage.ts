/** Which share of a population finds a size, which share each size serves, and whom the range leaves out. */
import type { FittedSize, Girths, LeftOut, RangePlace } from '../bodies/fit';
import { LEFT_OUT, placeIn } from '../bodies/fit';
import { gaussLegendre, normalBelow, normalDensity } from './normal';
import { REACH, waistStrips } from './waist-strips';
import type { BivariateNormal } from './population';

/** A measured body and how many people it stands for. */
export interface WeightedBody extends Girths {
  readonly weight: number;
}

/** Whom a range is held against: measured bodies, or the normal that stands for a survey. */
export type Crowd =
  | { readonly kind: 'bodies'; readonly bodies: readonly WeightedBody[] }
  | { readonly kind: 'normal'; readonly normal: BivariateNormal };

/** Shares of a crowd, from 0 to 1, which together are 1. */
export interface Coverage {
  /** All that find a size. */
  readonly served: number;
  /** For each size, those whom it fits best. */
  readonly bySize: readonly number[];
  /** Those whom no size fits, by why. */
  readonly leftOut: Readonly<Record<LeftOut, number>>;
}

/** Holds a range against a crowd. Bodies are counted; a normal is integrated. */
export function coverageOf(crowd: Crowd, sizes: readonly FittedSize[]): Coverage {
  const bySize = sizes.map(() => 0);
  const leftOut: Record<LeftOut, number> = {
    ...{ below: 0, above: 0, between: 0 },
    ...{ 'fuller-hip': 0, 'slimmer-hip': 0 },
  };
  let all = 0;
  const add = (place: RangePlace, weight: number): void => {
    all += weight;
    if (typeof place === 'number') bySize[place] = (bySize[place] ?? 0) + weight;
    else leftOut[place] += weight;
  };
  if (crowd.kind === 'normal') integrate(crowd.normal, sizes, add);
  else for (const body of crowd.bodies) add(placeIn(sizes, body), body.weight);
  const share = (weight: number): number => (all === 0 ? 0 : weight / all);
  const shares = bySize.map(share);
  return {
    served: shares.reduce((sum, one) => sum + one, 0),
    bySize: shares,
    leftOut: Object.fromEntries(LEFT_OUT.map((why) => [why, share(leftOut[why])])) as Record<
      LeftOut,
      number
    >,
  };
}

/** Standard deviations of a strip at most. No tolerance. */
const STRIP = 0.25;
const NODES = gaussLegendre(6);

/**
 * Adds the normal up place by place. Over strips of the waist, which end where a size begins or ends to fit;
 * in each, at every node, between the hips at which a body's place may change, where the share is that of
 * the hip under the condition of that waist.
 */
function integrate(
  { waist, hip, r }: BivariateNormal,
  sizes: readonly FittedSize[],
  add: (place: RangePlace, weight: number) => void,
): void {
  const rest = hip.sd * Math.sqrt(1 - r * r);
  for (const [from, to] of waistStrips(waist, sizes, STRIP)) {
    for (const [node, nodeWeight] of NODES) {
      const at = (from + to) / 2 + (node * (to - from)) / 2;
      const z = (at - waist.mean) / waist.sd;
      const density = (normalDensity(z) / waist.sd) * nodeWeight * ((to - from) / 2);
      const mean = hip.mean + r * hip.sd * z;
      let [below, before] = [0, mean - REACH * rest];
      for (const edge of [...hipEdges(at, sizes), Infinity]) {
        if (edge <= before) continue;
        const share = edge === Infinity ? 1 : normalBelow((edge - mean) / rest);
        const middle = edge === Infinity ? before + rest : (before + edge) / 2;
        if (share > below)
          add(placeIn(sizes, { waist: at, hip: middle }), density * (share - below));
        [below, before] = [share, edge];
      }
    }
  }
}

/** The hips in mm, in rising order, at which the place of a body with this waist may change. */
function hipEdges(waist: number, sizes: readonly FittedSize[]): readonly number[] {
  const fitting = sizes.flatMap((size) => {
    const { larger, smaller } = size.waistTolerance;
    const off = waist - size.waist;
    const miss = off > 0 ? off / larger : -off / smaller;
    return miss <= 1 ? [{ size, miss }] : [];
  });
  const ties = fitting.flatMap(({ size }, i) => [
    // Where another size misses by its waist as much as this one by its hip.
    ...fitting.flatMap(({ miss }) => [
      size.hip - miss * size.hipTolerance.smaller,
      size.hip + miss * size.hipTolerance.larger,
    ]),
    // Where this one is missed from above by as much as the next from below.
    ...fitting.slice(i + 1).map(({ size: next }) => {
      const [{ larger }, { smaller }] = [size.hipTolerance, next.hipTolerance];
      return (size.hip * smaller + next.hip * larger) / (larger + smaller);
    }),
  ]);
  const ends = sizes.flatMap(({ hip, hipTolerance: { larger, smaller } }) => [
    hip - smaller,
    hip + larger,
  ]);
  return [...ends, ...ties].filter(Number.isFinite).sort((a, b) => a - b);
}
