/** One wrong sign in a rule sheet, found by what turning it round would mend. */
import { besidePoints } from '../given/beside';
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import type { Piece } from '../pattern/piece';
import { NEAR_BEST, SAME_GAP, SEAM_WARNING } from '../tolerance';
import type { Graded } from './closing-change';
import { ruledPoints } from './closing-change';
import type { RuledPoint } from './regrade';
import type { Trial } from './seam-trial';
import type { WalkedSeam } from './walked-seam';
import { trial } from './seam-trial';
import type { PairWalk } from './walk-pair';
import { walkPair } from './walk-pair';

/** A sign that is probably wrong. */
export interface WrongSign {
  readonly piece: string;
  readonly point: string;
  readonly axis: 'x' | 'y';
  /** Whether the sign is wrong in all sizes, in the step to one, or in the move of one alone. */
  readonly extent: 'all' | 'step' | 'size';
  /** Places of the sizes nearest to the base in which it shows. */
  readonly shows: readonly number[];
}

/**
 * mm for a millimeter by which a move differs from those of the points beside it: of two signs that
 * mend a seam equally well the one that fits its neighbors is right.
 */
const ODD = 0.5;
/** mm for a millimeter by which a step, turned round, differs more from the steps before and after it. */
const ODD_STEP = 2;

/**
 * The signs that would mend a seam if they were turned round, the likeliest first, those about as
 * good as it after it. A seam that is as far apart in the base as in every size has none.
 */
export function wrongSigns(
  seam: WalkedSeam,
  seams: readonly WalkedSeam[],
  sizes: readonly (readonly Piece[])[],
  graded: Graded,
): readonly WrongSign[] {
  const { base } = graded.rules;
  const bad = sizes.flatMap((_, i) => (growth(seam, i, base) > SEAM_WARNING ? [i] : []));
  if (bad.length === 0) return [];
  const shows = [bad.filter((i) => i < base).at(-1), bad.find((i) => i > base)].filter(
    (i) => i !== undefined,
  );
  const found = ruledPoints(graded.pattern, graded.rules, seam.pair.sides).flatMap((ruled) =>
    (['x', 'y'] as const).flatMap((axis) =>
      repairs(ruled, axis, bad, seam, seams, sizes, graded).map(({ extent, misfit }) => ({
        ...named(ruled, graded),
        axis,
        extent,
        misfit,
        shows,
      })),
    ),
  );
  const least = Math.min(...found.map(({ misfit }) => misfit));
  return found
    .filter(({ misfit }) => misfit <= least + NEAR_BEST)
    .sort((a, b) => a.misfit - b.misfit)
    .map(({ piece, point: name, axis, extent }) => ({ piece, point: name, axis, extent, shows }));
}

/** mm by which a seam is farther apart in a size than in the base. */
function growth({ walks }: WalkedSeam, size: number, base: number): number {
  return Math.abs((walks[size]?.gap ?? NaN) - (walks[base]?.gap ?? NaN));
}

interface Repair {
  readonly extent: WrongSign['extent'];
  /** How badly the seams of the piece still fit, over all sizes. */
  readonly misfit: number;
}

function repairs(
  ruled: RuledPoint,
  axis: 'x' | 'y',
  bad: readonly number[],
  seam: WalkedSeam,
  seams: readonly WalkedSeam[],
  sizes: readonly (readonly Piece[])[],
  { rules, regrade, pattern }: Graded,
): readonly Repair[] {
  const { base, sizes: labels } = rules;
  const name = pattern.pieces[ruled.piece]?.base.plan.name;
  const touched = seams.filter(({ pair }) =>
    pair.sides.some(({ edges }) => edges.some(({ piece }) => piece === name)),
  );
  const along = labels.map((_, size) => regrade.moveOf(ruled, size)[axis]);
  const given = pattern.pieces[ruled.piece];
  const neighbors = given ? besidePoints(given, rules.ruled[ruled.piece], ruled.point) : [];
  const beside = (size: number): number =>
    mean(neighbors.map((point) => regrade.moveOf({ ...ruled, point }, size)[axis]));
  const tried = (size: number, value: number): Trial => {
    const move: Point = { ...regrade.moveOf(ruled, size), [axis]: value };
    const moved = regrade.withMove(ruled, size, point(move.x, move.y));
    const changed = (sizes[size] ?? []).map((piece, p) => (p === ruled.piece ? moved : piece));
    const odd = Math.abs(value - beside(size)) - Math.abs((along[size] ?? 0) - beside(size));
    return trial(touched, seam, base, ODD * odd, ({ pair, way, walks }) =>
      walkPair(changed, { ...pair, ease: walks[size]?.ease ?? 0 }, way),
    );
  };
  const [worst = base] = bad;
  const flip = (size: number): Trial => tried(size, -(along[size] ?? 0));
  if (Math.abs(along[worst] ?? 0) === 0) return [];
  if (Math.abs(flip(worst).gap - growth(seam, worst, base)) < SAME_GAP) return [];

  const now = labels.map((_, size) =>
    trial(touched, seam, base, 0, ({ walks }) => walks[size] as PairWalk),
  );
  const flipped = labels.map((_, size) => (size === base ? now[size] : flip(size))) as Trial[];
  const result: Repair[] = [];
  const offer = (extent: Repair['extent'], trials: readonly Trial[], oddStep = 0): void => {
    if (trials.some(({ gap }) => gap > SEAM_WARNING)) return;
    const misfit = trials.reduce((sum, { misfit: own }) => sum + own, oddStep);
    result.push({ extent, misfit });
  };
  offer('all', flipped);
  if (bad.length === 1) {
    offer(
      'size',
      now.map((trialNow, size) => (size === worst ? (flipped[size] ?? trialNow) : trialNow)),
    );
  }
  for (const direction of [1, -1]) {
    const first = bad.filter((size) => (size - base) * direction > 0);
    const start = direction === 1 ? first[0] : first.at(-1);
    if (start === undefined || first.length < bad.length) continue;
    const stepTo = (size: number): number =>
      (along[size] ?? NaN) - (along[size - direction] ?? NaN);
    const step = stepTo(start);
    // The steps to the sizes beside it; that to the base is taken the other way.
    const others = [start - direction, start + direction].flatMap((size) =>
      size === base ? -((along[base - direction] ?? NaN) - (along[base] ?? NaN)) : stepTo(size),
    );
    const usual = mean(others.filter((other) => !Number.isNaN(other)));
    const odd = Math.abs(step + usual) - Math.abs(step - usual);
    offer(
      'step',
      now.map((trialNow, size) =>
        (size - start) * direction >= 0 ? tried(size, (along[size] ?? 0) - 2 * step) : trialNow,
      ),
      ODD_STEP * odd,
    );
  }
  return result;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}

function named(
  { piece, point: p }: RuledPoint,
  { pattern }: Graded,
): Pick<WrongSign, 'piece' | 'point'> {
  const plan = pattern.pieces[piece]?.base.plan;
  return { piece: plan?.name ?? '', point: plan?.pointNames[p] ?? '' };
}
