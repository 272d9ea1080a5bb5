/** Slips in a rule sheet, found by what undoing them would mend. */
import type { Piece } from '../pattern/piece';
import { GAP_LEFT, SEAM_TELLS, SEAM_WARNING } from '../tolerance';
import type { Graded } from './closing-change';
import { apart } from './evidence/holding';
import type { Weigher } from './evidence/weigh';
import { weigher } from './evidence/weigh';
import type { Weighed } from './slips/clear-cause';
import { clearCause, rank } from './slips/clear-cause';
import { closingOf, hasPart } from './slips/closing';
import type { SheetState } from './slips/sheet-state';
import { rewalked, startOf, undone } from './slips/sheet-state';
import type { SuspectedSlip } from './slips/suspected-slip';
import type { WalkedSeam } from './walked-seam';

/** What tells of a slip: a seam that the grade sets apart, or the steps of a point alone. */
export interface Diagnosis {
  /** The seam that tells, as it was walked; undefined where steps or neighbors alone tell. */
  readonly seam: WalkedSeam | undefined;
  /** What tells where no seam does, in words; undefined where that is steps and neighbors. */
  readonly why?: string;
  /** The slip that explains it clearly better than any other. */
  readonly cause: SuspectedSlip | undefined;
  /** Where no cause is clear, the likeliest of each place that would explain it, at most three. */
  readonly places: readonly SuspectedSlip[];
  /** Places of the sizes in which it shows. */
  readonly shows: readonly number[];
}

/** Slips looked for one after another in one sheet; a sheet with more is wrong as a whole. */
const MOST_SLIPS = 12;
const MOST_PLACES = 3;

/**
 * The slips that a sheet seems to have, the widest gap first, each looked for with those before it
 * undone. A sheet whose seams hold and whose steps are regular costs no more than a look at them.
 */
export function diagnose(
  graded: Graded,
  given: readonly WalkedSeam[],
  sizes: readonly (readonly Piece[])[],
): readonly Diagnosis[] {
  const found: Diagnosis[] = [];
  const told = new Set<string>();
  const { regrade, search } = graded;
  let seams = given;
  let state = startOf(graded, given, sizes);
  for (let round = 0; round < MOST_SLIPS; round++) {
    const seam = widest(seams, state.base, told);
    if (seam === undefined) break;
    const weigh = weigher(state, seams, regrade, search.nearingTells);
    const ranked = rank(slipsAt(seam, state, graded), weigh);
    const shows = showing(seam, state.base);
    const cause = clearCause(ranked, (slip) => explains(slip, seam, state, weigh));
    told.add(seam.pair.name);
    if (cause !== undefined) {
      found.push({ seam, cause, places: [], shows });
      state = undone(state, regrade, cause);
      seams = rewalked(seams, state);
      continue;
    }
    if (widestGap(seam, state.base) <= SEAM_WARNING) continue;
    const places = placesOf(ranked, (slip) => explains(slip, seam, state, weigh));
    found.push({ seam, cause: undefined, places, shows });
    const [likeliest] = places;
    if (likeliest !== undefined)
      for (const other of seams)
        if (explains(likeliest, other, state, weigh)) told.add(other.pair.name);
  }
  const open = new Set(
    found.flatMap(({ cause, seam }) =>
      cause === undefined && seam !== undefined ? sidePieces(state, seam) : [],
    ),
  );
  const odd = search.odd(state, regrade, seams, open);
  return [...found, ...odd.map((one) => ({ ...one, seam: undefined, places: [] }))];
}

/** The slips of which a seam may tell. */
function slipsAt(
  seam: WalkedSeam,
  state: SheetState,
  { regrade, search }: Graded,
): readonly SuspectedSlip[] {
  const closing = closingOf(state, regrade, seam);
  return sidePieces(state, seam)
    .flatMap((piece) => search.points(state, piece))
    .filter((at) => !search.actsAlone || hasPart(state, regrade, seam, at))
    .flatMap((at) => search.slips(state, at, closing));
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
    const width = told.has(seam.pair.name) ? 0 : widestGap(seam, base);
    if (width <= most) continue;
    most = width;
    found = seam;
  }
  return found;
}

/** mm by which a seam is apart in its worst size. */
function widestGap({ walks }: WalkedSeam, base: number): number {
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

/** Whether a seam holds with the slip undone, but for a small share of its gap. */
function explains(
  slip: SuspectedSlip,
  seam: WalkedSeam,
  state: SheetState,
  weigh: Weigher,
): boolean {
  const base = seam.walks[state.base];
  if (base === undefined) return false;
  return seam.walks.every((walk, size) => {
    const now = apart(walk, base);
    if (now <= SEAM_TELLS) return true;
    return apart(weigh.walkWithout(slip, seam, size), base) <= Math.max(SEAM_TELLS, GAP_LEFT * now);
  });
}

/** The likeliest slip of each point that explains what tells. */
function placesOf(
  ranked: readonly Weighed[],
  explained: (slip: SuspectedSlip) => boolean,
): readonly SuspectedSlip[] {
  const places = new Map<string, SuspectedSlip>();
  for (const { slip, gain } of ranked) {
    const key = `${slip.at.piece}.${slip.at.point}`;
    if (places.size >= MOST_PLACES) break;
    if (gain > 0 && !places.has(key) && explained(slip)) places.set(key, slip);
  }
  return [...places.values()];
}
