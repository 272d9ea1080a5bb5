/**
 * The quarter method with `trued = 1`, folded, walked and measured here on dense polylines. Common
 * practice, no source: a waist runs on over closed darts and across the side, a hem is square to what it
 * meets.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointOf } from '../../src/index';
import { draftedSizes } from '../../src/grade/graded-pattern';
import type { GradeResult, Edge, SizedPattern, Piece } from '../../src/index';
import { gradeLazily, gradedOnce } from '../graded';
import { runs } from '../samples';
import { anyChart, sixteenthsText } from '../skirts';
import type { Polyline } from './closed-waist';
import { closedWaist, figures, flattened } from './closed-waist';
import { apart, bearing, chords, total } from './shaped-pieces';

const SET = { trued: '1' };
const text = (file: string): string =>
  readFileSync(new URL(`../../size-charts/${file}`, import.meta.url), 'utf8');

const CHARTS = [
  ['demo.csv', '12'],
  ['standards/home-pattern-misses-1968.csv', '12'],
  ['standards/astm-d5585-95-misses.csv', '10'],
  ['standards/astm-d6960-16-plus.csv', '22W'],
  ['standards/en-13402-3-women.csv', '88'],
] as const;

const RESULTS = ['pencil', 'straight'].flatMap((style) =>
  CHARTS.map(
    ([file, base]) =>
      [`${style} of ${file}`, gradedOnce({ chart: text(file), base, style, set: SET })] as const,
  ),
);

/** Front and back of one size. */
function panels({ pieces }: SizedPattern): readonly [Piece, Piece] {
  const [front, back] = pieces;
  if (front === undefined || back === undefined) throw new RangeError('no panels');
  return [front, back];
}

const edgesOf = (piece: Piece, seam: string): readonly Edge[] =>
  piece.plan.outline.filter((edge) => edge.seam === seam && edge.kind !== 'dart');

/** Direction in which a polyline ends, in degrees. */
function endsAt(line: Polyline): number {
  const [a, b] = line.slice(-2);
  if (a === undefined || b === undefined) throw new RangeError('a line of one point');
  return bearing(a, b);
}

/** The angle inside the piece from the end of one line to the beginning of the next. */
function corner(piece: Piece, before: Edge | undefined, after: Edge | undefined): number {
  if (before === undefined || after === undefined) throw new RangeError('no such edge');
  const way = endsAt(flattened(piece, after).slice(0, 2)) - endsAt(flattened(piece, before));
  return 180 - (((way % 360) + 540) % 360) + 180;
}

/** What must hold of each size, measured here. */
function expectTrued({ range }: GradeResult): void {
  for (const size of range.sizes) {
    const [front, back] = panels(size);
    const { corner: turn, wave } = figures(closedWaist(front, back));
    // Chords of a three-hundredth of a curve turn by a tenth of a degree.
    expect(turn).toBeLessThan(0.5);
    expect(wave).toBeLessThan(0.3);
    expect(total(chords(front, 'side'))).toBeCloseTo(total(chords(back, 'side')), 3);
    for (const piece of [front, back]) {
      const [hem] = edgesOf(piece, 'hem');
      const [first] = edgesOf(piece, 'waist');
      expect(corner(piece, edgesOf(piece, 'side').at(-1), hem)).toBeCloseTo(90, 0);
      // The hem ends level at the center, and the waist begins level there.
      expect(Math.abs(endsAt(flattened(piece, hem as Edge)))).toBeCloseTo(180, 0);
      expect(endsAt(flattened(piece, first as Edge).slice(0, 2))).toBeCloseTo(0, 0);
      expect(apart(piece, 'dart_inner', 'dart_tip')).toBeCloseTo(
        apart(piece, 'dart_outer', 'dart_tip'),
        9,
      );
      expect(pointOf(piece, 'side_waist').y).toBeLessThan(1e-9);
    }
  }
}

describe.each(RESULTS)('%s, trued', (_, result) => {
  it('has a closed waist, side corners and a hem without corners, and seams that are equal', () => {
    expectTrued(result);
  });

  it('keeps its girths, its darts and its levels', () => {
    for (const { draft, pieces, parameters } of draftedSizes(result.range)) {
      const [waist = NaN, hip = NaN] = [draft.body.get('waist_girth'), draft.body.get('hip_girth')];
      for (const piece of pieces.slice(0, 2)) {
        // A quarter of the waist with its ease, which is none, sewn, whatever the edge curves.
        expect(total(chords(piece, 'waist'))).toBeCloseTo(waist / 4, 2);
        expect(pointOf(piece, 'side_hip').x).toBeCloseTo(
          (hip + (parameters.get('hip_ease') ?? NaN)) / 4,
          9,
        );
        expect(pointOf(piece, 'center_waist')).toEqual({ x: 0, y: 0 });
        expect(pointOf(piece, 'center_hem').y).toBe(parameters.get('skirt_length'));
        const name = piece.plan.name;
        expect(apart(piece, 'dart_inner', 'dart_outer')).toBeCloseTo(
          parameters.get(`${name}_dart_intake`) ?? NaN,
          9,
        );
      }
    }
  });

  it('warns of no edge, and fails nowhere', () => {
    const checks = result.findings.filter(({ severity }) => severity !== 'ok');
    for (const check of ['edge-over-dart', 'closed-waist', 'corners-across-seam', 'untrued'])
      expect(checks.filter((one) => one.check === check)).toEqual([]);
    expect(checks.filter(({ severity }) => severity === 'fail')).toEqual([]);
  });
});

it('any chart is trued', () => {
  fc.assert(
    fc.property(anyChart, (chart) => {
      expectTrued(
        gradeLazily({ chart: sixteenthsText(chart), base: '1', style: 'pencil', set: SET }),
      );
    }),
    { numRuns: runs(5, 100) },
  );
});

describe('left untrued', () => {
  const left = gradedOnce({ chart: text('demo.csv'), base: '12', style: 'pencil' });

  it('is one thing to decide, with the worst corner of all sizes', () => {
    const warnings = left.findings.filter(({ severity }) => severity === 'warning');
    const [untrued, ...others] = warnings.filter(({ check }) => check !== 'stride');
    expect(others).toEqual([]);
    expect(untrued).toMatchObject({ check: 'untrued', size: '' });
    const turns = left.range.sizes.map((size) => figures(closedWaist(...panels(size))).corner);
    expect(untrued?.measured).toBeCloseTo(Math.max(...turns), 0);
  });

  it('still has a note for each corner', () => {
    const notes = left.findings.filter(
      ({ severity, check }) => severity === 'note' && check === 'edge-over-dart',
    );
    expect(notes).toHaveLength(2 * left.range.sizes.length);
  });
});
