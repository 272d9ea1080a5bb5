/** What undoing a slip is worth: how much better seams, steps and neighbors hold afterwards. */
import { besidePoints } from '../../given/beside';
import { SAME_PLACE } from '../../tolerance';
import { growthOf } from '../../rule-sheet/moves-and-steps';
import type { Piece } from '../../pattern/piece';
import type { RuledPoint } from '../../rule-sheet/point-rules';
import type { Regrader } from '../regrade';
import { along, repaired } from '../slips/sheet-moves';
import type { SheetMoves } from '../slips/sheet-moves';
import type { SuspectedSlip } from '../slips/suspected-slip';
import type { SheetState } from '../slips/sheet-state';
import { movesNow } from '../slips/sheet-state';
import type { PairWalk } from '../walk-pair';
import type { WalkedSeam } from '../walked-seam';
import { walkedOn } from '../walked-seam';
import { pieceMisfit, seamMisfit } from './holding';
import { oddness } from './namesakes';
import { irregularity } from './regularity';
import { growing, nearing } from './widening';

/** Nats for and against a slip. */
export interface Weigher {
  /** What undoing it is worth at most, from steps and neighbors alone: quick. */
  readonly bound: (slip: SuspectedSlip) => number;
  /** What undoing it is worth; where that is less than `least`, some number below that. */
  readonly gain: (slip: SuspectedSlip, least: number) => number;
  /** The walk of a seam in a size with the slip undone. */
  readonly walkWithout: (slip: SuspectedSlip, seam: WalkedSeam, size: number) => PairWalk;
}

/**
 * Weighs slips against the sheet as it is; `seams` are walked as it makes them. Points that near each
 * other where the pattern grows speak for a slip only if `nearingTells`.
 */
export function weigher(
  state: SheetState,
  seams: readonly WalkedSeam[],
  regrade: Regrader,
  nearingTells: boolean,
): Weigher {
  const { pattern, sheet, base, sizes } = state;
  const seamsOf = remembered(
    (piece: number) => String(piece),
    (piece) => touching(seams, pattern.pieces[piece]?.base.plan.name ?? ''),
  );
  const seamNow = remembered(
    ([seam, size]: readonly [WalkedSeam, number]) => `${seam.pair.name} ${size}`,
    ([{ walks }, size]) => seamMisfit(walks[size] as PairWalk, walks[base] as PairWalk),
  );
  const pieceAt = (piece: number, size: number): Piece => sizes[size]?.[piece] as Piece;
  const pieceNow = (piece: number, size: number): number =>
    pieceMisfit(pieceAt(piece, size), pieceAt(piece, base));
  const rulesGain = weighedByRules(state, nearingTells);
  const sizesOf = (slip: SuspectedSlip): readonly number[] =>
    state.labels.flatMap((_, size) => (differsIn(state, slip, size) ? [size] : []));
  const piecesOf = (slip: SuspectedSlip): readonly number[] => [
    ...new Set(slip.repairs.map(({ at }) => at.piece)),
  ];
  const seamsBy = (slip: SuspectedSlip): readonly WalkedSeam[] => [
    ...new Set(piecesOf(slip).flatMap((piece) => seamsOf(piece))),
  ];
  const evidenceNow = (slip: SuspectedSlip): number =>
    sizesOf(slip).reduce(
      (sum, size) =>
        sum +
        seamsBy(slip).reduce((all, seam) => all + seamNow([seam, size]), 0) +
        piecesOf(slip).reduce((all, piece) => all + pieceNow(piece, size), 0),
      0,
    );
  const mended = (rules: SheetMoves, changed: readonly number[], size: number) =>
    (sizes[size] ?? []).map((piece, p) =>
      changed.includes(p) ? regrade.withRules(p, size, rules[p] ?? new Map()) : piece,
    );
  return {
    bound: (slip) => rulesGain(slip) + evidenceNow(slip) - slip.cost,
    gain: (slip, least) => {
      const rules = repaired(sheet, slip.repairs);
      const [pieces, own] = [piecesOf(slip), seamsBy(slip)];
      let gain = rulesGain(slip) + evidenceNow(slip) - slip.cost;
      for (const size of sizesOf(slip)) {
        const made = mended(rules, pieces, size);
        for (const piece of pieces) gain -= pieceMisfit(made[piece] as Piece, pieceAt(piece, base));
        for (const seam of own) {
          if (gain < least) return gain;
          gain -= seamMisfit(walkedOn(seam, made, size), seam.walks[base] as PairWalk);
        }
      }
      return gain;
    },
    walkWithout: (slip, seam, size) =>
      walkedOn(seam, mended(repaired(sheet, slip.repairs), piecesOf(slip), size), size),
  };
}

/** What undoing a slip is worth in steps that grow evenly and in points that go with their neighbors. */
function weighedByRules(state: SheetState, nearingTells: boolean): (slip: SuspectedSlip) => number {
  const { pattern, sheet, base, shapes, sizes } = state;
  const irregular = remembered(
    (growth: readonly number[]) => growth.join(),
    (growth) => irregularity(growth, shapes),
  );
  const ofRule = (rules: SheetMoves, at: RuledPoint): number => {
    const moves = rules[at.piece]?.get(at.point);
    if (moves === undefined) return 0;
    const steps = irregular(growthOf(along(moves, 'x'))) + irregular(growthOf(along(moves, 'y')));
    return steps + oddness(pattern, state.namesakes, rules, at);
  };
  // A point without a rule is held against the moves that it makes all the same.
  const ofRuleNow = remembered(keyOf, (at) =>
    sheet[at.piece]?.has(at.point) === true
      ? ofRule(sheet, at)
      : ofRule(repaired(sheet, [{ at, moves: movesNow(state, at) }]), at),
  );
  const grows = growing(sizes, base);
  const nearingBy = (rules: SheetMoves, piece: number): number =>
    nearing(sizes[base]?.[piece] as Piece, (i) => rules[piece]?.get(i), sizes.length, grows);
  const nearingNow = remembered(
    (piece: number) => String(piece),
    (piece) => nearingBy(sheet, piece),
  );
  const besides = remembered(keyOf, (at) => besideIn(state, at));
  return ({ repairs }) => {
    const rules = repaired(sheet, repairs);
    const points = new Map(
      repairs.flatMap(({ at }) => [at, ...besides(at)]).map((at) => [keyOf(at), at]),
    );
    let gain = 0;
    for (const at of points.values()) gain += ofRuleNow(at) - ofRule(rules, at);
    if (nearingTells)
      for (const piece of new Set(repairs.map(({ at }) => at.piece)))
        gain += nearingNow(piece) - nearingBy(rules, piece);
    return gain;
  };
}

/** The seams that a piece has a part in. */
export function touching(seams: readonly WalkedSeam[], piece: string): readonly WalkedSeam[] {
  return seams.filter(({ pair }) =>
    pair.sides.some(({ edges }) => edges.some((edge) => edge.piece === piece)),
  );
}

function besideIn({ pattern, sheet }: SheetState, at: RuledPoint): readonly RuledPoint[] {
  const given = pattern.pieces[at.piece];
  const beside = given ? besidePoints(given, sheet[at.piece], at.point) : [];
  return beside.map((point) => ({ piece: at.piece, point }));
}

function keyOf({ piece, point }: RuledPoint): string {
  return `${piece}.${point}`;
}

function differsIn({ sheet }: SheetState, { repairs }: SuspectedSlip, size: number): boolean {
  return repairs.some(({ at, moves }) => {
    const [now, then] = [sheet[at.piece]?.get(at.point)?.[size], moves[size]];
    if (now === undefined || then === undefined) return true;
    return Math.abs(now.x - then.x) + Math.abs(now.y - then.y) > SAME_PLACE;
  });
}

/** A pure function that works out each answer once. */
function remembered<Asked, Answer>(
  key: (asked: Asked) => string,
  answer: (asked: Asked) => Answer,
): (asked: Asked) => Answer {
  const known = new Map<string, Answer>();
  return (asked) => {
    const id = key(asked);
    const found = known.get(id) ?? answer(asked);
    known.set(id, found);
    return found;
  };
}
