/** Cut lines and notches, held against brute force on dense points. */
import { describe, expect, test } from 'vitest';
import { segmentAt } from '../../src/geometry/segment';
import type { Segment } from '../../src/geometry/segment';
import { allowanceAlong } from '../../src/pattern/allowance';
import type { CutPiece, SizedPattern } from '../../src/index';
import { measureOf } from '../../src/index';
import { edgeSegments } from '../../src/pattern/piece';
import { CHARTS } from '../draft/shaped-pieces';
import { gradedOnce } from '../graded';
import { cutOf } from './cut-of';

const [DEMO, PLUS] = CHARTS.map(({ chart }) => chart) as [string, string];

interface Place {
  readonly x: number;
  readonly y: number;
}

function dense(segments: readonly Segment[], step: number): Place[] {
  return segments.flatMap((segment) => {
    const reach = Math.hypot(segment.to.x - segment.from.x, segment.to.y - segment.from.y);
    const count = Math.max(1, Math.ceil(reach / step));
    return Array.from({ length: count }, (_, i) => segmentAt(segment, i / count));
  });
}

/** Distance from a place to a closed chain of chords. */
function distanceTo(chain: readonly Place[], { x, y }: Place): number {
  let least = Infinity;
  chain.forEach((a, i) => {
    const b = chain[(i + 1) % chain.length] ?? a;
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const length = dx * dx + dy * dy;
    const t =
      length === 0 ? 0 : Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / length));
    least = Math.min(least, Math.hypot(a.x + t * dx - x, a.y + t * dy - y));
  });
  return least;
}

/** Even-odd rule. */
function inside(chain: readonly Place[], { x, y }: Place): boolean {
  let odd = false;
  chain.forEach((a, i) => {
    const b = chain[(i + 1) % chain.length] ?? a;
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) odd = !odd;
  });
  return odd;
}

function cut(size: SizedPattern): readonly CutPiece[] {
  return cutOf(size);
}

describe.each([
  ['demo', DEMO, '12', 'pencil'],
  ['demo', DEMO, '12', 'shared-pencil'],
  ['demo', DEMO, '12', 'shared-a-line'],
  ['plus', PLUS, '22W', 'fixed-dart'],
  ['plus', PLUS, '22W', 'shared-drop'],
])('%s chart', (_name, chart, base, style) => {
  const { range } = gradedOnce({ chart, base, style });

  test(`${style}: the cut line keeps its width from every edge and stays outside, in every size`, () => {
    for (const size of range.sizes) {
      for (const piece of cut(size)) {
        const cutChain = dense(piece.cut, 1);
        for (const edge of piece.piece.plan.outline) {
          const width = allowanceAlong(piece.piece.plan, edge, size.parameters);
          if (edge.kind === 'dart') continue;
          for (const segment of edgeSegments(piece.piece, edge)) {
            // Away from the ends, where a corner decides.
            for (const t of [0.35, 0.5, 0.65]) {
              const apart = distanceTo(cutChain, segmentAt(segment, t));
              expect(apart).toBeLessThan(width + 0.05);
              // Beside a short edge the line of a narrower neighbor may run nearer.
              const { from, to } = segment;
              if (Math.hypot(to.x - from.x, to.y - from.y) > 100)
                expect(apart).toBeGreaterThan(width - 0.05);
            }
          }
        }
        const netChain = dense(piece.net, 2);
        for (const place of dense(piece.cut, 7))
          expect(inside(netChain, place) && distanceTo(netChain, place) > 0.05).toBe(false);
      }
    }
  });

  test(`${style}: side notches lie at the same arc length in front and back`, () => {
    for (const size of range.sizes) {
      const along = size.pieces.slice(0, 2).map(({ plan }) => {
        const piece = cut(size).find((found) => found.piece.plan.name === plan.name);
        const hip = piece?.notches.find(({ name }) => name === 'hip-line');
        const side = plan.outline
          .filter((edge) => edge.seam === 'side')
          .flatMap((edge) => (piece === undefined ? [] : edgeSegments(piece.piece, edge)));
        if (hip === undefined) throw new Error('no hip notch');
        const chain = dense(side, 0.5);
        let run = 0;
        let best = { off: Infinity, run: 0 };
        chain.forEach((place, i) => {
          const next = chain[i + 1] ?? place;
          const off = Math.hypot(place.x - hip.net.x, place.y - hip.net.y);
          if (off < best.off) best = { off, run };
          run += Math.hypot(next.x - place.x, next.y - place.y);
        });
        return best.run;
      });
      expect(Math.abs((along[0] ?? NaN) - (along[1] ?? NaN))).toBeLessThan(1);
      expect(measureOf(size, 'side_seam_front')).toBeGreaterThan(along[0] ?? NaN);
    }
  });
});

describe('allowances', () => {
  test('for sewing at home are 5/8 in at the side, in industry 3/8 in', () => {
    // Common practice, no source: 5/8 in at home, 3/8 in in industry.
    const width = (allowances: 'home' | 'industry'): number =>
      (gradedOnce({ chart: DEMO, base: '12', allowances }).range.sizes[0]?.parameters.get(
        'side_allowance',
      ) ?? NaN) / 25.4;
    expect(width('home')).toBeCloseTo(0.625, 9);
    expect(width('industry')).toBeCloseTo(0.375, 9);
  });

  test('a drill hole is 15 mm short of the dart tip (common practice, no source)', () => {
    const { range } = gradedOnce({ chart: DEMO, base: '12' });
    const size = range.sizes[3];
    if (size === undefined) throw new Error('no size');
    const [front] = cut(size);
    const hole = front?.drillHoles[0];
    const tip = front?.piece.points[front.piece.plan.index.get('dart_tip') ?? -1];
    const apart = Math.hypot(
      (hole?.x ?? NaN) - (tip?.x ?? NaN),
      (hole?.y ?? NaN) - (tip?.y ?? NaN),
    );
    expect(apart).toBeCloseTo(15, 1);
  });
});
