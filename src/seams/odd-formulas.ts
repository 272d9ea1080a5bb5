/** Wrong formulas of a drafted block that no seam tells of: namesakes that part, darts that gape. */
import type { Redraft } from '../grade/redraft';
import type { Axis } from '../rule-sheet/rule-sheet';
import { SEAM_TELLS, SEAM_WARNING } from '../tolerance';
import { edgeGrowth } from './evidence/holding';
import { sameNamed } from './evidence/namesakes';
import { weigher } from './evidence/weigh';
import type { OddSlip } from './odd-rules';
import type { RuledPoint } from '../rule-sheet/point-rules';
import type { Regrader } from './regrade';
import { clearCause, rank } from './slips/clear-cause';
import { formulaPoints, formulaSlips } from './slips/formula-slips';
import type { SheetState } from './slips/sheet-state';
import { rewalked, undone } from './slips/sheet-state';
import type { SuspectedSlip } from './slips/suspected-slip';
import type { WalkedSeam } from './walked-seam';

/** Riddles asked in one range; a block with more is wrong as a whole. */
const MOST_RIDDLES = 12;

/** Something in a drafted range that wants to be explained, although every seam may hold. */
interface Riddle {
  readonly name: string;
  /** In words, as a clause. */
  readonly why: string;
  /** The pieces of which one may be wrong. */
  readonly pieces: readonly number[];
  /** Places of the sizes in which it shows. */
  readonly shows: readonly number[];
}

/**
 * The formulas that explain what no seam tells of. Nothing is looked for on `open` pieces, of which a
 * seam is in doubt.
 */
export function oddFormulas(
  start: SheetState,
  regrade: Regrader,
  given: readonly WalkedSeam[],
  open: ReadonlySet<number>,
  redraft: Redraft,
): readonly OddSlip[] {
  const found: OddSlip[] = [];
  const asked = new Set<string>();
  let [state, seams] = [start, given];
  for (let round = 0; round < MOST_RIDDLES; round++) {
    const riddle = riddlesOf(state).find(
      ({ name, pieces }) => !asked.has(name) && !pieces.some((piece) => open.has(piece)),
    );
    if (riddle === undefined) break;
    asked.add(riddle.name);
    const now = state;
    const slips = riddle.pieces
      .flatMap((piece) => formulaPoints(now, piece))
      .flatMap((at) => formulaSlips(now, at, redraft));
    const ranked = rank(slips, weigher(state, seams, regrade, true));
    const isSolved = (slip: SuspectedSlip): boolean =>
      !riddlesOf(undone(state, regrade, slip)).some(({ name }) => name === riddle.name);
    const cause = clearCause(ranked, isSolved);
    if (cause === undefined) continue;
    found.push({ cause, shows: riddle.shows, why: riddle.why });
    state = undone(state, regrade, cause);
    seams = rewalked(seams, state);
  }
  return found;
}

function riddlesOf(state: SheetState): readonly Riddle[] {
  return [...gapingDarts(state), ...partedNamesakes(state), ...partedLevels(state)];
}

/** Darts whose legs differ more than in the base. */
function gapingDarts({ sizes, base }: SheetState): readonly Riddle[] {
  const from = sizes[base] ?? [];
  return from.flatMap((piece, p) =>
    piece.plan.outline.flatMap((edge): Riddle[] => {
      if (edge.kind !== 'dart') return [];
      const shows = sizes.flatMap((pieces, size) =>
        edgeGrowth(pieces[p] ?? piece, piece, edge) > SEAM_TELLS ? [size] : [],
      );
      if (shows.length === 0) return [];
      const why = `without that, the legs of the ${edge.name} match`;
      return [{ name: `${p} ${edge.name}`, why, pieces: [p], shows }];
    }),
  );
}

/** Points of one name on two pieces of which one moves this way and the other that, in every size. */
function partedNamesakes(state: SheetState): readonly Riddle[] {
  const { pattern, namesakes } = state;
  return eachPoint(state).flatMap((at) => {
    const name = pattern.pieces[at.piece]?.base.plan.pointNames[at.point] ?? '';
    return sameNamed(pattern, namesakes, at).flatMap((other) => {
      if (other.at.piece <= at.piece) return [];
      return (['x', 'y'] as const).flatMap((axis) =>
        parted(
          state,
          [at, other.at],
          axis,
          axis === 'x' && other.isMirrored ? -1 : 1,
          `without that, ${name} moves the same way on both pieces`,
        ),
      );
    });
  });
}

/** Points of a piece on one level in the base, of which one goes up and the other down. */
function partedLevels(state: SheetState): readonly Riddle[] {
  const points = eachPoint(state);
  const level = ({ piece, point }: RuledPoint): number =>
    state.sizes[state.base]?.[piece]?.points[point]?.y ?? NaN;
  return points.flatMap((at, k) =>
    points
      .slice(k + 1)
      .filter(
        (other) => other.piece === at.piece && Math.abs(level(other) - level(at)) <= SEAM_TELLS,
      )
      .flatMap((other) =>
        parted(state, [at, other], 'y', 1, 'without that, the points on its level move alike'),
      ),
  );
}

function parted(
  { sheet, labels, base }: SheetState,
  pair: readonly [RuledPoint, RuledPoint],
  axis: Axis,
  way: 1 | -1,
  why: string,
): readonly Riddle[] {
  const [own, other] = pair.map(({ piece, point }) => sheet[piece]?.get(point) ?? []);
  const moves = labels.map(
    (_, size) => [own?.[size]?.[axis] ?? 0, way * (other?.[size]?.[axis] ?? 0)] as const,
  );
  const isSeen = moves.some((both) => both.every((move) => Math.abs(move) > SEAM_WARNING));
  if (!isSeen || moves.some(([a, b], size) => size !== base && a * b >= 0)) return [];
  const name = [...pair.map(({ piece, point }) => `${piece}.${point}`), axis].join(' ');
  const shows = labels.flatMap((_, size) => (size === base ? [] : [size]));
  return [{ name, why, pieces: [...new Set(pair.map(({ piece }) => piece))], shows }];
}

/** Every point that is drawn by a formula of its own along some axis. */
function eachPoint(state: SheetState): readonly RuledPoint[] {
  return state.sheet.flatMap((_, piece) => formulaPoints(state, piece));
}
