/** A chain of curves through named joints: the part of an outline that has no straight edge. */
import type { Point } from '../../geometry/point';
import type { Cubic } from '../../geometry/segment';
import type { Edge } from '../../pattern/piece';

/** What is the same in every size of a chain. */
export interface CurveChain {
  readonly pointNames: readonly string[];
  readonly handles: readonly string[];
  readonly edges: readonly Edge[];
}

/** A curve runs from each joint to the next; `seams` has the seam of each curve. */
export function curveChain(joints: readonly string[], seams: readonly string[]): CurveChain {
  const edges = seams.map((seam, i) => {
    const [from = '', to = ''] = [joints[i], joints[i + 1]];
    const [leave, arrive] = [`${from}_leave`, `${to}_arrive`];
    return { kind: 'cubic' as const, from, leave, arrive, to, seam };
  });
  return {
    pointNames: [
      ...joints.slice(0, 1),
      ...edges.flatMap(({ leave, arrive, to }) => [leave, arrive, to]),
    ],
    handles: edges.flatMap(({ leave, arrive }) => [leave, arrive]),
    edges,
  };
}

/** The places of a chain's points, from its curves in one size. */
export function chainPoints(curves: readonly Cubic[]): readonly Point[] {
  return [
    ...curves.slice(0, 1).map(({ from }) => from),
    ...curves.flatMap(({ leave, arrive, to }) => [leave, arrive, to]),
  ];
}
