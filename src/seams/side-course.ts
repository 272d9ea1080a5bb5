/** In which direction each edge of a side is walked, so that one edge begins where the one before ends. */
import type { Piece } from '../pattern/piece';
import type { SeamEdge, SeamPair, SeamSide } from '../pattern/seam-pair';
import { seamFit, betterFit, sewnEdges } from './seam-way';
import type { AreSewn } from './seam-way';
import type { Walk } from './seam-walk';
import { walkSide } from './seam-walk';

/** What speaks for two edges meeting: they share a point, the edges beside them are sewn, or a name. */
const SHARED = 4;
const SEWN = 2;
const NAMESAKE = 1;

/**
 * The same seams, the edges of each side turned so that they follow each other: the front armhole from
 * the underarm up where the back's goes on from the shoulder down. Edges meet at a point that they
 * share, where the edges beside them are sewn to each other, or at points of one name. Where an armhole
 * could be walked from the shoulder as well as from the underarm, it goes as fits the other side best. A
 * side that says how its edges run, and one of which nothing tells, is left as it is. `base` are the
 * pieces of the base size.
 */
export function withCourses(
  base: readonly Piece[],
  seams: readonly SeamPair[],
): readonly SeamPair[] {
  const areSewn = sewnEdges(seams);
  return seams.map((pair) => {
    const [firsts = [], seconds = []] = pair.sides.map((side) => courses(base, side, areSewn));
    const candidates = firsts.flatMap((first) =>
      seconds.map((second): SeamPair => ({ ...pair, sides: [first, second] })),
    );
    const [only = pair, ...others] = candidates;
    if (others.length === 0) return only;
    return candidates
      .map((candidate) => ({ candidate, fit: seamFit(base, candidate, areSewn) }))
      .reduce((best, own) => (betterFit(own.fit, best.fit) ? own : best)).candidate;
  });
}

/** The ways in which the edges of a side follow each other best, at most two. */
function courses(base: readonly Piece[], side: SeamSide, areSewn: AreSewn): readonly SeamSide[] {
  if (side.edges.length < 2 || side.edges.some(({ back }) => back)) return [side];
  const found = [false, true].map((isTurned) => courseFrom(base, side, isTurned, areSewn));
  const most = Math.max(...found.map(({ meets }) => meets));
  return most === 0 ? [side] : found.filter(({ meets }) => meets === most).map((own) => own.side);
}

/** The side from its first edge on, as it is drawn or turned; how well its edges meet. */
function courseFrom(
  base: readonly Piece[],
  { edges }: SeamSide,
  isTurned: boolean,
  areSewn: AreSewn,
): { readonly side: SeamSide; readonly meets: number } {
  let course: Course = { edges: [], meets: 0, last: undefined };
  for (const { piece, edge } of edges) {
    const drawn = followed(base, course, { piece, edge }, areSewn);
    const turned = followed(base, course, { piece, edge, back: true }, areSewn);
    const isBack = course.last === undefined ? isTurned : turned.meets > drawn.meets;
    course = isBack ? turned : drawn;
  }
  return { side: { edges: course.edges }, meets: course.meets };
}

/** Edges that follow each other, how well they meet, and the walk of the last of them. */
interface Course {
  readonly edges: readonly SeamEdge[];
  readonly meets: number;
  readonly last: Walk | undefined;
}

function followed(
  base: readonly Piece[],
  { edges, meets, last }: Course,
  edge: SeamEdge,
  areSewn: AreSewn,
): Course {
  const walk = walkSide(base, { edges: [edge] });
  const more = last === undefined ? 0 : meeting(last, walk, areSewn);
  return { edges: [...edges, edge], meets: meets + more, last: walk };
}

/** How much speaks for the second walk beginning where the first ends. */
function meeting(first: Walk, second: Walk, areSewn: AreSewn): number {
  const [end, start] = [first.ends[1], second.ends[0]];
  if (end === start) return SHARED;
  if (areSewn(first.beside[1], second.beside[0])) return SEWN;
  return bare(end) === bare(start) ? NAMESAKE : 0;
}

function bare(name: string): string {
  return name.replace(/^.*\./u, '');
}
