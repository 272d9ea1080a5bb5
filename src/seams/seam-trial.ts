/** Seams walked with a change that is tried: how much worse or better they fit than in the base. */
import type { PairWalk } from './walk-pair';
import type { WalkedSeam } from './walked-seam';

/** mm for a degree by which corners that meet in a seam open or close in the grade. */
const DEGREE = 1;
/** What is known of a seam with a change that is tried. */
export interface Trial {
  /** mm by which the seam in question is farther apart than in the base. */
  readonly gap: number;
  readonly misfit: number;
}

/**
 * How badly the `touched` seams fit as `walked` walks them, beside how they fit in the base. `odd` is
 * what else speaks against the change, in mm.
 */
export function trial(
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
