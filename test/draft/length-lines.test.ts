import { describe, expect, it } from 'vitest';
import type { GradeResult, Piece } from '../../src/index';
import { gradeChart, pointOf } from '../../src/index';
import { gradeLazily, gradedOnce } from '../graded';
import { LONG } from '../samples';
import { STYLE_NAMES } from '../styles';
import { chartText } from '../skirts';
import { casteljau } from '../geometry/curves';
import { CHARTS, curveOf, DEMO } from './shaped-pieces';

const KINDS = ['length-line', 'hip-depth-line'] as const;

/** The pieces of all sizes that are drafted from waist to hem. */
function longPieces({ range }: GradeResult): readonly Piece[] {
  return range.sizes.flatMap(({ pieces }) =>
    pieces.filter(({ plan }) => plan.part === 'panel' || plan.part === 'lining'),
  );
}

function ends({ plan, ...piece }: Piece, kind: (typeof KINDS)[number]) {
  const mark = plan.marks.find(({ name }) => name === kind);
  return mark?.through.map((name) => pointOf({ plan, ...piece }, name));
}

/** mm from a point to the side seam of a piece, by many chords. */
function offSide(piece: Piece, { x, y }: { x: number; y: number }): number {
  const along = piece.plan.outline
    .filter(({ seam }) => seam === 'side')
    .flatMap(({ kind, from, to }) => {
      const [a, b] = [pointOf(piece, from), pointOf(piece, to)];
      return Array.from({ length: 2001 }, (_, i) => {
        const t = i / 2000;
        if (kind === 'cubic') return casteljau(curveOf(piece, from, to), t);
        return { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
      });
    });
  return Math.min(...along.map((p) => Math.hypot(p.x - x, p.y - y)));
}

function tips(pieces: readonly Piece[]): readonly number[] {
  return pieces.flatMap((piece) => piece.plan.darts.map(({ tip }) => pointOf(piece, tip).y));
}

const MADE: readonly (readonly [string, GradeResult])[] = [
  // In passing the next style on the next chart alone.
  ...CHARTS.flatMap(({ chart, base }, c) =>
    STYLE_NAMES.filter((_, s) => LONG || s % CHARTS.length === c).map(
      (style) => [`${style}, base ${base}`, gradedOnce({ chart, base, style })] as const,
    ),
  ),
  // A flare lifts the side, so that the line comes to another place of its curve.
  ...['0.1', '0.25'].map(
    (dart_closing) =>
      [
        `shared-a-line, dart_closing ${dart_closing}`,
        gradedOnce({
          ...DEMO,
          style: 'shared-a-line',
          set: { dart_closing, back_dart_length: '9 cm' },
        }),
      ] as const,
  ),
  // Darts that end below the hip line.
  [
    'shared-pencil, long darts',
    gradedOnce({
      ...DEMO,
      style: 'shared-pencil',
      set: { vent_length: '35.5 cm', back_darts: '1', back_dart_length: '25 cm' },
    }),
  ],
];

describe.each(MADE)('the lines to lengthen or shorten at of %s', (name, result) => {
  const pieces = longPieces(result);
  const panels = pieces.filter(({ plan }) => plan.part === 'panel');

  it('run square to the grain from the center to the side seam, as deep in every size and piece', () => {
    for (const kind of KINDS) {
      const drawn = pieces.flatMap((piece) => {
        const line = ends(piece, kind);
        return line === undefined ? [] : [{ piece, line }];
      });
      // A flare lifts the hip line at the side, long darts pass it: there may be no room above it.
      const mayLack = /^shared-a-line|long darts/u.test(name);
      if (mayLack && kind === 'hip-depth-line' && drawn.length === 0) continue;
      expect(drawn).toHaveLength(pieces.length);
      // Each piece has its zero where its sizes are stacked; the hip line is one level on all pieces.
      const inPiece = new Map<string, number>();
      const above = new Map<number, number>();
      const each = pieces.length / result.range.sizes.length;
      for (const [i, { piece, line }] of drawn.entries()) {
        const [center, side] = line as [{ x: number; y: number }, { x: number; y: number }];
        expect(center.x).toBeCloseTo(0, 9);
        const known = inPiece.get(piece.plan.name) ?? center.y;
        inPiece.set(piece.plan.name, known);
        expect(center.y).toBeCloseTo(known, 6);
        expect(side.y).toBeCloseTo(center.y, 6);
        const size = Math.floor(i / each);
        const toHip = pointOf(piece, 'center_hip').y - center.y;
        const ofFirst = above.get(size) ?? toHip;
        above.set(size, ofFirst);
        expect(toHip).toBeCloseTo(ofFirst, 6);
        expect(offSide(piece, side)).toBeLessThan(0.3);
        expect(Math.abs(side.x)).toBeGreaterThan(100);
      }
    }
  });

  it('are clear of hip, vent, hem and darts by 5 mm at least, as the findings say', () => {
    for (const piece of panels) {
      const at = (point: string): number => pointOf(piece, point).y;
      const [length] = ends(piece, 'length-line') ?? [];
      const below = piece.plan.index.has('vent_top') ? at('vent_top') : at('center_hem');
      for (const above of [at('center_hip'), ...tips([piece])])
        expect(length?.y).toBeGreaterThan(above + 5);
      expect(length?.y).toBeLessThan(Math.min(below, at('side_hem')) - 5);
      const [depth] = ends(piece, 'hip-depth-line') ?? [];
      if (depth === undefined) continue;
      expect(depth.y).toBeGreaterThan(Math.max(...tips(panels)) + 5);
      expect(depth.y).toBeLessThan(Math.min(at('center_hip'), at('side_hip')) - 5);
    }
    const found = result.findings.filter(({ check }) => check === 'length-line');
    expect(found.length).toBeGreaterThan(0);
    for (const { severity, size } of found) expect(severity).toBe(size === '' ? 'note' : 'ok');
  });
});

describe('a line to lengthen or shorten at', () => {
  const chart = chartText('cm', { waist_girth: [64, 68], hip_girth: [91, 95] }, ['S', 'M']);
  const left = (set: Readonly<Record<string, string>>, style: string) =>
    gradeLazily({ chart, base: 'S', style, set })
      .findings.filter(({ check, size }) => check === 'length-line' && size === '')
      .map(({ subject, severity }) => [subject, severity]);

  it.each(['pencil', 'shared-pencil'])('is left out where there is no room, %s', (style) => {
    // 20 cm to the hip and 26 to the hem, a hand for the turn-up.
    expect(left({ skirt_length: '26 cm', vent_length: '0 cm' }, 'shared-pencil')).toContainEqual([
      'length-line',
      'note',
    ]);
    const darts = { pencil: { back_dart_length: '7.5 in' }, other: { back_dart_length: '19 cm' } };
    const set = style === 'pencil' ? darts.pencil : { ...darts.other, back_darts: '1' };
    expect(left(set, style)).toEqual([['hip-depth-line', 'note']]);
  });

  it('has room above the hip of an A-line in fourteen sizes, where each size is lifted by its own flare', () => {
    const steps = Array.from({ length: 14 }, (_, i) => i);
    const wide = chartText(
      'in',
      {
        waist_girth: steps.map((i) => 24.5 + 1.5 * i),
        hip_girth: steps.map((i) => 34.5 + 1.5 * i),
        waist_to_hip: steps.map((i) => 7.5 + i / 8),
      },
      steps.map((i) => `${2 * i}`),
    );
    const { findings } = gradeLazily({ chart: wide, base: '10', style: 'shared-a-line' });
    const found = findings.filter(({ subject }) => subject === 'hip-depth-line');
    expect(found.map(({ severity }) => severity)).toEqual(steps.map(() => 'ok'));
  });

  it('stays below the hip and above the vent in every size of a range of lengths', () => {
    const tall = chartText(
      'cm',
      { waist_girth: [64, 68, 72], hip_girth: [91, 95, 99], skirt_length: [60, 62, 64] },
      ['S', 'M', 'L'],
    );
    const { findings } = gradeChart({ chart: tall, base: 'M', style: 'shared-pencil' });
    const found = findings.filter(({ check }) => check === 'length-line');
    expect(found).toHaveLength(6);
    expect(new Set(found.map(({ severity }) => severity))).toEqual(new Set(['ok']));
  });
});
