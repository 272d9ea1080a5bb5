/** Cut lines beside those of a general library for offset polygons, in sizes of every style. */
import { EndType, JoinType, inflatePathsD } from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point';
import { CHARTS } from '../draft/shaped-pieces';
import { densely, isWithin, nearest, sewingPolygon, turns, unfolded } from './sewing-line';
import { cutOf } from './cut-of';
import { LONG, some } from '../samples';
import { STYLE_NAMES } from '../styles';
import { gradedOnce } from '../graded';

/** mm, the same all round, since the library knows one width only. */
const WIDTH = 12;
/** mm. What a cut line may be off. */
const OFF = 0.05;

const NAMES = ['side', 'waist', 'hem', 'vent', 'band', 'facing_edge', 'lining_hem', 'zip'];
const ALL_ONE = Object.fromEntries(NAMES.map((name) => [`${name}_allowance`, `${WIDTH} mm`]));

/** What a style is drawn with besides, so that a vent and a facing are among the pieces. */
const MORE: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'shared-drop': { waist_finish: '2' },
  'shared-pencil': { vent_length: '20 cm' },
};

function offset(polygon: readonly Point[]): readonly Point[] {
  const path = polygon.map(({ x, y }) => ({ x, y }));
  const [grown = []] = inflatePathsD([path], WIDTH, JoinType.Round, EndType.Polygon, 2, 4, 0.01);
  return grown;
}

describe.each(STYLE_NAMES)('cut lines of %s', (style) => {
  // In passing the next style on the next chart.
  const rank = STYLE_NAMES.indexOf(style);
  it.each(CHARTS.filter((_, c) => LONG || c === rank % CHARTS.length))(
    'are parallel to the sewing lines, base $base',
    (input) => {
      const set = { ...ALL_ONE, ...MORE[style], corner_style: '1' };
      const { range } = gradedOnce({ ...input, style, set });
      for (const { label, pieces, parameters } of some(range.sizes)) {
        for (const { piece, cut, fold } of cutOf({ pieces, parameters })) {
          const where = `${label} ${piece.plan.name}`;
          const half = sewingPolygon(piece);
          const sewn = fold === undefined ? half : unfolded(half);
          const grown = offset(sewn);
          const drawn = densely(cut, 8);
          const cutPath = densely(cut, 32);
          const corners = turns(half);

          // All that is within the width belongs to the cut piece.
          for (const { x, y } of grown) {
            if (fold !== undefined && x < 0.1) continue;
            if (!isWithin({ x, y }, cutPath))
              expect(nearest({ x, y }, cutPath), where).toBeLessThan(OFF);
          }
          // And nothing else does, but for what a corner adds.
          for (const p of drawn) {
            if (fold !== undefined && p.x < 0.1) continue;
            if (corners.some((q) => Math.hypot(q.x - p.x, q.y - p.y) < 2.5 * WIDTH)) continue;
            expect(nearest(p, grown), where).toBeLessThan(OFF);
          }
        }
      }
    },
  );
});
