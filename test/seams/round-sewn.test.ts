/** What rounding costs a sewn seam, walked with short chords and straight lines, not by the engine. */
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { gradeChart, InputError, STYLES } from '../../src/index';
import type { GradeResult, Finding, GradeRequest, Piece } from '../../src/index';
import { draftedSizes } from '../../src/grade/graded-pattern';
import { pieceNamed } from '../../src/pattern/piece';
import { apart, chords, CHARTS, total } from '../draft/shaped-pieces';
import { graded } from '../given/sheets';
import type { DraftedResult } from '../graded';
import { gradedOnce } from '../graded';
import { LONG, runs } from '../samples';
import { anyChart, chartText, farthest, sixteenthsText } from '../skirts';
import { SHAPED_NAMES, STYLE_NAMES } from '../styles';

/** Rounding steps as typed, and in millimeters. */
const STEPS = [
  ['1/16in', 1.5875],
  ['1/8in', 3.175],
  ['1mm', 1],
  ['0.5cm', 5],
] as const;

/** mm. What nobody sees of a seam, a girth or a leg, as the README states it. */
const UNSEEN = 0.1;
/** mm. Two hundred chords and straight lines tell lengths to less than this. */
const CHORDED = 0.001;

const length = (pieces: readonly Piece[], piece: string, edge: string): number =>
  total(chords(pieceNamed(pieces, piece), edge));

/** Findings of a check for one size that are not `ok`, by their subjects. */
function told(result: GradeResult, check: string, size: string): readonly string[] {
  return result.findings
    .filter((f) => f.check === check && f.size === size && f.severity !== 'ok')
    .map(({ piece, subject }) => (check === 'dart-legs' ? `${piece} ${subject}` : subject));
}

const missed = new WeakMap<object, ReturnType<typeof missesOf>>();

/** `missesOf` every size of a drafted range, which is walked once. */
function misses(result: DraftedResult): ReturnType<typeof missesOf> {
  const found = missed.get(result) ?? draftedSizes(result.range).flatMap(missesOf);
  missed.set(result, found);
  return found;
}

/** What differs by more than it may, as check and subject, in a size of a drafted range. */
function missesOf({
  label: size,
  pieces,
  draft: { body },
  parameters,
}: ReturnType<typeof draftedSizes>[number]) {
  const found: { size: string; check: string; subject: string; off: number }[] = [];
  const miss = (check: string, subject: string, off: number): void => {
    // Just at the tolerance, chords and the engine may disagree.
    if (Math.abs(off) > UNSEEN + CHORDED) found.push({ size, check, subject, off });
  };
  const walked = new Map<string, number>();
  const long = (piece: string, edge: string): number => {
    const key = `${piece}.${edge}`;
    const known = walked.get(key) ?? length(pieces, piece, edge);
    walked.set(key, known);
    return known;
  };
  const has = (piece: string): boolean => pieces.some(({ plan }) => plan.name === piece);
  miss('seam-lengths', 'side', long('front', 'side') - long('back', 'side'));
  const waist = 2 * (long('front', 'waist') + long('back', 'waist'));
  miss(
    'finished-girth',
    'waist',
    (has('waistband') ? long('waistband', 'waist') : waist) -
      (body.get('waist_girth') ?? NaN) -
      (parameters.get('waist_ease') ?? NaN),
  );
  if (has('waistband')) {
    const ease = parameters.get('band_ease') ?? NaN;
    miss('seam-lengths', 'waist and band', waist - long('waistband', 'waist') - ease);
  }
  for (const panel of ['front', 'back'])
    for (const part of ['facing', 'lining'])
      if (has(`${panel}_${part}`))
        miss(
          'seam-lengths',
          `${panel} waist and ${part}`,
          long(panel, 'waist') - long(`${panel}_${part}`, 'waist'),
        );
  for (const piece of pieces)
    for (const { name, from, tip, to } of piece.plan.darts)
      miss(
        'dart-legs',
        `${piece.plan.name} ${name}`,
        apart(piece, from, tip) - apart(piece, to, tip),
      );
  return found;
}

/** Corners that are on no grid line, a step off or more, or farther off than half without a word. */
function offGrid({ range, findings }: GradeResult, step: number): readonly string[] {
  return range.sizes.flatMap(({ label, pieces }, i) =>
    pieces.flatMap(({ plan }, p) => {
      const said = findings
        .filter((f) => f.check === 'rounded-points' && f.size === label && f.piece === plan.name)
        .map(({ message }) => message)
        .join();
      const folds = new Set(
        plan.marks.flatMap(({ name, through }) => (name === 'dart-fold' ? [through[1]] : [])),
      );
      return plan.pointNames.flatMap((name, k) => {
        if (plan.handles.has(name) || folds.has(name)) return [];
        return (['x', 'y'] as const).flatMap((axis) => {
          const move = range.rules.moves[i]?.[p]?.[k]?.[axis] ?? NaN;
          const off = Math.abs(move - (range.exactRules.moves[i]?.[p]?.[k]?.[axis] ?? NaN));
          const isOnGrid = Math.abs(move / step - Math.round(move / step)) < 1e-9 && off < step;
          const isNear = off <= step / 2 + 1e-6 || said.includes(name);
          return isOnGrid && isNear ? [] : [`${label} ${plan.name} ${name} ${axis} ${off}`];
        });
      });
    }),
  );
}

const failures = (findings: readonly Finding[]): readonly string[] =>
  findings
    .filter(({ severity }) => severity === 'fail')
    .map(({ check, size, piece, subject }) => `${check} ${size} ${piece} ${subject}`);

/** Every style with its own finish of the waist, and shaped ones with facings and linings too. */
const SKIRTS: readonly (readonly [string, Pick<GradeRequest, 'style' | 'set'>])[] = [
  ...STYLE_NAMES.map((style) => [style, { style }] as const),
  ...(LONG ? SHAPED_NAMES : ['shared-drop']).map(
    (style) =>
      [`${style}, faced and lined`, { style, set: { waist_finish: '2', lining: '1' } }] as const,
  ),
];

describe.each(SKIRTS)('%s', (_, skirt) => {
  // In passing one of the steps for each, so that four skirts after each other have them all.
  const rank = SKIRTS.findIndex(([, own]) => own === skirt);
  describe.each(STEPS.filter((_, i) => LONG || (i + rank) % STEPS.length === 0))(
    'rounded to %s',
    (round, step) => {
      const results: (readonly [exact: DraftedResult, rounded: DraftedResult])[] = [];
      beforeAll(() => {
        for (const chart of CHARTS)
          results.push([
            gradedOnce({ style: 'pencil', ...chart, ...skirt }),
            gradeChart({ style: 'pencil', ...chart, ...skirt, round }),
          ]);
      });

      it('fails in nothing that the exact grade does not fail in', () => {
        for (const [exact, { findings }] of results) {
          const before = new Set(failures(exact.findings));
          expect(failures(findings).filter((failure) => !before.has(failure))).toEqual([]);
        }
      });

      it('tells of every seam, girth and leg that is off', () => {
        for (const [, result] of results)
          for (const { size, check, subject } of misses(result))
            expect(told(result, check, size), `${check} ${size}`).toContain(subject);
      });

      it('keeps the waist within about a step all round, and a seam within less', () => {
        // Front and back count twice each, so the waist goes by two steps and its nearest is one off.
        for (const [, result] of results)
          for (const { check, subject, off } of misses(result)) {
            if (check === 'finished-girth') expect(Math.abs(off)).toBeLessThan(1.05 * step);
            else if (check === 'dart-legs') expect(Math.abs(off)).toBeLessThan(0.3 + step / 15);
            else if (subject === 'side') expect(Math.abs(off)).toBeLessThan(0.5 + step / 5);
            else expect(Math.abs(off)).toBeLessThan(step);
          }
      });

      it('has corners on the grid, and says which are more than half a step off', () => {
        for (const [, result] of results) expect(offGrid(result, step)).toEqual([]);
      });
    },
  );
});

describe('any chart in any style to any step', () => {
  it('tells of all that is off, and leaves the base as it is', () => {
    const styles = fc.constantFrom(...STYLES.map(({ name }) => name));
    const steps = fc.constantFrom(...STEPS, ['0.1 in', 2.54] as const, ['0.5mm', 0.5] as const);
    let checked = 0;
    fc.assert(
      fc.property(anyChart, styles, steps, (chart, style, [round, step]) => {
        const request = { chart: sixteenthsText(chart), base: '1', style };
        let result: DraftedResult;
        try {
          result = gradeChart({ ...request, round });
        } catch (error) {
          // Some charts leave a shaped style no dart to draw; that is refused, rounded or not.
          if (error instanceof InputError) return;
          throw error;
        }
        checked++;
        expect(result.range.sizes[0]?.pieces).toEqual(result.range.draft.sizes[0]?.pieces);
        expect(offGrid(result, step)).toEqual([]);
        for (const { size, check, subject } of misses(result))
          expect(told(result, check, size), `${check} ${size}`).toContain(subject);
        const before = new Set(failures(gradeChart(request).findings));
        expect(failures(result.findings).filter((one) => !before.has(one))).toEqual([]);
      }),
      { numRuns: runs(5, 100) },
    );
    expect(checked).toBeGreaterThan(2);
  });
});

describe('what must not matter to rounding', () => {
  const rows = { waist_girth: [25, 26, 27.5, 29.25], hip_girth: [35.5, 36.75, 38, 39.5] };
  const sizes = ['S', 'M', 'L', 'XL'];
  const rounded = (own: typeof rows, labels: readonly string[], round = '1mm'): GradeResult =>
    gradeChart({ style: 'pencil', chart: chartText('in', own, labels), base: 'M', round });

  it('the order of the sizes', () => {
    const turned = {
      waist_girth: rows.waist_girth.toReversed(),
      hip_girth: rows.hip_girth.toReversed(),
    };
    expect(farthest(rounded(rows, sizes), rounded(turned, sizes.toReversed()))).toBe(0);
  });

  it('what other sizes there are', () => {
    const whole = rounded(rows, sizes);
    const some = rounded({ waist_girth: [26, 29.25], hip_girth: [36.75, 39.5] }, ['M', 'XL']);
    const last = ({ range }: GradeResult) => range.sizes.at(-1)?.pieces.map(({ points }) => points);
    expect(last(some)).toEqual(last(whole));
  });
});

describe('a pattern of somebody', () => {
  // The README's own front and back. Quarters grow by 5/16 in at the waist, 1/4 in at the hip, and
  // each dart stands at 3/8 and 1/2 of the waist, so that nothing falls on eighths by itself.
  const PATTERN = `# unit: in
# base: 12
piece,point,x,y,kind,edge,seam
front,center_waist,0,0,corner,waist,
front,dart_in,3,0
front,dart_tip,3.5,4,dart
front,dart_out,4,0
front,side_waist,7.5,0,corner,side,side_seam
front,side_mid,8.6,4,curve
front,side_hip,9,8
front,hip_notch,9,12,notch
front,side_hem,9,25,corner,hem,
front,center_hem,0,25,corner,center_front,
back,center_waist,0,0,corner,waist,
back,side_waist,7.5,0,corner,side,side_seam
back,side_mid,8.6,4,curve
back,side_hip,9,8
back,hip_notch,9,12,notch
back,side_hem,9,25,corner,hem,
back,center_hem,0,25,corner,center_back,
`;
  const RULES = `# sizes: 10, 12, 14, 16
piece,point,step_dx,step_dy
front,center_waist,0,0
front,side_waist,5/16,-1/32
front,side_hip,1/4,1/16
front,side_hem,1/4,3/16
front,center_hem,0,3/16
back,center_waist,0,0
back,side_waist,5/16,-1/32
back,side_hip,1/4,1/16
back,side_hem,1/4,3/16
back,center_hem,0,3/16
`;

  it.each(STEPS)('keeps its side seam and its dart, to %s', (round, step) => {
    const { range, findings } = graded(PATTERN, RULES, { round });
    expect(failures(findings)).toEqual([]);
    for (const { label, pieces } of range.sizes) {
      const [front, back] = ['front', 'back'].map((name) => length(pieces, name, 'side'));
      const off = Math.abs((front ?? NaN) - (back ?? NaN));
      expect(off).toBeLessThan(1);
      if (off > UNSEEN + CHORDED)
        expect(
          findings.some(
            (f) => f.check === 'seam-lengths' && f.size === label && f.severity !== 'ok',
          ),
        ).toBe(true);
      const own = pieceNamed(pieces, 'front');
      const legs = apart(own, 'dart_in', 'dart_tip') - apart(own, 'dart_out', 'dart_tip');
      const held = findings
        .filter((f) => f.check === 'dart-legs' && f.size === label)
        .map(({ severity }) => severity === 'ok');
      expect(held).toEqual([Math.abs(legs) <= UNSEEN]);
    }
    range.rules.moves.forEach((moved) => {
      moved.forEach((points, p) => {
        const plan = range.plans[p];
        points.forEach(({ x, y }, k) => {
          if (plan?.handles.has(plan.pointNames[k] ?? '')) return;
          for (const move of [x, y])
            expect(Math.abs(move / step - Math.round(move / step))).toBeLessThan(1e-9);
        });
      });
    });
  });

  it('goes as far outward as inward, and half a step at most, where nothing is sewn to it', () => {
    // Nothing pairs a lone piece; a step of a quarter inch is two and a half tenths.
    const lone = PATTERN.split('\n')
      .filter((line) => !line.startsWith('back'))
      .join('\n');
    const rules = `# sizes: 10, 12, 14\npiece,point,step_dx,step_dy
front,center_waist,0,0\nfront,side_waist,0,0\nfront,side_hem,0,1/4\nfront,center_hem,0,1/4\n`;
    const { range } = graded(lone, rules, { round: '0.1 in' });
    const hem = range.plans[0]?.pointNames.indexOf('center_hem') ?? -1;
    const [smaller, base, larger] = range.rules.moves.map(([front]) =>
      Math.round((front?.[hem]?.y ?? NaN) / 2.54),
    );
    expect(base).toBe(0);
    expect([2, 3]).toContain(larger);
    expect(smaller).toBe(-(larger ?? NaN));
  });
});
