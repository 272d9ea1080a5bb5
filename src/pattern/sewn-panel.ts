/** A panel of a skirt as it is seen once its darts are sewn: the lines of half a finished garment. */
import type { Point } from '../geometry/point';
import { distance, point } from '../geometry/point';
import { segmentAt } from '../geometry/segment';
import type { Piece } from './piece';
import { edgeSegments, pointOf } from './piece';

/** Straight lines by which a curve is shown; at a tenth of true size no eye sees the corners. */
const CHORDS = 16;

/** Half a front or half a back, darts closed: x in mm from the center line to the side, y down. */
export interface SewnPanel {
  /** From the center to the side. */
  readonly waist: readonly Point[];
  /** From the waist to the hem. */
  readonly side: readonly Point[];
  /** From the center to the side. */
  readonly hem: readonly Point[];
  /** Each from the waist to the tip, the nearest to the center first. */
  readonly darts: readonly (readonly [Point, Point])[];
}

/**
 * The panel with its darts closed: what lies beyond a dart comes nearer by its intake at the waist, and
 * by nothing at the hip line, where the cloth lies flat again; between them by a parabola, as a side
 * is drawn. The waist over closed darts is one curve that starts level at the center. Throws a
 * RangeError for a panel without a center hip, a center waist and a side waist.
 */
export function sewnPanel(panel: Piece): SewnPanel {
  const { x: center, y: hip } = pointOf(panel, 'center_hip');
  const darts = panel.plan.darts.map(({ from, tip, to }) => {
    const [leg, other] = [pointOf(panel, from), pointOf(panel, to)];
    return {
      leg: leg.x < other.x ? leg : other,
      tip: pointOf(panel, tip),
      intake: distance(leg, other),
    };
  });
  const closed = ({ x, y }: Point): Point => {
    const before = darts.filter(({ leg }) => leg.x < x);
    const taken = before.reduce((sum, { leg, intake }) => {
      const share = Math.max(0, (hip - y) / (hip - leg.y));
      return sum + intake * share ** 2;
    }, 0);
    return point(x - center - taken, y);
  };
  const along = (seam: string): readonly Point[] =>
    panel.plan.outline
      .filter((edge) => edge.seam === seam)
      .flatMap((edge) => edgeSegments(panel, edge))
      .flatMap((segment) =>
        Array.from({ length: CHORDS + 1 }, (_, i) => closed(segmentAt(segment, i / CHORDS))),
      );
  const middle = closed(pointOf(panel, 'center_waist'));
  const end = closed(pointOf(panel, 'side_waist'));
  const onWaist = (x: number): Point =>
    point(x, middle.y + (end.y - middle.y) * ((x - middle.x) / (end.x - middle.x)) ** 2);
  return {
    waist: Array.from({ length: CHORDS + 1 }, (_, i) =>
      onWaist(middle.x + ((end.x - middle.x) * i) / CHORDS),
    ),
    side: [...along('side')].sort((a, b) => a.y - b.y),
    hem: [...along('hem')].sort((a, b) => a.x - b.x),
    darts: darts
      .map(({ leg, tip }): readonly [Point, Point] => [onWaist(closed(leg).x), closed(tip)])
      .sort(([a], [b]) => a.x - b.x),
  };
}
