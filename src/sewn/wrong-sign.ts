/** One wrong sign in a rule sheet, found by what turning it round would mend. */
import type { SeamPair } from '../given/pattern';
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import type { Piece } from '../pattern/piece';
import { SEAM_WARNING } from '../tolerance';
import type { Graded } from './closing-change';
import { ruledPoints } from './closing-change';
import type { RuledPoint } from './regrade';
import type { PairWalk, Way } from './walk-pair';
import { walkPair } from './walk-pair';

/** A seam, the way its sides run, and its walk in every size. */
export interface WalkedSeam {
  readonly pair: SeamPair;
  readonly way: Way;
  readonly walks: readonly PairWalk[];
}

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

/** mm for a degree by which corners that meet in a seam open or close in the grade. */
const DEGREE = 1;
/**
 * mm for a millimeter by which a move differs from those of the points beside it: of two signs that
 * mend a seam equally well the one that fits its neighbors is right.
 */
const ODD = 0.5;
/** Candidates this much worse than the best are no longer mentioned. */
const NEAR_BEST = 0.25;

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
  const neighbors = besidesOf(ruled, pattern, rules);
  const beside = (size: number): number => {
    const own = neighbors.map((neighbor) => regrade.moveOf(neighbor, size)[axis]);
    return own.reduce((sum, value) => sum + value, 0) / Math.max(1, own.length);
  };
  const tried = (size: number, value: number): Trial => {
    const move: Point = { ...regrade.moveOf(ruled, size), [axis]: value };
    const moved = regrade.withMove(ruled, size, point(move.x, move.y));
    const changed = (sizes[size] ?? []).map((piece, p) => (p === ruled.piece ? moved : piece));
    const odd = Math.abs(value - beside(size)) - Math.abs((along[size] ?? 0) - beside(size));
    return trial(touched, seam, base, ODD * odd, ({ pair, way }) => walkPair(changed, pair, way));
  };
  const [worst = base] = bad;
  const flip = (size: number): Trial => tried(size, -(along[size] ?? 0));
  if (Math.abs(along[worst] ?? 0) === 0) return [];
  if (Math.abs(flip(worst).gap - growth(seam, worst, base)) < SEAM_WARNING / 100) return [];

  const now = labels.map((_, size) =>
    trial(touched, seam, base, 0, ({ walks }) => walks[size] as PairWalk),
  );
  const flipped = labels.map((_, size) => (size === base ? now[size] : flip(size))) as Trial[];
  const result: Repair[] = [];
  const offer = (extent: Repair['extent'], trials: readonly Trial[]): void => {
    if (trials.some(({ gap }) => gap > SEAM_WARNING)) return;
    result.push({ extent, misfit: trials.reduce((sum, { misfit }) => sum + misfit, 0) });
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
    const step = (along[start] ?? 0) - (along[start - direction] ?? 0);
    offer(
      'step',
      now.map((trialNow, size) =>
        (size - start) * direction >= 0 ? tried(size, (along[size] ?? 0) - 2 * step) : trialNow,
      ),
    );
  }
  return result;
}

/** The ruled points before and after a point on the outline of its piece. */
function besidesOf(
  { piece, point: own }: RuledPoint,
  { pieces }: Graded['pattern'],
  { ruled }: Graded['rules'],
): readonly RuledPoint[] {
  const stops = (pieces[piece]?.path ?? []).filter(({ point: p }) => ruled[piece]?.has(p));
  const at = stops.findIndex(({ point: p }) => p === own);
  if (at < 0) return [];
  return [stops.at(at - 1), stops[(at + 1) % stops.length]].flatMap((stop) =>
    stop === undefined ? [] : [{ piece, point: stop.point }],
  );
}

interface Trial {
  /** mm by which the seam in question is farther apart than in the base. */
  readonly gap: number;
  readonly misfit: number;
}

function trial(
  touched: readonly WalkedSeam[],
  seam: WalkedSeam,
  base: number,
  odd: number,
  walked: (seam: WalkedSeam) => PairWalk,
): Trial {
  let gap = 0;
  let misfit = odd;
  for (const other of touched) {
    const walk = walked(other);
    const before = other.walks[base];
    if (before === undefined) continue;
    const apart = Math.abs(walk.gap - before.gap);
    if (other === seam) gap = apart;
    misfit += apart + stretchGrowth(walk, before);
    for (const end of [0, 1] as const) {
      const turn = Math.abs(walk.angleSums[end] - before.angleSums[end]);
      if (!Number.isNaN(turn)) misfit += DEGREE * turn;
    }
  }
  return { gap, misfit };
}

function stretchGrowth({ stretches }: PairWalk, before: PairWalk): number {
  return stretches.reduce((sum, { lengths: [a, b] }, i) => {
    const [c = 0, d = 0] = before.stretches[i]?.lengths ?? [];
    return sum + Math.abs(a - b - (c - d));
  }, 0);
}

function named(
  { piece, point: p }: RuledPoint,
  { pattern }: Graded,
): Pick<WrongSign, 'piece' | 'point'> {
  const plan = pattern.pieces[piece]?.base.plan;
  return { piece: plan?.name ?? '', point: plan?.pointNames[p] ?? '' };
}
