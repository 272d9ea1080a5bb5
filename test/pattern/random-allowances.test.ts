/** Any allowances on any block: the cut line stays outside the sewing line and keeps its distance. */
import fc from 'fast-check';
import { cutOf } from './cut-of';
import { describe, it } from 'vitest';
import type { Point } from '../../src/geometry/point';
import type { Segment } from '../../src/geometry/segment';
import { segmentLength } from '../../src/geometry/segment';
import { gradeChart } from '../../src/index';
import type { Piece } from '../../src/index';
import { crossings } from '../../src/geometry/crossings';
import { anyChart, sixteenthsText } from '../skirts';
import type { SixteenthsChart } from '../skirts';
import { densely, edgePlaces, isWithin, nearest, sewingPolygon } from './sewing-line';
import { runs } from '../samples';
import { STYLE_NAMES } from '../styles';

/** mm. What a cut line may be off, and what chords may. */
const OFF = 0.05;

const width = fc.oneof(
  fc.double({ min: 0, max: 60, noNaN: true }),
  fc.constantFrom(0, 0.01, 5, 16, 30, 60),
);

const allowances = fc.record({
  side: width,
  waist: width,
  hem: width,
  vent: width,
  band: width,
  facing_edge: width,
  lining_hem: width,
  zip: width,
});

const anyStyle = fc.constantFrom<readonly [string, Readonly<Record<string, string>>]>(
  ...STYLE_NAMES.map((style) => [style, {}] as const),
  ['pencil', { hem_taper: '-4 in' }],
  ['straight', { front_dart_intake: '0 in' }],
  ['shared-drop', { waist_finish: '2' }],
  ['shared-pencil', { vent_length: '20 cm' }],
  ['shared-pencil', { vent_length: '15 cm', vent_width: '0 cm' }],
);

const PARAMETER: Readonly<Record<string, string>> = {
  waist: 'waist',
  underlap: 'waist',
  tuck: 'waist',
  side: 'side',
  hem: 'hem',
  vent_hem: 'hem',
  vent: 'vent',
  vent_top: 'vent',
  slit: 'zip',
  center_back: 'zip',
  facing_edge: 'facing_edge',
};

/** The first and the last size, for only the first is looked at. */
function ends(chart: SixteenthsChart): SixteenthsChart {
  const of = (row: readonly number[]): readonly number[] => [row[0] ?? NaN, row.at(-1) ?? NaN];
  const { waist, hip, hipDepth, length } = chart;
  return { waist: of(waist), hip: of(hip), hipDepth: of(hipDepth), length: of(length) };
}

describe('any allowances from 0 to 60 mm', () => {
  it('never cross the sewing line, keep their distance and do not cross themselves', () => {
    fc.assert(
      fc.property(
        anyChart,
        anyStyle,
        allowances,
        fc.constantFrom('0', '1', '2'),
        (chart, [style, more], widths, corner_style) => {
          const set = {
            ...more,
            corner_style,
            ...Object.fromEntries(
              Object.entries(widths).map(([name, mm]) => [`${name}_allowance`, `${mm} mm`]),
            ),
          };
          const { range, findings } = gradeChart({
            chart: sixteenthsText(ends(chart)),
            base: '1',
            style,
            set,
          });
          const size = range.sizes[0];
          if (size === undefined) throw new Error('no size');
          const off = findings.filter(
            ({ check, severity }) => check === 'cut-line' && severity !== 'ok',
          );
          if (off.length > 0) throw new Error(off[0]?.message);
          for (const { piece, cut } of cutOf(size)) {
            // Lines that touch at an end do not count.
            const isWithinPart = (t: number, part: Segment): boolean =>
              Math.min(t, 1 - t) * segmentLength(part) > 0.01;
            const isCrossed = cut.some((a, i) =>
              cut
                .slice(i + 1)
                .some((b) =>
                  crossings(a, b).some(({ t, u }) => isWithinPart(t, a) && isWithinPart(u, b)),
                ),
            );
            if (isCrossed) throw new Error(`${piece.plan.name} crosses itself`);
            keepsAway(piece, densely(cut, 6), (seam) => {
              const isLining = piece.plan.part === 'lining' && seam.endsWith('hem');
              const name = isLining ? 'lining_hem' : (PARAMETER[seam] ?? 'band');
              return widths[name as keyof typeof widths];
            });
          }
        },
      ),
      { numRuns: runs(10, 200) },
    );
  });
});

/** mm from an end of a seam within which a corner may reach, whatever the widths. */
const REACH = 75;

/** Each seam keeps its own width; near its ends the narrowest of those around is enough. */
function keepsAway(piece: Piece, cut: readonly Point[], widthOf: (seam: string) => number): void {
  const sewn = sewingPolygon(piece);
  for (const p of cut)
    if (isWithin(p, sewn) && nearest(p, sewn) > OFF)
      throw new Error(`${piece.plan.name}: ${p.x}, ${p.y} lies ${nearest(p, sewn)} inside`);
  const { outline } = piece.plan;
  const seams = outline.map((edge, i) => {
    const after = outline[(i + 1) % outline.length] ?? edge;
    const chain = [...edgePlaces(piece, edge), ...edgePlaces(piece, after).slice(0, 1)];
    return { edge, chain, width: edge.kind === 'fold' ? 0 : widthOf(edge.seam) };
  });
  for (const p of cut) {
    const near = seams.map((seam) => ({ ...seam, away: nearest(p, seam.chain, false) }));
    const around = near.filter(({ away }) => away <= REACH).map((seam) => seam.width);
    for (const { edge, chain, width, away } of near) {
      const atEnd = nearest(p, chain.slice(0, 1), false) <= REACH;
      const atStart = nearest(p, chain.slice(-1), false) <= REACH;
      const wanted = atEnd || atStart ? Math.min(...around) : width;
      if (away < wanted - OFF)
        throw new Error(
          `${piece.plan.name} ${edge.seam}: ${p.x}, ${p.y} is ${away} away, ${wanted} wanted`,
        );
    }
  }
}
