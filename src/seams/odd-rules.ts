/** Slips that no seam tells of: points against their neighbors, or with irregular steps. */
import { besidePoints } from '../given/beside';
import { growthOf } from '../rule-sheet/steps';
import { RULES_TELL_BY, SEAM_TELLS } from '../tolerance';
import type { Graded } from './closing-change';
import { oddness } from './evidence/neighbors';
import { irregularity } from './evidence/regularity';
import { weigher } from './evidence/weigh';
import type { RuledPoint } from './regrade';
import { clearCause, rank } from './slips/clear-cause';
import { along } from './slips/sheet-moves';
import type { SheetState } from './slips/sheet-state';
import { nameOf, rewalked, undone } from './slips/sheet-state';
import type { Slip } from './slips/slip';
import { isRuledByProgram } from './slips/subject';
import type { WalkedSeam } from './walked-seam';

/** A slip that only rules tell of, and the places of the sizes in which it shows. */
export interface OddRule {
  readonly cause: Slip;
  readonly shows: readonly number[];
}

/**
 * Slips at points that go against what is beside them, or whose steps are irregular, although their
 * seams hold or they have none. Of `open` pieces nothing is told: a seam of theirs is in doubt.
 */
export function oddRules(
  state: SheetState,
  graded: Graded,
  seams: readonly WalkedSeam[],
  open: ReadonlySet<number>,
): readonly OddRule[] {
  const found: OddRule[] = [];
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
    found.push({ cause, shows: changedSizes(now, cause) });
    now = undone(now, graded, cause);
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
