/**
 * The direction of the side seam from waist to hem, found again here from points every millimeter.
 * Common practice, no source: a side seam has no corner but where the method draws one.
 */
import { describe, expect, it } from 'vitest';
import { noteSideDirection } from '../../src/check/side-seam';
import type { Point } from '../../src/geometry/point';
import { pointOf } from '../../src/index';
import type { GradeResult, Piece } from '../../src/index';
import { flattened } from '../draft/closed-waist';
import { CHARTS, DEMO, dense, total, chords } from '../draft/shaped-pieces';
import { gradeLazily, gradedOnce } from '../graded';

const TAPERED = ['shared-pencil', 'shared-a-line'] as const;
const STARTS = ['0 cm', '4 in', '15 cm'] as const;

const panels = ({ range }: GradeResult): readonly Piece[] =>
  range.sizes.flatMap(({ pieces }) => pieces.slice(0, 2));

/** The most by which a side seam turns from one chord to the next, in degrees. */
function sharpest(piece: Piece): number {
  const way = piece.plan.outline
    .filter(({ seam }) => seam === 'side')
    .flatMap((edge) => flattened(piece, edge, 400))
    .filter(
      (p, i, all) =>
        i === 0 || Math.hypot(p.x - (all[i - 1]?.x ?? 0), p.y - (all[i - 1]?.y ?? 0)) > 1e-9,
    );
  const headings = way
    .slice(1)
    .map((p, i) => Math.atan2(p.x - (way[i]?.x ?? NaN), p.y - (way[i]?.y ?? NaN)));
  const turns = headings.slice(1).map((heading, i) => Math.abs(heading - (headings[i] ?? NaN)));
  return (Math.max(...turns) * 180) / Math.PI;
}

describe.each(
  TAPERED.flatMap((style) =>
    CHARTS.flatMap((chart) => STARTS.map((start) => [style, chart.base, start, chart] as const)),
  ),
)('the side of %s, base %s, tapered from %s below the hip', (style, _, taper_start, chart) => {
  const request = { ...chart, style, set: { taper_start } };
  const result = gradedOnce(request);

  it('has no corner on its whole way', () => {
    for (const piece of panels(result)) expect(sharpest(piece)).toBeLessThan(0.1);
    const found = noteSideDirection(result.range);
    expect(found.map(({ severity }) => severity)).toEqual(['ok', 'ok']);
  });

  it('has one without the curve, where the taper begins', () => {
    const plain = gradedOnce({ ...request, set: { taper_start, taper_blend: '0 cm' } });
    const found = noteSideDirection(plain.range);
    const joint = taper_start === '0 cm' ? 'side_hip' : 'side_taper';
    expect(found.map(({ severity, piece, subject }) => [severity, piece, subject])).toEqual([
      ['note', 'front', joint],
      ['note', 'back', joint],
    ]);
    ['front', 'back'].forEach((name, i) => {
      const corners = panels(plain)
        .filter(({ plan }) => plan.name === name)
        .map(sharpest);
      expect(Math.abs((found[i]?.measured ?? NaN) - Math.max(...corners))).toBeLessThan(0.05);
      expect(Math.max(...corners)).toBeGreaterThan(2);
    });
  });

  it('is equally long front and back, and as much narrower at the hem as asked', () => {
    // Both charts are in inches: 3/4 in, -1 1/4 in.
    const taper = style === 'shared-pencil' ? 0.75 * 25.4 : -1.25 * 25.4;
    for (const { pieces, parameters } of result.range.sizes) {
      const [front, back] = pieces as [Piece, Piece];
      expect(total(chords(front, 'side'))).toBeCloseTo(total(chords(back, 'side')), 3);
      if (parameters.get('dart_closing') !== 0) continue;
      for (const piece of [front, back])
        expect(pointOf(piece, 'side_hip').x - pointOf(piece, 'side_hem').x).toBeCloseTo(taper, 9);
    }
  });
});

describe('the curve into the taper', () => {
  const { chart, base } = DEMO;
  const graded = (taper_blend: string) =>
    gradeLazily({ chart, base, style: 'shared-pencil', set: { taper_blend } });

  it('is as deep as asked, tangent above and below, and a parabola', () => {
    for (const piece of panels(graded('10 cm'))) {
      const [hip, end, hem] = ['side_hip', 'side_blend', 'side_hem'].map((name) =>
        pointOf(piece, name),
      ) as [Point, Point, Point];
      expect(end.y - hip.y).toBeCloseTo(100, 9);
      // The straight taper, drawn on upward, meets the line straight down halfway.
      const slope = (end.x - hem.x) / (hem.y - end.y);
      expect(end.x + slope * 50).toBeCloseTo(hip.x, 9);
      // Halfway down a parabola that starts straight down has gone a quarter of its way in.
      const curve = dense(piece, 'side', 2).slice(3, 6);
      expect(curve[1]?.y).toBeCloseTo(hip.y + 50, 9);
      expect(hip.x - (curve[1]?.x ?? NaN)).toBeCloseTo((hip.x - end.x) / 4, 9);
    }
  });

  it('fails where it is longer than the skirt below it, for the side then folds back', () => {
    const short = gradeLazily({
      chart,
      base,
      style: 'shared-pencil',
      set: { taper_blend: '40 cm', skirt_length: '45 cm' },
    });
    const fails = noteSideDirection(short.range).filter(({ severity }) => severity === 'fail');
    expect(fails.map(({ piece, subject }) => [piece, subject])).toEqual([
      ['front', 'side_blend'],
      ['back', 'side_blend'],
    ]);
  });

  it('is noted where it is so short that it shows as a corner', () => {
    const found = noteSideDirection(graded('5 mm').range);
    expect(found.map(({ severity, subject }) => [severity, subject])).toEqual([
      ['note', 'side'],
      ['note', 'side'],
    ]);
  });
});
