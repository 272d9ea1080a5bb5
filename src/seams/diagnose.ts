/** Slips in a rule sheet, found by what undoing them would mend. */
import { besidePoints } from '../given/beside';
import { growthOf } from '../rule-sheet/steps';
import type { Axis } from '../rule-sheet/rule-sheet';
import type { Point } from '../geometry/point';
import { distance } from '../geometry/point';
import type { Piece } from '../pattern/piece';
import {
  CAUSE_CLEAR_BY,
  CAUSE_TOLD_BY,
  GAP_FOLLOWS,
  KIND_CLEAR_BY,
  GAP_LEFT,
  RULE_PROBE,
  RULES_TELL_BY,
  SAME_PLACE,
  SEAM_TELLS,
  SEAM_WARNING,
} from '../tolerance';
import type { Graded } from './closing-change';
import { apart } from './evidence/fit';
import { namesakesIn, oddness } from './evidence/neighbors';
import { irregularity, stepShapes } from './evidence/regularity';
import type { Weigher } from './evidence/weigh';
import { walked, weigher } from './evidence/weigh';
import type { RuledPoint } from './regrade';
import { SLIP_FAMILIES } from './slips/families';
import { along, movesOf, repaired } from './slips/sheet-moves';
import type { Slip } from './slips/slip';
import type { Closing, SheetState } from './slips/subject';
import { movesNow, nameOf, subjectAt, subjectPoints } from './slips/subject';
import type { PairWalk } from './walk-pair';
import type { WalkedSeam } from './walked-seam';

/** What tells of a slip: a seam that the grade sets apart, or the steps of a point alone. */
export interface Diagnosis {
  /** The seam that tells, as it was walked; undefined where steps or neighbors alone tell. */
  readonly seam: WalkedSeam | undefined;
  /** The slip that explains it clearly better than any other. */
  readonly cause: Slip | undefined;
  /** Where no cause is clear, the likeliest of each place that would explain it, at most three. */
  readonly places: readonly Slip[];
  /** Places of the sizes in which it shows. */
  readonly shows: readonly number[];
}

/** Slips looked for one after another in one sheet; a sheet with more is wrong as a whole. */
const MOST_SLIPS = 12;
const MOST_PLACES = 3;

/** A slip and what speaks for it in nats. */
interface Weighed {
  readonly slip: Slip;
  readonly gain: number;
}

/**
 * The slips that a sheet seems to have, the widest gap first, each looked for with those before it
 * undone. A sheet whose seams hold and whose steps are regular costs no more than a look at them.
 */
export function diagnose(
  graded: Graded,
  given: readonly WalkedSeam[],
  sizes: readonly (readonly Piece[])[],
  areRulesTyped: boolean,
): readonly Diagnosis[] {
  const found: Diagnosis[] = [];
  const told = new Set<string>();
  let seams = given;
  let state = startOf(graded, given, sizes);
  for (let round = 0; round < MOST_SLIPS; round++) {
    const seam = widest(seams, state.base, told);
    if (seam === undefined) break;
    const points = sidePieces(state, seam)
      .flatMap((piece) => subjectPoints(state, piece))
      .filter((at) => hasPart(state, graded, seam, at));
    const weigh = weigher(state, seams, graded.regrade);
    const ranked = rank(state, points, weigh, closingOf(state, graded, seam));
    const shows = showing(seam, state.base);
    const cause = clearCause(ranked, (slip) => explains(slip, seam, state, weigh));
    told.add(seam.pair.name);
    if (cause !== undefined) {
      found.push({ seam, cause, places: [], shows });
      state = undone(state, graded, cause);
      seams = rewalked(seams, state);
      continue;
    }
    if (widthOf(seam, state.base) <= SEAM_WARNING) continue;
    const places = placesOf(ranked, (slip) => explains(slip, seam, state, weigh));
    found.push({ seam, cause: undefined, places, shows });
    const [likeliest] = places;
    if (likeliest !== undefined)
      for (const other of seams)
        if (explains(likeliest, other, state, weigh)) told.add(other.pair.name);
  }
  return areRulesTyped ? [...found, ...oddRules(state, graded, seams, found)] : found;
}

function startOf(
  { pattern, rules }: Graded,
  seams: readonly WalkedSeam[],
  sizes: readonly (readonly Piece[])[],
): SheetState {
  const sheet = movesOf(rules);
  let shapes: SheetState['shapes'] | undefined;
  let namesakes: SheetState['namesakes'] | undefined;
  return {
    pattern,
    labels: rules.sizes,
    base: rules.base,
    sheet,
    get shapes() {
      return (shapes ??= stepShapes(sheet));
    },
    get namesakes() {
      return (namesakes ??= namesakesIn(pattern, seams));
    },
    sizes,
  };
}

/** The seam that the grade sets farthest apart, of those that tell and are not told of. */
function widest(
  seams: readonly WalkedSeam[],
  base: number,
  told: ReadonlySet<string>,
): WalkedSeam | undefined {
  let found: WalkedSeam | undefined;
  let most = SEAM_TELLS;
  for (const seam of seams) {
    const width = told.has(seam.pair.name) ? 0 : widthOf(seam, base);
    if (width <= most) continue;
    most = width;
    found = seam;
  }
  return found;
}

/** mm by which a seam is apart in its worst size. */
function widthOf({ walks }: WalkedSeam, base: number): number {
  return Math.max(...walks.map((walk) => apart(walk, walks[base] ?? walk)));
}

function showing({ walks }: WalkedSeam, base: number): readonly number[] {
  return walks.flatMap((walk, size) =>
    apart(walk, walks[base] ?? walk) > SEAM_TELLS ? [size] : [],
  );
}

function sidePieces({ pattern }: SheetState, { pair }: WalkedSeam): readonly number[] {
  const names = new Set(pair.sides.flatMap(({ edges }) => edges.map(({ piece }) => piece)));
  return pattern.pieces.flatMap(({ base }, p) => (names.has(base.plan.name) ? [p] : []));
}

/** Whether a seam changes, as a whole or from notch to notch, if a rule of the point does. */
function hasPart(
  state: SheetState,
  { regrade }: Graded,
  seam: WalkedSeam,
  at: RuledPoint,
): boolean {
  const size = state.base;
  const own = state.sheet[at.piece] ?? new Map<number, readonly Point[]>();
  const kept = seam.walks[size];
  if (kept === undefined) return false;
  return PROBES.some((probe) => {
    const moves = state.labels.map(() => probe);
    const piece = regrade.withRules(at.piece, size, new Map([...own, [at.point, moves] as const]));
    const pieces = (state.sizes[size] ?? []).map((now, p) => (p === at.piece ? piece : now));
    return apart(walked(seam, pieces, size), kept) > SAME_PLACE;
  });
}

/** Two ways of moving a point, of which one at least is not square to what it is on. */
const PROBES: readonly Point[] = [
  { x: 1, y: 1 },
  { x: 1, y: -1 },
];

/** The slips at these points by what speaks for them; those that cannot matter are not weighed. */
function rank(
  state: SheetState,
  points: readonly RuledPoint[],
  { bound, gain }: Weigher,
  closing: Closing,
): readonly Weighed[] {
  const bounded = points
    .flatMap((at) => {
      const subject = subjectAt(state, at, closing);
      return SLIP_FAMILIES.flatMap((family) => family(subject));
    })
    .map((slip) => withSharers(slip, state))
    .map((slip) => ({ slip, most: bound(slip) }))
    .sort((a, b) => b.most - a.most);
  const weighed: Weighed[] = [];
  let best = 0;
  for (const { slip, most } of bounded) {
    const least = Math.max(0, best - 2 * CAUSE_CLEAR_BY);
    if (most < least) break;
    const own = gain(slip, least);
    best = Math.max(best, own);
    if (own >= least) weighed.push({ slip, gain: own });
  }
  return weighed.sort((a, b) => b.gain - a.gain);
}

/** A slip in a named rule is made at every point that uses the rule. */
function withSharers(slip: Slip, { sheet }: SheetState): Slip {
  const { repairs } = slip;
  if (repairs.length > 1) return slip;
  const shared = repairs.flatMap(({ at, moves }) => {
    const rule = sheet[at.piece]?.get(at.point);
    if (rule === undefined) return [];
    return sheet.flatMap((own, piece) =>
      [...own].flatMap(([point, other]) =>
        other === rule && (piece !== at.piece || point !== at.point)
          ? [{ at: { piece, point }, moves }]
          : [],
      ),
    );
  });
  return shared.length === 0 ? slip : { ...slip, repairs: [...repairs, ...shared] };
}

/** The best slip, if it explains what tells, and no other that is told in other words is near it. */
function clearCause(
  ranked: readonly Weighed[],
  explained: (slip: Slip) => boolean,
  least = CAUSE_TOLD_BY,
): Slip | undefined {
  const [best] = ranked;
  if (best === undefined || best.gain < least || !explained(best.slip)) return undefined;
  const isRival = ({ slip, gain }: Weighed): boolean =>
    best.gain - gain < (isSameKind(slip, best.slip) ? KIND_CLEAR_BY : CAUSE_CLEAR_BY) &&
    !isAlike(slip, best.slip) &&
    !hasSameRepairs(slip, best.slip);
  return ranked.some(isRival) ? undefined : best.slip;
}

/** One kind of slip at one point: whether along one axis or both, in one size or all. */
function isSameKind(a: Slip, b: Slip): boolean {
  return a.at.piece === b.at.piece && a.at.point === b.at.point && a.kind === b.kind;
}

function isAlike(a: Slip, b: Slip): boolean {
  return a.at.piece === b.at.piece && a.at.point === b.at.point && a.id === b.id;
}

/**
 * Slips that make the same of the same rules, within what a seam tells: nothing can tell them apart,
 * and the likelier is told.
 */
function hasSameRepairs(a: Slip, b: Slip): boolean {
  if (a.repairs.length !== b.repairs.length) return false;
  return a.repairs.every(({ at, moves }) => {
    const other = b.repairs.find((own) => own.at.piece === at.piece && own.at.point === at.point);
    return moves.every((move, i) => {
      const theirs = other?.moves[i];
      return theirs !== undefined && distance(move, theirs) <= SEAM_TELLS;
    });
  });
}

/** Whether a seam holds with the slip undone, but for a small share of its gap. */
function explains(slip: Slip, seam: WalkedSeam, state: SheetState, weigh: Weigher): boolean {
  const base = seam.walks[state.base];
  if (base === undefined) return false;
  return seam.walks.every((walk, size) => {
    const now = apart(walk, base);
    if (now <= SEAM_TELLS) return true;
    return apart(weigh.walkWithout(slip, seam, size), base) <= Math.max(SEAM_TELLS, GAP_LEFT * now);
  });
}

/** The likeliest slip of each point that explains what tells. */
function placesOf(ranked: readonly Weighed[], explained: (slip: Slip) => boolean): readonly Slip[] {
  const places = new Map<string, Slip>();
  for (const { slip, gain } of ranked) {
    const key = `${slip.at.piece}.${slip.at.point}`;
    if (places.size >= MOST_PLACES) break;
    if (gain > 0 && !places.has(key) && explained(slip)) places.set(key, slip);
  }
  return [...places.values()];
}

function undone(state: SheetState, { regrade }: Graded, { repairs }: Slip): SheetState {
  const sheet = repaired(state.sheet, repairs);
  const pieces = new Set(repairs.map(({ at }) => at.piece));
  return {
    ...state,
    sheet,
    sizes: state.sizes.map((own, size) =>
      own.map((piece, p) =>
        pieces.has(p) ? regrade.withRules(p, size, sheet[p] ?? new Map()) : piece,
      ),
    ),
  };
}

function rewalked(seams: readonly WalkedSeam[], { sizes }: SheetState): readonly WalkedSeam[] {
  return seams.map((seam) => ({
    ...seam,
    walks: seam.walks.map((walk, size): PairWalk => ({
      ...walked(seam, sizes[size] ?? [], size),
      ease: walk.ease,
    })),
  }));
}

/** By Newton's method along one axis of one point, to second order. */
function closingOf(state: SheetState, { regrade }: Graded, seam: WalkedSeam): Closing {
  const known = new Map<string, number | undefined>();
  const base = seam.walks[state.base]?.gap ?? NaN;
  const solve = (at: RuledPoint, axis: Axis, size: number): number | undefined => {
    const own = state.sheet[at.piece];
    const move = (own?.get(at.point) ?? movesNow(state, at))[size] ?? { x: 0, y: 0 };
    const gapAt = (value: number): number => {
      const moves = state.labels.map(() => ({ ...move, [axis]: value }));
      const rules = new Map([...(own ?? []), [at.point, moves] as const]);
      const piece = regrade.withRules(at.piece, size, rules);
      const pieces = (state.sizes[size] ?? []).map((kept, p) => (p === at.piece ? piece : kept));
      return walked(seam, pieces, size).gap - base;
    };
    let value = move[axis];
    for (let round = 0; round < 3; round++) {
      const gap = gapAt(value);
      const slope = (gapAt(value + RULE_PROBE) - gap) / RULE_PROBE;
      if (slope ** 2 < GAP_FOLLOWS) return undefined;
      value -= gap / slope;
    }
    return value;
  };
  return (at, axis, size) => {
    const key = `${at.piece} ${at.point} ${axis} ${size}`;
    if (!known.has(key)) known.set(key, solve(at, axis, size));
    return known.get(key);
  };
}

/**
 * Slips at points that go against what is beside them, or whose steps are irregular, although their
 * seams hold or they have none. Where a seam leaves something open, nothing more is told of its
 * pieces.
 */
function oddRules(
  state: SheetState,
  graded: Graded,
  seams: readonly WalkedSeam[],
  before: readonly Diagnosis[],
): readonly Diagnosis[] {
  const open = new Set(
    before.flatMap(({ cause, seam }) =>
      cause === undefined && seam !== undefined ? sidePieces(state, seam) : [],
    ),
  );
  const found: Diagnosis[] = [];
  let now = state;
  let walks = seams;
  const told = new Set<string>();
  for (const at of oddPoints(state)) {
    if (open.has(at.piece) || told.has(nameOf(state.pattern, at))) continue;
    if (strangeness(now, at) <= RULES_TELL_BY) continue;
    const weigh = weigher(now, walks, graded.regrade);
    const ranked = rank(now, [at, ...besideOf(now, at)], weigh, () => undefined);
    const cause = clearCause(ranked, () => true, RULES_TELL_BY);
    if (cause === undefined) continue;
    for (const repair of cause.repairs) told.add(nameOf(state.pattern, repair.at));
    found.push({ seam: undefined, cause, places: [], shows: changedSizes(now, cause) });
    now = undone(now, graded, cause);
    walks = rewalked(walks, now);
  }
  return found;
}

/** The ruled points of which something is strange, the strangest first. */
function oddPoints(state: SheetState): readonly RuledPoint[] {
  return state.sheet
    .flatMap((own, piece) => [...own.keys()].map((point) => ({ piece, point })))
    .map((at) => ({ at, strange: strangeness(state, at) }))
    .filter(({ strange }) => strange > RULES_TELL_BY)
    .sort((a, b) => b.strange - a.strange)
    .map(({ at }) => at);
}

function strangeness({ pattern, namesakes, sheet, shapes }: SheetState, at: RuledPoint): number {
  const moves = sheet[at.piece]?.get(at.point) ?? [];
  const steps = (['x', 'y'] as const).map((axis) =>
    irregularity(growthOf(along(moves, axis)), shapes),
  );
  return Math.max(oddness(pattern, namesakes, sheet, at), ...steps);
}

function besideOf({ pattern, sheet }: SheetState, { piece, point }: RuledPoint) {
  const given = pattern.pieces[piece];
  return given === undefined
    ? []
    : besidePoints(given, sheet[piece], point).map((other) => ({ piece, point: other }));
}

function changedSizes({ sheet, labels }: SheetState, { repairs }: Slip): readonly number[] {
  return labels.flatMap((_, size) => {
    const isChanged = repairs.some(({ at, moves }) => {
      const [now, then] = [sheet[at.piece]?.get(at.point)?.[size], moves[size]];
      return (
        Math.hypot((now?.x ?? 0) - (then?.x ?? 0), (now?.y ?? 0) - (then?.y ?? 0)) > SEAM_TELLS
      );
    });
    return isChanged ? [size] : [];
  });
}
