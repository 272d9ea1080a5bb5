/** The share of a crowd that finds a size, fast enough for a search: a last figure comes from `coverageOf`. */
import type { Crowd } from './coverage';
import type { FittedSize } from '../bodies/fit';
import { misfit } from '../bodies/fit';
import { gaussLegendre, normalBelow, normalDensity } from './normal';
import type { BivariateNormal } from './population';
import { waistStrips } from './waist-strips';

/** Tells the share, from 0 to 1, that a range serves. */
export type ServedShare = (sizes: readonly FittedSize[]) => number;

/** For measured bodies exact; for a normal by few nodes, within a thousandth. */
export function servedShare(crowd: Crowd): ServedShare {
  if (crowd.kind === 'normal') return servedOfNormal(crowd.normal);
  const { bodies } = crowd;
  const all = bodies.reduce((sum, { weight }) => sum + weight, 0);
  return (sizes) =>
    bodies.reduce(
      (sum, body) => sum + (sizes.some((size) => misfit(body, size) <= 1) ? body.weight : 0),
      0,
    ) / all;
}

/** Standard deviations of a strip at most. No tolerance. */
const STRIP = 0.5;
const NODES = gaussLegendre(3);

function servedOfNormal({ waist, hip, r }: BivariateNormal): ServedShare {
  const rest = hip.sd * Math.sqrt(1 - r * r);
  return (sizes) => {
    let served = 0;
    for (const [from, to] of waistStrips(waist, sizes, STRIP)) {
      const middle = (from + to) / 2;
      const hips = sizes
        .filter(({ waist: own, waistTolerance: { larger, smaller } }) => {
          return middle >= own - smaller && middle <= own + larger;
        })
        .map(({ hip: own, hipTolerance: { larger, smaller } }) => [own - smaller, own + larger])
        .sort(([a = 0], [b = 0]) => a - b);
      if (hips.length === 0) continue;
      for (const [node, nodeWeight] of NODES) {
        const z = (middle + (node * (to - from)) / 2 - waist.mean) / waist.sd;
        const mean = hip.mean + r * hip.sd * z;
        const weight = (normalDensity(z) / waist.sd) * nodeWeight * ((to - from) / 2);
        let [reached, share] = [-Infinity, 0];
        for (const [start = 0, end = 0] of hips) {
          if (end <= reached) continue;
          share +=
            normalBelow((end - mean) / rest) -
            normalBelow((Math.max(start, reached) - mean) / rest);
          reached = end;
        }
        served += weight * share;
      }
    }
    return served;
  };
}
