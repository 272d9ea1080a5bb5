/** Which allowance a seam has: the name of its parameter, by the seam's own name. */
import type { Edge, Part, PiecePlan } from './piece';

/**
 * Seams that meet in sewing share a parameter, so that their cut edges lie on each other. The
 * allowance of the center back is that of the zip, in a slit below it too.
 */
const BY_SEAM: Readonly<Record<string, string>> = {
  waist: 'waist_allowance',
  tuck: 'waist_allowance',
  underlap: 'waist_allowance',
  side: 'side_allowance',
  hem: 'hem_allowance',
  vent_hem: 'hem_allowance',
  vent: 'vent_allowance',
  vent_top: 'vent_allowance',
  slit: 'zip_allowance',
  center_back: 'zip_allowance',
  inside_edge: 'band_allowance',
  overlap_end: 'band_allowance',
  underlap_end: 'band_allowance',
  facing_edge: 'facing_edge_allowance',
};

const HEMS: ReadonlySet<string> = new Set(['hem', 'vent_hem']);

/** Whether a seam is turned up at the lower edge. */
export function isHem(seam: string): boolean {
  return HEMS.has(seam);
}

/** Whether the allowances of a seam are pressed apart once it is sewn. */
export function isPressedOpen(seam: string): boolean {
  return seam === 'side' || seam === 'center_back';
}

/** The parameter that holds the allowance of a seam. Throws a RangeError for an unknown seam. */
export function allowanceParameter(part: Part, seam: string): string {
  const name = part === 'lining' && isHem(seam) ? 'lining_hem_allowance' : BY_SEAM[seam];
  if (name === undefined) throw new RangeError(`seam ${seam} has no allowance`);
  return name;
}

/** mm of allowance along an edge; none along a fold. Throws a RangeError if it is not known. */
export function allowanceAlong(
  { part }: PiecePlan,
  edge: Edge,
  parameters: ReadonlyMap<string, number>,
): number {
  if (edge.kind === 'fold') return 0;
  const name = allowanceParameter(part, edge.seam);
  const width = parameters.get(name);
  if (width === undefined) throw new RangeError(`${name} has no value`);
  return width;
}
