/** What is added outside the edges of a piece, as its plan says. */
import type { Edge, EdgeFinish, PiecePlan } from './piece';

/** mm. A wider allowance is another piece of cloth. */
export const WIDEST_ALLOWANCE = 200;

/** Whether anything says how a piece is cut: its own cut line, or an allowance of an edge. */
export function saysHowCut({ cutLine, edges }: PiecePlan): boolean {
  return cutLine !== undefined || hasAllowances({ edges });
}

/** Whether a piece states an allowance for any of its edges. */
export function hasAllowances({ edges }: Pick<PiecePlan, 'edges'>): boolean {
  return [...edges.values()].some(({ allowance }) => allowance !== undefined);
}

/**
 * mm of allowance along an edge in a size with these parameters; none along a fold, or where nothing
 * is stated. Throws a RangeError if the parameter that holds it has no value.
 */
export function allowanceAlong(
  { edges }: PiecePlan,
  { kind, seam }: Pick<Edge, 'kind' | 'seam'>,
  parameters: ReadonlyMap<string, number>,
): number {
  const stated = kind === 'fold' ? undefined : edges.get(seam)?.allowance;
  if (stated === undefined || typeof stated === 'number') return stated ?? 0;
  const width = parameters.get(stated);
  if (width === undefined) throw new RangeError(`${stated} has no value`);
  return width;
}

/** The allowances by the names of the edges, in the order of the outline; empty if none is stated. */
export function allowancesOf(
  plan: PiecePlan,
  parameters: ReadonlyMap<string, number>,
): ReadonlyMap<string, number> {
  if (!hasAllowances(plan)) return new Map();
  return new Map(plan.outline.map((edge) => [edge.seam, allowanceAlong(plan, edge, parameters)]));
}

/** How the allowance of an edge is worked; plain where nothing is said. */
export function finishOf({ edges }: PiecePlan, seam: string): EdgeFinish {
  return edges.get(seam)?.finish ?? 'plain';
}

/** How the allowance of an edge of this name is usually worked, in a skirt or elsewhere. */
export function usualFinish(edge: string): EdgeFinish {
  if (edge === 'hem' || edge === 'vent_hem') return 'hem';
  return edge === 'side' || edge === 'center_back' ? 'pressed-open' : 'plain';
}
