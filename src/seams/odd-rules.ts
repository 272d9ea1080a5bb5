/** Slips that no seam tells of: points against their neighbors, or with irregular steps. */
import { besidePoints } from '../given/beside';
import type { Axis } from '../rule-sheet/rule-sheet';
import { growthOf } from '../rule-sheet/moves-and-steps';
import { CAUSE_CLEAR_BY, RULES_TELL_BY, SEAM_TELLS, STEP_SHAPE } from '../tolerance';
import { besideOddness, oddness } from './evidence/namesakes';
import { irregularity } from './evidence/regularity';
import { weigher } from './evidence/weigh';
import type { RuledPoint } from '../rule-sheet/point-rules';
import type { Regrader } from './regrade';
import { clearCause, rank } from './slips/clear-cause';
import type { SheetMoves } from './slips/sheet-moves';
import { along, repaired } from './slips/sheet-moves';
import type { SheetState } from './slips/sheet-state';
import { nameOf, rewalked, undone } from './slips/sheet-state';
import type { SuspectedSlip } from './slips/suspected-slip';
import { isRuledByProgram } from './slips/subject';
import { typedSlips } from './slips/typed';
import type { WalkedSeam } from './walked-seam';

/** A slip that no seam tells of, and the places of the sizes in which it shows. */
export interface OddSlip {
  readonly cause: SuspectedSlip;
  /** What tells of it, in words; undefined where that is steps and neighbors. */
  readonly why?: string;
  readonly shows: readonly number[];
}

/**
 * Slips at points that go against what is beside them, or whose steps are irregular, although their
 * seams hold or they have none. Of `open` pieces nothing is told: a seam of theirs is in doubt.
 */
export function oddRules(
  state: SheetState,
  regrade: Regrader,
  seams: readonly WalkedSeam[],
  open: ReadonlySet<number>,
): readonly OddSlip[] {
  const found: OddSlip[] = [];
  let now = state;
  let walks = seams;
  const told = new Set<string>();
  for (const at of oddPoints(state)) {
    if (open.has(at.piece) || told.has(nameOf(state.pattern, at))) continue;
    if (strangeness(now, at) <= RULES_TELL_BY) continue;
    const [seen, places] = [now, [at, ...besideOf(now, at)]];
    const slips = places.flatMap((place) => typedSlips(seen, place, () => undefined));
    const ranked = rank(slips, weigher(now, walks, regrade, false));
    const cause = clearCause(ranked, (slip) => isWitnessed(now, slip), RULES_TELL_BY);
    if (cause === undefined) continue;
    for (const repair of cause.repairs) told.add(nameOf(state.pattern, repair.at));
    found.push({ cause, shows: changedSizes(now, cause) });
    now = undone(now, regrade, cause);
    walks = rewalked(walks, now);
  }
  return found;
}

/** The ruled points of which something is strange, the strangest first. */
function oddPoints(state: SheetState): readonly RuledPoint[] {
  return state.sheet
    .flatMap((own, piece) =>
      isRuledByProgram(state, piece) ? [] : [...own.keys()].map((point) => ({ piece, point })),
    )
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

/**
 * Whether the steps of its rules or the points beside them speak for a slip. That a namesake moves
 * otherwise is no slip: a front neck drops where a back one does not.
 */
function isWitnessed(
  { pattern, namesakes, sheet, shapes }: SheetState,
  { repairs }: SuspectedSlip,
): boolean {
  const then = repaired(sheet, repairs);
  const gains = repairs.map(({ at }) => {
    const [own = [], other = []] = [sheet, then].map((moves) => moves[at.piece]?.get(at.point));
    const ofSteps = (axis: Axis): number => {
      const [before, after] = [growthOf(along(own, axis)), growthOf(along(other, axis))];
      return isScaled(before, after)
        ? 0
        : irregularity(before, shapes) - irregularity(after, shapes);
    };
    const ofBeside = (moves: SheetMoves): number => besideOddness(pattern, namesakes, moves, at);
    return ofBeside(sheet) - ofBeside(then) + ofSteps('x') + ofSteps('y');
  });
  return gains.reduce((sum, gain) => sum + gain, 0) > CAUSE_CLEAR_BY;
}

/** Whether steps are others times one factor: smaller ones only look more regular. */
function isScaled(steps: readonly number[], others: readonly number[]): boolean {
  const size = (all: readonly number[]): number => Math.hypot(...all);
  const inner = steps.reduce((sum, step, k) => sum + step * (others[k] ?? NaN), 0);
  return Math.abs(inner) >= (1 - STEP_SHAPE ** 2) * size(steps) * size(others);
}

function besideOf({ pattern, sheet }: SheetState, { piece, point }: RuledPoint) {
  const given = pattern.pieces[piece];
  return given === undefined
    ? []
    : besidePoints(given, sheet[piece], point).map((other) => ({ piece, point: other }));
}

function changedSizes(
  { sheet, labels }: SheetState,
  { repairs }: SuspectedSlip,
): readonly number[] {
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
