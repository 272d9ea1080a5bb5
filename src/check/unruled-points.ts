/** Points of a given pattern without rules, and what they do instead. */
import { angleBetween, scale } from '../geometry/point';
import { segmentTangent } from '../geometry/segment';
import { moverOf } from '../given/move-piece';
import type { Pattern, PatternPiece } from '../pattern/pattern';
import { edgeSegments } from '../pattern/piece';
import type { GivenRules } from '../rule-sheet/point-rules';
import { apart } from '../seams/evidence/holding';
import type { WalkedSeam } from '../seams/walked-seam';
import { CORNER_WANTS_RULE, SEAM_MATCH, SEAM_WARNING } from '../tolerance';
import type { Finding } from './finding';
import { ruleFinding } from './finding';

/**
 * A failure for a piece all of whose rules are one and the same move while a corner has none: the corner
 * follows, so the piece is only carried along and every size has the shape of the base. Whoever lists
 * the points that grow, and leaves out those that stay, means that these stay.
 */
export function checkShiftedPieces(
  { pieces }: Pattern,
  { ruled }: GivenRules,
  seams: readonly WalkedSeam[],
): Finding[] {
  return pieces.flatMap((piece, p): Finding | [] => {
    const own = ruled[p] ?? new Map<number, never>();
    const [first, ...others] = [...own.values()];
    const { name, index } = piece.base.plan;
    const bare = [...cornersOf(piece, seams)].filter((corner) => !own.has(index.get(corner) ?? -1));
    const isMoved = first?.moves.some((move) => Math.hypot(move.x, move.y) > SEAM_MATCH) ?? false;
    if (bare.length === 0 || !isMoved) return [];
    if (!others.every(({ moves }) => moveAlike(first?.moves, moves))) return [];
    return ruleFinding(
      'fail',
      'piece-shifted',
      { piece: name, subject: bare.join(', ') },
      'all rules of the piece are one move, and its corners without a rule go with them, so every size ' +
        'has the shape of the base: give these corners rules, 0 where they stay',
    );
  });
}

/**
 * A note for a point that goes with those beside it, as darts may, and one for all curve points of a piece. A
 * warning for a
 * corner between ruled points that move differently: its place is a guess. A failure where a seam that
 * ends in such a corner comes apart.
 */
export function checkUnruledPoints(
  { pieces }: Pattern,
  { ruled, base }: GivenRules,
  seams: readonly WalkedSeam[],
): Finding[] {
  return pieces.flatMap((piece, p) => {
    const own = ruled[p] ?? new Map<number, never>();
    if (own.size === 0) return [];
    const { pointNames, name } = piece.base.plan;
    const corners = cornersOf(piece, seams);
    const nameOf = (i: number): string => pointNames[i] ?? '';
    const { followers } = moverOf(piece, new Set(own.keys()));
    const curves = curvePointsOf(piece);
    const within = followers.filter(({ point }) => curves.has(point)).map(({ point }) => point);
    const isOne = within.length > 1;
    const told = followers.filter(({ point }) => !isOne || !within.includes(point));
    const single = told.map(({ point, from, to }): Finding => {
      const isGuess =
        corners.has(nameOf(point)) && !moveAlike(own.get(from)?.moves, own.get(to)?.moves);
      const parting = isGuess ? partingSeams(seams, `${name}.${nameOf(point)}`, base) : [];
      const finding = ruleFinding(
        parting.length > 0 ? 'fail' : isGuess ? 'warning' : 'note',
        'point-unruled',
        { piece: name, subject: nameOf(point) },
        `the ${isGuess ? 'corner' : 'point'} has no rule and moves ${from === to ? 'with' : 'between'} ` +
          (from === to
            ? nameOf(from)
            : `${nameOf(from)} and ${nameOf(to)}, by its share of the way`) +
          (isGuess
            ? '; give it a rule, 0 where it stays, since these two move differently'
            : '; a rule of its own would move it otherwise') +
          (parting.length > 0 ? `, and the seam ${parting.join(', ')} comes apart` : ''),
      );
      return { ...finding, explains: parting };
    });
    return isOne ? [...single, curvesNote(name, within.map(nameOf))] : single;
  });
}

/** The points within curves that are no notches: nobody is asked for a rule of each. */
function curvePointsOf({ base: { plan }, splines }: PatternPiece): ReadonlySet<number> {
  const notches = new Set(plan.notches.map(({ name }) => plan.index.get(name)));
  const inner = splines.flatMap(({ points }) => points.slice(1, -1));
  return new Set(inner.filter((point) => !notches.has(point)));
}

function curvesNote(piece: string, names: readonly string[]): Finding {
  const [first = '', second = ''] = names;
  const others = names.length === 2 ? second : `${names.length - 1} more`;
  return ruleFinding(
    'note',
    'point-unruled',
    { piece, subject: `${first} and ${others}` },
    `${names.length} curve points have no rule and move between the ruled points before and after them, ` +
      'by their share of the way; a rule of its own would move each otherwise',
  );
}

/**
 * The points at which the outline of a piece turns as no curve does, or a seam ends. Neither legs of
 * darts, which go with their dart, nor notches.
 */
function cornersOf(
  { base, splines }: PatternPiece,
  seams: readonly WalkedSeam[],
): ReadonlySet<string> {
  const { outline, name, pointNames, notches } = base.plan;
  const passed = new Set([
    ...splines.flatMap(({ points }) => points.slice(1, -1)).map((i) => pointNames[i] ?? ''),
    ...notches.flatMap(({ place }) => (place.by === 'joint' ? [place.point] : [])),
  ]);
  const ends = new Set(
    seams.flatMap(({ walks: [walk] }) => walk?.walks.flatMap((side) => side.ends) ?? []),
  );
  return new Set(
    outline.flatMap((edge, i) => {
      const before = outline.at(i - 1);
      if (before === undefined || before.kind === 'dart' || edge.kind === 'dart') return [];
      if (passed.has(edge.from)) return [];
      if (ends.has(`${name}.${edge.from}`)) return [edge.from];
      const [arriving, leaving] = [edgeSegments(base, before).at(-1), edgeSegments(base, edge)[0]];
      if (arriving === undefined || leaving === undefined) return [];
      const inside = angleBetween(
        scale(segmentTangent(arriving, 1), -1),
        segmentTangent(leaving, 0),
      );
      return Math.abs(inside - 180) > CORNER_WANTS_RULE ? [edge.from] : [];
    }),
  );
}

type Moves = readonly { readonly x: number; readonly y: number }[];

function moveAlike(first: Moves = [], second: Moves = []): boolean {
  return first.every(
    ({ x, y }, size) =>
      Math.hypot(x - (second[size]?.x ?? NaN), y - (second[size]?.y ?? NaN)) <= SEAM_MATCH,
  );
}

/** The seams that end in a point and are farther apart in some size than a sewer eases in. */
function partingSeams(seams: readonly WalkedSeam[], end: string, base: number): readonly string[] {
  return seams
    .filter(({ walks }) => walks[base]?.walks.some(({ ends }) => ends.includes(end)) === true)
    .filter(({ walks }) => walks.some((walk) => apart(walk, walks[base] ?? walk) > SEAM_WARNING))
    .map(({ pair }) => pair.name);
}
