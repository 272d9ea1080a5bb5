/** The girth of a skirt from its hip line to its hem, measured from the outlines. */
import type { Segment } from '../geometry/segment';
import { segmentAt } from '../geometry/segment';
import type { Piece } from '../pattern/piece';
import { edgeSegments, outlineSegments, panelsOf, pointOf, seamLength } from '../pattern/piece';
import { widthAcross } from '../pattern/width';
import type { GirthProfile } from './girth-profile';

/** Each panel is half a front or half a back. */
const GIRTH = 2;

/** Places on a curve of the side: between them it differs from its chord by far less than a millimeter. */
const PLACES = 8;

/**
 * Girths at the hip line, at every corner of the sides below it, since a side runs straight between
 * them, at places along its curves, and along the hem, all in mm. `waistToHip` is the level of the hip line below the waist
 * line. What lies beyond the center line, such as a vent, does not count.
 */
export function skirtProfile(pieces: readonly Piece[], waistToHip: number): GirthProfile {
  const panels = panelsOf(pieces);
  const sides = panels.map(sideOf);
  const hem = hemDepth(pieces);
  // A hem that rises to the side leaves the levels below its highest end without a side.
  const lowest = Math.min(hem, ...sides.map(({ end }) => end));
  const corners = sides.flatMap((side) => side.corners);
  const depths = [0, ...corners].filter((depth) => depth >= 0 && depth <= lowest && depth < hem);
  const across = [...new Set(depths)]
    .sort((a, b) => a - b)
    .map((depth) => ({
      level: waistToHip + depth,
      girth:
        GIRTH *
        sides.reduce(
          (sum, { outline, center }) => sum + widthAcross(outline, center.y + depth, center.x),
          0,
        ),
    }));
  const around = GIRTH * panels.reduce((sum, panel) => sum + seamLength(panel, 'hem'), 0);
  return [...across, { level: waistToHip + hem, girth: around }];
}

/** mm from the hip line to the hem at the center. */
export function hemDepth(pieces: readonly Piece[]): number {
  return Math.min(...panelsOf(pieces).map((panel) => depthOf(panel, 'center_hem')));
}

/** mm below the hip line, from which alone levels are known wherever a piece is stacked. */
export function depthOf(panel: Piece, name: string): number {
  return pointOf(panel, name).y - pointOf(panel, 'center_hip').y;
}

/** The side of a panel, and the place of its center line at the hip line. */
interface Side {
  readonly center: { readonly x: number; readonly y: number };
  readonly outline: readonly Segment[];
  /** Corners and places on curves, in mm below the hip line. */
  readonly corners: readonly number[];
  /** The depth at which it meets the hem. */
  readonly end: number;
}

function sideOf(panel: Piece): Side {
  const edges = panel.plan.outline.filter(({ seam }) => seam === 'side');
  const level = pointOf(panel, 'center_hip').y;
  const corners = edges.flatMap((edge) =>
    edge.kind === 'cubic'
      ? edgeSegments(panel, edge).flatMap((curve) =>
          Array.from({ length: PLACES }, (_, i) => segmentAt(curve, (i + 1) / PLACES).y - level),
        )
      : [depthOf(panel, edge.to)],
  );
  return {
    center: pointOf(panel, 'center_hip'),
    outline: outlineSegments(panel),
    corners,
    end: corners.at(-1) ?? NaN,
  };
}
