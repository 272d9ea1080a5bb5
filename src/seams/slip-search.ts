/** Where slips are looked for, and which: what may be wrong depends on how rules are made. */
import type { Redraft } from '../grade/redraft';
import type { RuledPoint } from '../rule-sheet/point-rules';
import { oddFormulas } from './odd-formulas';
import type { OddSlip } from './odd-rules';
import { oddRules } from './odd-rules';
import type { Regrader } from './regrade';
import { formulaPoints, formulaSlips } from './slips/formula-slips';
import type { SheetState } from './slips/sheet-state';
import type { Closing } from './slips/subject';
import { subjectPoints } from './slips/subject';
import type { SuspectedSlip } from './slips/suspected-slip';
import { typedSlips } from './slips/typed';
import type { WalkedSeam } from './walked-seam';

/** One way of making rules, as the search for slips sees it. */
export interface SlipSearch {
  /** The points of a piece that may have a slip. */
  readonly points: (state: SheetState, piece: number) => readonly RuledPoint[];
  /** The slips that there may be at a point. */
  readonly slips: (state: SheetState, at: RuledPoint, closing: Closing) => readonly SuspectedSlip[];
  /**
   * Whether a rule moves its own point and no other, so that a gap tells which rules could close it;
   * a formula moves all that is drawn from it.
   */
  readonly actsAlone: boolean;
  /** Whether points that near each other where the pattern grows speak for a slip. */
  readonly nearingTells: boolean;
  /** The slips that no seam tells of, but for those of `open` pieces, of which a seam is in doubt. */
  readonly odd: (
    state: SheetState,
    regrade: Regrader,
    seams: readonly WalkedSeam[],
    open: ReadonlySet<number>,
  ) => readonly OddSlip[];
}

/** In rules that a person typed point by point. */
export const IN_TYPED_RULES: SlipSearch = {
  points: subjectPoints,
  slips: typedSlips,
  actsAlone: true,
  nearingTells: false,
  odd: oddRules,
};

/** In the formulas from which rules are derived; `redraft` tells what a changed one would do. */
export function inFormulas(redraft: Redraft): SlipSearch {
  return {
    points: formulaPoints,
    slips: (state, at) => formulaSlips(state, at, redraft),
    actsAlone: false,
    nearingTells: true,
    odd: (state, regrade, seams, open) => oddFormulas(state, regrade, seams, open, redraft),
  };
}
