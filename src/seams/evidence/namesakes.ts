/** Whether a rule goes with its neighbors: points beside it, and its namesakes on other pieces. */
import { besidePoints } from '../../given/beside';
import type { Point } from '../../geometry/point';
import type { Pattern } from '../../pattern/pattern';
import type { Piece } from '../../pattern/piece';
import { meetsItself } from '../../pattern/seam-pair';
import type { WalkedSeam } from '../walked-seam';
import type { SheetMoves } from '../slips/sheet-moves';
import type { RuledPoint } from '../../rule-sheet/point-rules';
import { GOES_WITH, SEAM_MATCH } from '../../tolerance';
import type { Axis } from '../../rule-sheet/rule-sheet';
import { misfit } from './misfit';

/** mm outside those beside it that nobody wonders at; the sizes of one rule tell nearly the same. */
const BESIDE = { usual: 1, weight: 1.5 };
/** mm of the way from the point before over a point to the one after it: the shorter, the likelier. */
const WAY = { usual: 10, weight: 0.5 };
/** Nats against a rule that goes against all beside it, and turned round would go with them. */
const AGAINST = 8;
/** Namesakes of a point that are asked: enough for the gores of a skirt. */
const MOST_NAMESAKES = 8;
/** mm by which namesakes may differ. */
const NAMESAKE = { usual: 1, weight: 2 };

/** What speaks against the moves of a point, in nats; nothing where it has no neighbors. */
export function oddness(
  pattern: Pattern,
  namesakes: Namesakes,
  sheet: SheetMoves,
  at: RuledPoint,
): number {
  const own = namesakes[at.piece]?.[at.point] ?? [];
  return besideOddness(pattern, namesakes, sheet, at) + namesakeOddness(own, sheet, at);
}

/** The same by the points beside it alone; a namesake can only speak for it. */
export function besideOddness(
  pattern: Pattern,
  namesakes: Namesakes,
  sheet: SheetMoves,
  at: RuledPoint,
): number {
  const own = namesakes[at.piece]?.[at.point] ?? [];
  const beside = besideMoves(pattern, sheet, at);
  const moves = sheet[at.piece]?.get(at.point);
  if (moves === undefined) return 0;
  const against = (['x', 'y'] as const).filter((axis) =>
    goesAgainst(moves, beside, namesakeMoves(own, sheet), axis),
  );
  return outsideOddness(moves, beside) + AGAINST * against.length;
}

/** The moves of the ruled points before and after a point. */
function besideMoves(
  { pieces }: Pattern,
  sheet: SheetMoves,
  at: RuledPoint,
): readonly (readonly Point[])[] {
  const [given, own] = [pieces[at.piece], sheet[at.piece]];
  if (given === undefined || own === undefined) return [];
  return besidePoints(given, own, at.point).map((other) => own.get(other) ?? []);
}

function outsideOddness(
  moves: readonly Point[],
  [before, after]: readonly (readonly Point[])[],
): number {
  if (before === undefined || after === undefined) return 0;
  const sum = (['x', 'y'] as const).reduce((all, axis) => {
    return moves.reduce((one, move, size) => {
      const [a, b] = [before[size]?.[axis] ?? 0, after[size]?.[axis] ?? 0];
      const value = move[axis];
      const outside = Math.max(0, Math.min(a, b) - value, value - Math.max(a, b));
      const way = Math.abs(value - a) + Math.abs(b - value);
      return one + misfit(outside, BESIDE.usual) + WAY.weight * misfit(way, WAY.usual);
    }, all);
  }, 0);
  return (BESIDE.weight * sum) / Math.max(1, moves.length - 1);
}

/**
 * Whether a rule goes against the points beside it in every size in which it moves, and with its sign
 * turned would go with them; not where a namesake with a rule of its own moves as far, this way or
 * the other: then the neighbors of both say the opposite of each other.
 */
function goesAgainst(
  moves: readonly Point[],
  beside: readonly (readonly Point[])[],
  namesakes: readonly (readonly Point[])[],
  axis: Axis,
): boolean {
  const moved = moves.flatMap((move, size) => (Math.abs(move[axis]) > SEAM_MATCH ? [size] : []));
  if (beside.length < 2 || moved.length === 0) return false;
  const isOdd = moved.every((size) =>
    isAgainst(
      moves[size]?.[axis] ?? 0,
      beside.map((other) => other[size]?.[axis] ?? 0),
    ),
  );
  return (
    isOdd &&
    !namesakes.some(
      (other) =>
        other !== moves &&
        moved.every((size) => {
          const [own, theirs] = [moves[size]?.[axis] ?? 0, other[size]?.[axis] ?? 0];
          return own * theirs > 0 || Math.abs(own + theirs) <= GOES_WITH * Math.abs(own);
        }),
    )
  );
}

function isAgainst(own: number, beside: readonly number[]): boolean {
  const [least, most] = [Math.min(...beside), Math.max(...beside)];
  const spare = GOES_WITH * Math.abs(own);
  const goesWith = (value: number): boolean => value >= least - spare && value <= most + spare;
  return goesWith(-own) && !goesWith(own) && beside.some((other) => other * own < 0);
}

function namesakeOddness(
  namesakes: readonly Namesake[],
  sheet: SheetMoves,
  at: RuledPoint,
): number {
  const moves = sheet[at.piece]?.get(at.point);
  if (moves === undefined) return 0;
  const apart = namesakeMoves(namesakes, sheet).map((other) =>
    Math.max(...moves.map((move, size) => differ(move, other[size]))),
  );
  return apart.length === 0 ? 0 : NAMESAKE.weight * misfit(Math.min(...apart), NAMESAKE.usual);
}

function differ(a: Point, b: Point | undefined): number {
  return Math.max(Math.abs(a.x - (b?.x ?? NaN)), Math.abs(a.y - (b?.y ?? NaN)));
}

/** The moves that each point of its name on another piece would give it, mirrored as the pieces are. */
export function namesakeMoves(
  namesakes: readonly Namesake[],
  sheet: SheetMoves,
): readonly (readonly Point[])[] {
  return namesakes.flatMap(({ at, isMirrored }) => {
    const moves = sheet[at.piece]?.get(at.point);
    if (moves === undefined) return [];
    return [isMirrored ? moves.map(({ x, y }) => ({ x: -x, y })) : moves];
  });
}

/** A point of the same name on another piece, which may lie the other way round in x. */
export interface Namesake {
  readonly at: RuledPoint;
  readonly isMirrored: boolean;
}

/** The namesakes of every point, and the points that it meets in a seam, by piece and point. */
export type Namesakes = readonly (readonly (readonly Namesake[])[])[];

/** The points of the same name alone, each once, without those that it only meets in a seam. */
export function sameNamed(
  { pieces }: Pattern,
  namesakes: Namesakes,
  at: RuledPoint,
): readonly Namesake[] {
  const nameAt = ({ piece, point }: RuledPoint): string | undefined =>
    pieces[piece]?.base.plan.pointNames[point];
  const own = (namesakes[at.piece]?.[at.point] ?? []).filter(
    ({ at: other }) => other.piece !== at.piece && nameAt(other) === nameAt(at),
  );
  // Where it also meets its namesake in a seam, the way round is told by the pieces.
  return own.filter(
    ({ at: { piece, point } }, i) =>
      own.findIndex(({ at: first }) => first.piece === piece && first.point === point) === i,
  );
}

/**
 * Finds all namesakes; how two pieces lie to each other is told by the points that they share. Points
 * that meet at the end of a seam move alike, or as in a mirror: either may be.
 */
export function namesakesIn({ pieces }: Pattern, seams: readonly WalkedSeam[]): Namesakes {
  const mates = seamMates(pieces, seams);
  const byName = new Map<string, RuledPoint[]>();
  pieces.forEach(({ base: { plan } }, piece) => {
    plan.pointNames.forEach((name, point) => {
      const found = byName.get(name) ?? [];
      found.push({ piece, point });
      byName.set(name, found);
    });
  });
  return pieces.map(({ base }, piece) => {
    const mirrored = new Map<number, boolean>();
    return base.plan.pointNames.map((name) => [
      ...nearest(byName.get(name) ?? [], piece).map((at) => {
        const isMirrored = mirrored.get(at.piece) ?? runsAgainst(base, pieces[at.piece]?.base);
        mirrored.set(at.piece, isMirrored);
        return { at, isMirrored };
      }),
      ...(mates.get(`${base.plan.name}.${name}`) ?? []).flatMap((at) =>
        [false, true].map((isMirrored) => ({ at, isMirrored })),
      ),
    ]);
  });
}

/** Those on the pieces listed nearest to a piece, which belong to one garment sooner than others. */
function nearest(places: readonly RuledPoint[], piece: number): readonly RuledPoint[] {
  const here = places.findIndex((at) => at.piece === piece);
  return places
    .slice(Math.max(0, here - MOST_NAMESAKES), here + MOST_NAMESAKES + 1)
    .filter((at) => at.piece !== piece)
    .sort((a, b) => Math.abs(a.piece - piece) - Math.abs(b.piece - piece))
    .slice(0, MOST_NAMESAKES);
}

/** By `piece.point` the points that it meets at the ends of seams of one edge a side. */
function seamMates(
  pieces: Pattern['pieces'],
  seams: readonly WalkedSeam[],
): ReadonlyMap<string, readonly RuledPoint[]> {
  const places = new Map(
    pieces.flatMap(({ base: { plan } }, piece) =>
      plan.pointNames.map((name, point): [string, RuledPoint] => [
        `${plan.name}.${name}`,
        { piece, point },
      ]),
    ),
  );
  const mates = new Map<string, RuledPoint[]>();
  for (const { pair, walks } of seams) {
    const [first, second] = walks[0]?.walks ?? [];
    if (meetsItself(pair) || pair.sides.some(({ edges }) => edges.length > 1)) continue;
    for (const end of [0, 1] as const)
      for (const [own, other] of [
        [first?.ends[end], second?.ends[end]],
        [second?.ends[end], first?.ends[end]],
      ]) {
        const mate = places.get(other ?? '');
        if (own !== undefined && mate !== undefined)
          mates.set(own, [...(mates.get(own) ?? []), mate]);
      }
  }
  return mates;
}

/** Whether the points that two pieces share lie the other way round in x. */
function runsAgainst(a: Piece, b: Piece | undefined): boolean {
  const shared = a.plan.pointNames.flatMap((name, i) => {
    const [own, other] = [a.points[i], b?.points[b.plan.index.get(name) ?? -1]];
    return own === undefined || other === undefined ? [] : [[own.x, other.x] as const];
  });
  const mean = (k: 0 | 1): number =>
    shared.reduce((sum, pair) => sum + pair[k], 0) / Math.max(1, shared.length);
  const [m, n] = [mean(0), mean(1)];
  return shared.reduce((sum, [x, z]) => sum + (x - m) * (z - n), 0) < 0;
}
