/**
 * Folds, center lines and the line of the hip are still straight when a grade is rounded, wherever it is
 * stacked. Which points stand on them is written down here by name, not found by the engine.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gradeChart, InputError, pointOf } from '../../src/index';
import type { GradeResult, Piece } from '../../src/index';
import { applyRules } from '../../src/grade/rules';
import { roundSewn } from '../../src/seams/round-sewn';
import { CHARTS, DEMO } from '../draft/shaped-pieces';
import { graded } from '../given/sheets';
import { gradedOnce } from '../graded';
import { LONG, runs, some } from '../samples';
import { anyChart, sixteenthsText } from '../skirts';
import { SHAPED_NAMES, STYLE_NAMES } from '../styles';

/** Rounding steps as typed, and in millimeters. */
const STEPS = [
  ['1/16in', 1.5875],
  ['1/8in', 3.175],
  ['1mm', 1],
  ['0.5cm', 5],
] as const;
/** Points that every panel has: on the center line, and off it at two levels. */
const STACKS = ['center_waist', 'side_hip', 'side_waist'] as const;

/** mm. What the arithmetic of doubles leaves of nothing at the size of a skirt. */
const NOTHING = 1e-9;
/** mm. Points of the exact grade are on one line within this; truing ends there. */
const ON_LINE = 1e-6;

interface Line {
  readonly axis: 'x' | 'y';
  readonly names: readonly string[];
}

/** Lines of drafted pieces that a knife or a pencil runs along, by the points that stand on them. */
const LINES: readonly Line[] = [
  {
    axis: 'x',
    names: [
      'center_waist',
      'center_high_hip',
      'center_hip',
      'vent_top',
      'center_hem',
      'center_lower',
    ],
  },
  { axis: 'x', names: ['zip_waist', 'zip_hem'] },
  { axis: 'y', names: ['center_hip', 'side_hip'] },
  { axis: 'x', names: ['underlap_top', 'underlap_fold', 'underlap_waist'] },
  { axis: 'x', names: ['overlap_top', 'overlap_fold', 'left_center_back'] },
  { axis: 'y', names: ['underlap_top', 'overlap_top'] },
  { axis: 'y', names: ['underlap_fold', 'overlap_fold'] },
  { axis: 'y', names: ['right_center_back', 'center_front', 'left_center_back'] },
];

/** Where those of the points that the piece has stand along the axis. */
function along({ axis, names }: Line, piece: Piece): readonly number[] {
  return names
    .filter((name) => piece.plan.index.has(name))
    .map((name) => pointOf(piece, name)[axis]);
}

const spread = (places: readonly number[]): number => Math.max(...places) - Math.min(...places);

/** The pieces of every size as the rules of the result make them when rounded to a step in mm. */
function roundedSizes({ range, seams }: GradeResult, step: number): readonly (readonly Piece[])[] {
  const base = range.sizes[range.rules.base]?.pieces ?? [];
  const pairs = seams.map(({ pair }) => pair);
  return applyRules(base, roundSewn(base, pairs, range.exactRules, step));
}

/** How the lines of rounded sizes stand beside those of the exact ones, in mm. */
function linesOf({ range }: GradeResult, sizes: readonly (readonly Piece[])[]) {
  return sizes.flatMap((pieces, i) => {
    const { label, pieces: exact = [] } = range.sizes[i] ?? {};
    return pieces.flatMap((piece, p) =>
      LINES.flatMap((line) => {
        const [own, due] = [along(line, piece), along(line, exact[p] as Piece)];
        // The line of the hip of a flared skirt slants, as its side was opened.
        if (own.length < 2 || spread(due) > ON_LINE) return [];
        const where = `${label} ${piece.plan.name} ${line.names.join()}`;
        return [{ where, bent: spread(own), off: Math.abs((own[0] ?? NaN) - (due[0] ?? NaN)) }];
      }),
    );
  });
}

const SKIRTS = [
  ...some(STYLE_NAMES).map((style) => ({ ...DEMO, style })),
  ...(LONG
    ? CHARTS.flatMap((chart) =>
        SHAPED_NAMES.map((style) => ({
          ...chart,
          style,
          set: { waist_finish: '2', lining: '1', vent_length: 'stride_opening' },
        })),
      )
    : []),
];

describe.each(SKIRTS)('the lines of $style', (skirt) => {
  it.each(STACKS)(
    'stay straight and less than a step from where they belong, stacked on %s',
    (stack) => {
      const result = gradedOnce({ ...skirt, stack });
      for (const [round, step] of STEPS) {
        const sizes = roundedSizes(result, step);
        for (const piece of sizes.flat())
          if (piece.plan.index.has(stack)) expect(pointOf(piece, stack)).toEqual({ x: 0, y: 0 });
        const lines = linesOf(result, sizes);
        // A center line and a line of the hip, or two center lines, in two panels of each size.
        expect(lines.length).toBeGreaterThanOrEqual(2 * 2 * result.range.sizes.length - 2);
        for (const { where, bent, off } of lines) {
          expect(bent, `${round} ${where}`).toBeLessThan(NOTHING);
          expect(off, `${round} ${where}`).toBeLessThan(step);
        }
        // Off the center every quarter of the hip moves the center line, which no such grid holds.
        if (stack !== 'center_waist' && round === '0.5cm')
          expect(Math.max(...lines.map(({ off }) => off))).toBeGreaterThan(0.1);
      }
    },
  );
});

/** Pairs of points of a piece that share a line in the base and in the exact size, but not rounded. */
function parted({ range }: Pick<GradeResult, 'range'>): readonly string[] {
  const base = range.sizes[range.rules.base]?.pieces ?? [];
  return base.flatMap(({ plan, points }, p) => {
    const folds = plan.marks.flatMap(({ name, through }) =>
      name === 'dart-fold' ? [through[1]] : [],
    );
    const ruled = plan.pointNames.filter(
      (name) => !plan.handles.has(name) && !folds.includes(name),
    );
    return range.sizes.flatMap(({ label }, i) => {
      const apart = (a: string, b: string, axis: 'x' | 'y'): readonly [number, number, number] => {
        const [k, l] = [plan.pointNames.indexOf(a), plan.pointNames.indexOf(b)];
        const from = (points[k]?.[axis] ?? NaN) - (points[l]?.[axis] ?? NaN);
        const [exact, rounded] = [range.exactRules, range.rules].map(({ moves }) => {
          const own = moves[i]?.[p];
          return from + (own?.[k]?.[axis] ?? NaN) - (own?.[l]?.[axis] ?? NaN);
        });
        return [from, exact ?? NaN, rounded ?? NaN];
      };
      return ruled.flatMap((a, k) =>
        ruled.slice(k + 1).flatMap((b) =>
          (['x', 'y'] as const).flatMap((axis) => {
            const [from, exact, rounded] = apart(a, b, axis).map(Math.abs);
            const isLevel = (from ?? NaN) < NOTHING && (exact ?? NaN) < NOTHING;
            return isLevel && !((rounded ?? NaN) < NOTHING)
              ? [`${label} ${plan.name} ${a} ${b}`]
              : [];
          }),
        ),
      );
    });
  });
}

describe('points on one line', () => {
  it('stay on it for any chart, style, stack point and step', () => {
    let checked = 0;
    fc.assert(
      fc.property(
        anyChart,
        fc.constantFrom(...STYLE_NAMES),
        fc.constantFrom(...STACKS),
        fc.constantFrom(...STEPS.map(([round]) => round), '1/4in', '0.3mm'),
        (chart, style, stack, round) => {
          let result: GradeResult;
          try {
            result = gradeChart({ chart: sixteenthsText(chart), base: '1', style, stack, round });
          } catch (error) {
            // Some charts leave a shaped style no dart to draw; that is refused, rounded or not.
            if (error instanceof InputError) return;
            throw error;
          }
          checked++;
          expect(parted(result)).toEqual([]);
        },
      ),
      { numRuns: runs(5, 100) },
    );
    expect(checked).toBeGreaterThan(2);
  });
});

describe('a pattern of somebody', () => {
  // A front on the fold with a notch and a corner in its fold, an inside line from the fold across the
  // hip, a back with a notch in its center seam, and a band for both waists.
  const PATTERN = `# unit: in
# base: 12
piece,point,x,y,kind,edge,seam,fold
front,center_waist,0,0,corner,waist,,
front,side_waist,7.5,0,corner,side,side_seam,
front,side_hip,9,8,corner
front,side_hem,9,25,corner,hem,,
front,center_hem,0,25,corner,center_front,,fold
front,fold_notch,0,16,notch
front,center_hip,0,8,corner
front,hip_in,0,8,inside,hip
front,hip_out,9,8,inside,hip
back,center_waist,0,0,corner,waist,,
back,side_waist,7.5,0,corner,side,side_seam,
back,side_hip,9,8,corner
back,side_hem,9,25,corner,hem,,
back,center_hem,0,25,corner,center_back,,
back,zip_end,0,7,notch
band,left_top,0,0,corner,top,,
band,right_top,15,0,corner,right_end
band,right_waist,15,2,corner,waist
band,left_waist,0,2,corner,left_end
`;
  const SEAMS = 'edge,sewn_to,ease\nband.waist,front.waist + back.waist,0 in\n';
  // Nothing falls on the grid of any step, and twice the nearest of 0.3 in is not that of 0.6 in, so that
  // a waist gives way to the band where it is stacked on the side.
  const RULES = `# unit: in
# sizes: 10, 12, 14, 16
piece,point,step_dx,step_dy
front,center_waist,0,0
front,side_waist,0.3,0
front,side_hip,5/16,3/32
front,side_hem,5/16,7/32
front,center_hem,0,7/32
front,fold_notch,0,1/8
front,center_hip,0,3/32
front,hip_in,0,3/32
front,hip_out,5/16,3/32
back,center_waist,0,0
back,side_waist,0.3,0
back,side_hip,5/16,3/32
back,side_hem,5/16,7/32
back,center_hem,0,7/32
band,left_top,0,0
band,right_top,0.6,0
band,right_waist,0.6,0
band,left_waist,0,0
`;
  const ON_LINES: readonly Line[] = [
    {
      axis: 'x',
      names: ['center_waist', 'center_hip', 'hip_in', 'fold_notch', 'zip_end', 'center_hem'],
    },
    { axis: 'x', names: ['side_hip', 'hip_out', 'side_hem'] },
    { axis: 'y', names: ['center_waist', 'side_waist'] },
    { axis: 'y', names: ['center_hip', 'hip_in', 'hip_out', 'side_hip'] },
    { axis: 'y', names: ['center_hem', 'side_hem'] },
    { axis: 'x', names: ['right_top', 'right_waist'] },
  ];
  const seams = { text: SEAMS, file: 'seams.csv' };

  it.each(STEPS)('has its fold, hip and hem straight, to %s', (round, step) => {
    for (const stack of STACKS) {
      const result = graded(PATTERN, RULES, { seams, round, stack });
      const exact = graded(PATTERN, RULES, { seams, stack });
      result.range.sizes.forEach(({ label, pieces }, i) => {
        pieces.forEach((piece, p) => {
          for (const line of ON_LINES) {
            const where = `${stack} ${label} ${piece.plan.name} ${line.names.join()}`;
            const own = along(line, piece);
            const due = along(line, exact.range.sizes[i]?.pieces[p] as Piece);
            if (own.length < 2) continue;
            expect(spread(due), where).toBeLessThan(NOTHING);
            expect(spread(own), where).toBeLessThan(NOTHING);
            expect(Math.abs((own[0] ?? NaN) - (due[0] ?? NaN)), where).toBeLessThan(step);
          }
        });
      });
    }
  });

  it('keeps a fold straight that lies across, with x and y exchanged', () => {
    const exchanged = (text: string): string =>
      text.replace(/^(front|back|band),([^,]+),([^,\n]+),([^,\n]+)/gm, '$1,$2,$4,$3');
    const { range } = graded(exchanged(PATTERN), exchanged(RULES), {
      seams,
      round: '0.5cm',
      stack: 'center_waist',
    });
    const turned = ON_LINES.map(({ axis, names }): Line => ({
      axis: axis === 'x' ? 'y' : 'x',
      names,
    }));
    for (const { pieces } of range.sizes)
      for (const piece of pieces)
        for (const line of turned) {
          const own = along(line, piece);
          if (own.length > 1) expect(spread(own), line.names.join()).toBeLessThan(NOTHING);
        }
  });
});
