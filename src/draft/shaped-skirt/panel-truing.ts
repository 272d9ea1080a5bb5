/** What is found in every size, since no formula gives it: the width of a waist edge, the height of the back side. */
import { pieceNamed, seamLength } from '../../pattern/piece';
import type { Truing } from '../block';
import type { Panel } from './panel-shape';

/** The waist edge is longer than its plan width, since it slants and curves. */
function waistTruing(panel: Panel): Truing {
  return {
    unknown: 'waist_move',
    piece: panel,
    residual: (pieces, value) =>
      seamLength(pieceNamed(pieces, panel), 'waist') -
      (value(`${panel}_hip_width`) - value(`${panel}_side_take_up`) - value(`${panel}_intake`)),
    meaning: `the ${panel} side point in at the waist, so that the sewn waist meets its target`,
  };
}

const SIDE_TRUING: Truing = {
  unknown: 'rise_move',
  piece: 'back',
  residual: (pieces) =>
    seamLength(pieceNamed(pieces, 'back'), 'side') -
    seamLength(pieceNamed(pieces, 'front'), 'side'),
  meaning: 'the back side point up at the waist, so that the back side seam equals the front one',
};

/** Sewn waists on their targets and side seams equally long. */
export const PANEL_TRUING: readonly Truing[] = [
  waistTruing('front'),
  waistTruing('back'),
  SIDE_TRUING,
];
