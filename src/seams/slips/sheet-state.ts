/** A sheet, its garment and the pieces that it makes, as given or with slips undone. */
import type { Point } from '../../geometry/point';
import { dot, quarterTurn, subtract } from '../../geometry/point';
import type { Pattern } from '../../pattern/pattern';
import type { Piece } from '../../pattern/piece';
import type { Namesakes } from '../evidence/namesakes';
import { namesakesIn } from '../evidence/namesakes';
import type { StepShapes } from '../evidence/regularity';
import { stepShapes } from '../evidence/regularity';
import type { GivenRules, RuledPoint } from '../../rule-sheet/point-rules';
import type { Regrader } from '../regrade';
import type { WalkedSeam } from '../walked-seam';
import { walkedOn } from '../walked-seam';
import type { SheetMoves } from './sheet-moves';
import { movesOf, repaired } from './sheet-moves';
import type { SuspectedSlip } from './suspected-slip';

/** What is known of a sheet and its garment at the moment. */
export interface SheetState {
  readonly pattern: Pattern;
  readonly labels: readonly string[];
  readonly base: number;
  readonly sheet: SheetMoves;
  readonly shapes: StepShapes;
  readonly namesakes: Namesakes;
  /** The pieces of each size as the sheet makes them. */
  readonly sizes: readonly (readonly Piece[])[];
}

/** The sheet as given; shapes and namesakes are worked out when they are first asked for. */
export function startOf(
  { pattern, rules }: { readonly pattern: Pattern; readonly rules: GivenRules },
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

/** The sheet with a slip undone, and the pieces that it makes then. */
export function undone(
  state: SheetState,
  regrade: Regrader,
  { repairs }: SuspectedSlip,
): SheetState {
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

/** The seams walked on those pieces. */
export function rewalked(
  seams: readonly WalkedSeam[],
  { sizes }: SheetState,
): readonly WalkedSeam[] {
  return seams.map((seam) => ({
    ...seam,
    walks: seam.walks.map((_, size) => walkedOn(seam, sizes[size] ?? [], size)),
  }));
}

/** How a point moves as the sheet is, with or without a rule, along and square to the reference line. */
export function movesNow({ pattern, base, sizes }: SheetState, at: RuledPoint): readonly Point[] {
  const along = pattern.pieces[at.piece]?.ruleX ?? { x: 1, y: 0 };
  const place = (pieces: readonly Piece[] | undefined): Point =>
    pieces?.[at.piece]?.points[at.point] ?? { x: 0, y: 0 };
  const from = place(sizes[base]);
  return sizes.map((pieces) => {
    const move = subtract(place(pieces), from);
    return { x: dot(move, along), y: dot(move, quarterTurn(along)) };
  });
}

/** Such as `back waist_side`. */
export function nameOf({ pieces }: Pattern, { piece, point }: RuledPoint): string {
  const plan = pieces[piece]?.base.plan;
  return `${plan?.name ?? ''} ${plan?.pointNames[point] ?? ''}`;
}
