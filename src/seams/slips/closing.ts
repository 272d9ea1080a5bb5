/** What a rule has to do with a seam: whether it changes it, and what would close it. */
import type { Point } from '../../geometry/point';
import type { Axis } from '../../rule-sheet/rule-sheet';
import { GAP_FOLLOWS, RULE_PROBE, SAME_PLACE } from '../../tolerance';
import { apart } from '../evidence/holding';
import type { RuledPoint } from '../../rule-sheet/point-rules';
import type { Regrader } from '../regrade';
import type { WalkedSeam } from '../walked-seam';
import { walkedOn } from '../walked-seam';
import type { SheetState } from './sheet-state';
import { movesNow } from './sheet-state';
import type { Closing } from './subject';

/** Rounds of Newton's method: a gap is nearly straight in a move. */
const ROUNDS = 3;

/** Whether a seam changes, as a whole or from notch to notch, if a rule of the point does. */
export function hasPart(
  state: SheetState,
  regrade: Regrader,
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
    return apart(walkedOn(seam, pieces, size), kept) > SAME_PLACE;
  });
}

/** Two ways of moving a point, of which one at least is not square to what it is on. */
const PROBES: readonly Point[] = [
  { x: 1, y: 1 },
  { x: 1, y: -1 },
];

/** By Newton's method along one axis of one point; mm, along or square to the reference line. */
export function closingOf(state: SheetState, regrade: Regrader, seam: WalkedSeam): Closing {
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
      return walkedOn(seam, pieces, size).gap - base;
    };
    let value = move[axis];
    for (let round = 0; round < ROUNDS; round++) {
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
