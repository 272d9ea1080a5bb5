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
      seconds.map((second) => {
        const sides = [{ edges: first.edges }, { edges: second.edges }] as const;
        return {
          pair: { ...pair, sides },
          meets: first.meets + second.meets,
          sewn: first.sewn + second.sewn,
        };
      }),
    );
    const [only, ...others] = candidates.toSorted((a, b) => b.meets - a.meets);
    if (only === undefined || others.length === 0) return only?.pair ?? pair;
    return [only, ...others]
      .map((own) => ({ ...own, fit: seamFit(base, own.pair, areSewn) }))
      .map((own) => ({ ...own, fit: { ...own.fit, goOn: own.fit.goOn + 2 * own.sewn } }))
      .reduce((best, own) => (betterFit(own.fit, best.fit) ? own : best)).pair;
  });
}

/** Edges that follow each other, how well they meet, at how many joins by a seam, and the last walk. */
interface Course {
  readonly edges: readonly SeamEdge[];
  readonly meets: number;
  readonly sewn: number;
  readonly last: Walk | undefined;
}

/**
 * The ways in which the edges of a side follow each other, at most two. Edges that share a point meet
 * there. A seam beside two edges does not yet tell: of armholes whose side seam alone is named it may
 * be where the sleeve begins or where the front goes on to the back, so both are tried on the other side.
 */
function courses(base: readonly Piece[], side: SeamSide, areSewn: AreSewn): readonly Course[] {
  const asIs = [{ edges: side.edges, meets: 0, sewn: 0, last: undefined }];
  if (side.edges.length < 2 || side.edges.some(({ back }) => back)) return asIs;
  const found = [false, true].map((isTurned) => courseFrom(base, side, isTurned, areSewn));
  const most = Math.max(...found.map(({ meets }) => meets));
  if (most === 0) return asIs;
  return found.filter(({ meets }) => (most < SHARED ? meets > 0 : meets === most));
}

/** The side from its first edge on, as it is drawn or turned. */
function courseFrom(
  base: readonly Piece[],
  { edges }: SeamSide,
  isTurned: boolean,
  areSewn: AreSewn,
): Course {
  let course: Course = { edges: [], meets: 0, sewn: 0, last: undefined };
  for (const { piece, edge } of edges) {
    const drawn = followed(base, course, { piece, edge }, areSewn);
    const turned = followed(base, course, { piece, edge, back: true }, areSewn);
    const isBack = course.last === undefined ? isTurned : turned.meets > drawn.meets;
    course = isBack ? turned : drawn;
  }
  return course;
}

function followed(
  base: readonly Piece[],
  { edges, meets, sewn, last }: Course,
  edge: SeamEdge,
  areSewn: AreSewn,
): Course {
  const walk = walkSide(base, { edges: [edge] });
  const more = last === undefined ? 0 : meeting(last, walk, areSewn);
  return {
    edges: [...edges, edge],
    meets: meets + more,
    sewn: sewn + (more === SEWN ? 1 : 0),
    last: walk,
  };
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
