/** Finished measurements of a skirt, taken from its outlines as a sewer would take them. */
import { distance } from '../geometry/point';
import { crossingsAtLevel } from '../geometry/level';
import type { Piece } from '../pattern/piece';
import { outlineSegments, panelsOf, pointOf, seamLength } from '../pattern/piece';

/** One finished measurement in millimeters. */
export interface Measure {
  readonly name: string;
  readonly value: number;
}

/** Each panel is half a front or half a back, so a girth is twice the sum over the pieces. */
const GIRTH = 2;

/**
 * Measures one size: waist with the darts closed, hip across the pieces at the hip line, hem along
 * the bottom edge (all whole girths); center and side lengths of front and back; the legs and intake
 * of each dart. Allowances outside the outline do not count.
 */
export function finishedMeasures(pieces: readonly Piece[]): readonly Measure[] {
  const panels = panelsOf(pieces);
  const girth = (width: (piece: Piece) => number): number =>
    GIRTH * panels.reduce((sum, piece) => sum + width(piece), 0);
  const each = (name: string, value: (piece: Piece) => number): readonly Measure[] =>
    panels.map((piece) => ({ name: name.replace('*', piece.plan.name), value: value(piece) }));
  return [
    { name: 'waist', value: girth((piece) => seamLength(piece, 'waist')) },
    { name: 'hip', value: girth(hipWidth) },
    { name: 'hem', value: girth((piece) => seamLength(piece, 'hem')) },
    ...each('center_*_length', centerLength),
    ...each('side_seam_*', (piece) => seamLength(piece, 'side')),
    ...panels.flatMap(dartMeasures),
  ];
}

/** Waist to hem along the center line, whether its seam runs all the way or is open below. */
function centerLength(piece: Piece): number {
  return distance(pointOf(piece, 'center_waist'), pointOf(piece, 'center_hem'));
}

/** Width of a piece at its hip line, from its outline. */
export function hipWidth(piece: Piece): number {
  const level = pointOf(piece, 'center_hip').y;
  const crossings = crossingsAtLevel(outlineSegments(piece), level);
  return Math.max(...crossings) - Math.min(...crossings);
}

function dartMeasures(piece: Piece): readonly Measure[] {
  return piece.plan.darts.flatMap((dart) => {
    const from = pointOf(piece, dart.from);
    const tip = pointOf(piece, dart.tip);
    const to = pointOf(piece, dart.to);
    const name = `${piece.plan.name}_${dart.name}`;
    return [
      { name: `${name}_intake`, value: distance(from, to) },
      { name: `${name}_inner_leg`, value: distance(from, tip) },
      { name: `${name}_outer_leg`, value: distance(to, tip) },
    ];
  });
}
