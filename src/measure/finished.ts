/** Finished measurements of a skirt, taken from its outlines as a sewer would take them. */
import { distance } from '../geometry/point';
import { crossingsAtLevel } from '../geometry/level';
import type { Measure } from '../grade/graded-pattern';
import type { Edge, Piece } from '../pattern/piece';
import { edgeSegments, panelsOf, pointOf, seamLength } from '../pattern/piece';
import { SAME_PLACE } from '../tolerance';

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

/** Whether the straight edge, or dart, lies wholly above or wholly below the level. */
function clearOf(piece: Piece, edge: Edge, level: number): boolean {
  const from = pointOf(piece, edge.from).y - level;
  const to = pointOf(piece, edge.to).y - level;
  const middle = edge.kind === 'dart' ? pointOf(piece, edge.tip).y - level : from;
  return (
    (from < -SAME_PLACE && to < -SAME_PLACE && middle < -SAME_PLACE) ||
    (from > SAME_PLACE && to > SAME_PLACE && middle > SAME_PLACE)
  );
}

/** Width of a piece at its hip line, from its outline. */
export function hipWidth(piece: Piece): number {
  const level = pointOf(piece, 'center_hip').y;
  let least = Infinity;
  let most = -Infinity;
  for (const edge of piece.plan.outline) {
    if (edge.kind !== 'cubic' && clearOf(piece, edge, level)) continue;
    for (const x of crossingsAtLevel(edgeSegments(piece, edge), level)) {
      if (x < least) least = x;
      if (x > most) most = x;
    }
  }
  return most - least;
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
