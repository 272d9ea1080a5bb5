import { describe, expect, it } from 'vitest';
import { draftedSizes } from '../../src/grade/graded-pattern';
import { checkLining } from '../../src/check/lining';
import { dartCap } from '../../src/pattern/dart-cap';
import type { GradeResult, Piece } from '../../src/index';
import { pointOf } from '../../src/index';
import { seamFindings, withMoved } from '../seam-findings';
import { chartText, pieceOf } from '../skirts';
import { apart, bearing, chords, dartNames, DEMO, everyResult, total } from './shaped-pieces';
import { gradeLazily, gradedOnce } from '../graded';

const CM = { unit: 'cm', fractions: false } as const;
const PANELS = ['front', 'back'] as const;

/** The point from which the side of a panel or lining runs in one line to the hem. */
function straightFrom({ plan }: Piece): string {
  return plan.outline.find(({ to }) => to === 'side_hem')?.from ?? '';
}

/** Every panel with each of its linings, the left one turned over, as it lies on the panel. */
function linings(result: GradeResult): readonly (readonly [shell: Piece, lining: Piece])[] {
  return result.range.sizes.flatMap(({ label, pieces }) =>
    PANELS.flatMap((name) =>
      pieces
        .filter(({ plan }) => plan.name.endsWith(`${name}_lining`))
        .map((lining) => [pieceOf(result, label, name), turnedOver(lining)] as const),
    ),
  );
}

function turnedOver(piece: Piece): Piece {
  if (!piece.plan.name.startsWith('left_')) return piece;
  return { ...piece, points: piece.points.map(({ x, y }) => ({ x: 0 - x, y })) };
}

/** Where the hem of a lining ends at the center line, or at the left side of a vent. */
function hemEnd({ plan }: Piece): string {
  return plan.index.has('center_hem') ? 'center_hem' : 'vent_hem';
}

describe.each(everyResult({}))('the lining of %s', (_, result) => {
  it('is 2 cm shorter than the shell at center and side', () => {
    for (const [shell, lining] of linings(result)) {
      const { x, y } = pointOf(lining, hemEnd(lining));
      // A vent is 1 1/2 in wide, as both charts are in inches.
      expect(x).toBeCloseTo(hemEnd(lining) === 'center_hem' ? 0 : 1.5 * 25.4, 9);
      expect(y).toBeCloseTo(pointOf(shell, 'center_hem').y - 20, 9);
      expect(total(chords(lining, 'side'))).toBeCloseTo(total(chords(shell, 'side')) - 20, 4);
    }
  });

  it('has side seams that match', () => {
    const sides = linings(result).map(([, lining]) => total(chords(lining, 'side')));
    const each = sides.length / result.range.sizes.length;
    sides.forEach((side, i) =>
      expect(Math.abs(side - (sides[i - (i % each)] ?? NaN))).toBeLessThan(0.1),
    );
  });

  it('is 1/8 in wider from the hip down, square to the side, and not at the waist', () => {
    for (const [shell, lining] of linings(result)) {
      for (const name of ['side_waist', 'side_waist_handle'])
        expect(pointOf(lining, name)).toEqual(pointOf(shell, name));
      const hip = pointOf(shell, 'side_hip');
      const out = pointOf(lining, 'side_hip');
      expect(Math.hypot(out.x - hip.x, out.y - hip.y)).toBeCloseTo(3.175, 9);
      expect(out.x).toBeGreaterThan(hip.x);
      const above = bearing(pointOf(shell, 'side_hip_handle'), hip);
      expect(above - bearing(hip, out)).toBeCloseTo(90, 6);
      // Below the hip both sides run in the same direction.
      const below = (piece: Piece) =>
        bearing(pointOf(piece, straightFrom(piece)), pointOf(piece, 'side_hem'));
      expect(below(lining)).toBeCloseTo(below(shell), 6);
    }
  });

  it('has the waist of the shell, with the darts open as tucks', () => {
    for (const [shell, lining] of linings(result)) {
      expect(lining.plan.darts).toEqual([]);
      expect(total(chords(lining, 'waist'))).toBeCloseTo(total(chords(shell, 'waist')), 9);
      for (const dart of dartNames(shell)) {
        expect(apart(lining, `${dart}_inner`, `${dart}_outer`)).toBeCloseTo(
          apart(shell, `${dart}_inner`, `${dart}_outer`),
          9,
        );
        // About 2 in long (common practice, no source), along the legs of the shell's dart.
        for (const leg of [`${dart}_inner`, `${dart}_outer`]) {
          expect(apart(lining, leg, `${leg}_tuck`)).toBeCloseTo(50, 9);
          const down = bearing(pointOf(shell, leg), pointOf(shell, `${dart}_tip`));
          expect(bearing(pointOf(lining, leg), pointOf(lining, `${leg}_tuck`))).toBeCloseTo(
            down,
            9,
          );
        }
      }
      const tucks = lining.plan.marks.filter(({ name }) => name === 'tuck');
      expect(tucks).toHaveLength(2 * dartNames(shell).length);
    }
  });

  it('has a hem that is level at the center and square at the side', () => {
    for (const [shell, lining] of linings(result)) {
      const at = (name: string) => pointOf(lining, name);
      const end = hemEnd(lining);
      expect(at(`${end}_handle`).y).toBeCloseTo(at(end).y, 9);
      const down = bearing(pointOf(shell, straightFrom(shell)), pointOf(shell, 'side_hem'));
      expect(bearing(at('side_hem_handle'), at('side_hem'))).toBeCloseTo(down - 90, 6);
    }
  });

  it('has no allowance for the zip, and is cut of lining', () => {
    const plans = linings(result).map(([, { plan }]) => plan);
    const [front, ...backs] = plans.slice(0, plans.length / result.range.sizes.length);
    expect(front?.cuttings).toEqual([{ cloth: 'lining', count: 1, onFold: true }]);
    const count = backs.length === 1 ? 2 : 1;
    for (const back of backs) {
      expect(back.cuttings).toEqual([{ cloth: 'lining', count, onFold: false }]);
      expect(back.marks.some(({ name }) => name === 'zip-allowance')).toBe(false);
      expect(back.pointNames.some((name) => name.startsWith('zip_'))).toBe(false);
    }
  });

  it('is found well in every size', () => {
    const found = result.findings.filter(({ check, subject }) =>
      /lining-hip|lining side|waist and (left |right )?lining|and (left|right) lining/u.test(
        `${check} ${subject}`,
      ),
    );
    const of = (what: RegExp) => found.filter(({ check, subject }) => what.test(check + subject));
    const sizes = result.range.sizes.length;
    const pieces = linings(result).length;
    const backs = pieces / sizes - 1;
    // Room at the hips; the sides with length and hip notch, and once their upper corner; waists.
    expect(of(/lining-hip/u)).toHaveLength(pieces);
    expect(of(/lining side/u)).toHaveLength(backs * (2 * sizes + 1));
    expect(of(/waist and lining$/u)).toHaveLength(pieces);
    // A vent's own center, upper edge and side.
    expect(of(/and (left|right) lining$/u)).toHaveLength(backs === 1 ? 0 : 6 * sizes);
    expect(new Set(found.map(({ severity }) => severity))).toEqual(new Set(['ok']));
  });
});

describe('tucks', () => {
  // Government of India, CITS Dress Making: the mouth is cut with the dart folded in its direction.
  it.each([
    ['0', 'center', 'side'],
    ['1', 'side', 'center'],
  ] as const)('are pressed the other way than the darts: press_to_side %s', (press, to, other) => {
    const set = { press_to_side: press, axis_square: '0', side_rise: '3 cm' };
    const result = gradedOnce({ ...DEMO, style: 'shared-drop', set });
    for (const [shell, lining] of linings(result))
      for (const dart of shell.plan.darts) {
        const cap = (pressed: 'center' | 'side') => dartCap(shell, dart, pressed);
        const fold = pointOf(shell, `${dart.name}_fold`);
        expect(Math.hypot(fold.x - cap(to).x, fold.y - cap(to).y)).toBeLessThan(1e-6);
        const own = pointOf(lining, `${dart.name}_fold`);
        expect(Math.hypot(own.x - cap(other).x, own.y - cap(other).y)).toBeLessThan(1e-6);
        expect(Math.hypot(own.x - fold.x, own.y - fold.y)).toBeGreaterThan(0.1);
      }
  });

  it('end at the tip of a dart that is shorter', () => {
    const set = { tuck_length: '10 cm', front_darts: '1', front_dart_length: '9 cm' };
    const result = gradedOnce({ ...DEMO, style: 'shared-drop', set });
    for (const { label } of result.range.sizes) {
      const lining = pieceOf(result, label, 'front_lining');
      const tip = pointOf(pieceOf(result, label, 'front'), 'dart_tip');
      for (const name of ['dart_inner_tuck', 'dart_outer_tuck']) {
        const end = pointOf(lining, name);
        expect(Math.hypot(end.x - tip.x, end.y - tip.y)).toBeLessThan(1e-9);
      }
    }
  });
});

describe('a lining with a vent', () => {
  const set = { vent_length: '20 cm', vent_width: '4 cm', lining_shorter: '2 cm' };
  const result = gradedOnce({ ...DEMO, style: 'shared-drop', set });

  it('is a right back with the extension of the shell, and a left one without, each cut once', () => {
    for (const { label } of result.range.sizes) {
      const [shell, right, left] = ['back', 'right_back_lining', 'left_back_lining'].map((name) =>
        pieceOf(result, label, name),
      ) as [Piece, Piece, Piece];
      for (const name of ['vent_top', 'vent_top_outer'])
        expect(pointOf(right, name)).toEqual(pointOf(shell, name));
      const hem = pointOf(right, 'vent_hem');
      expect(hem.x).toBe(-40);
      expect(hem.y).toBeCloseTo(pointOf(shell, 'vent_hem').y - 20, 9);
      // As its wearer has it, the left one lies to the left of the center line.
      for (const name of ['vent_top', 'vent_top_outer', 'vent_hem'])
        expect(pointOf(left, name)).toEqual(pointOf(right, name));
      for (const name of ['center_waist', 'side_waist', 'side_hip'])
        expect(pointOf(left, name)).toEqual({
          ...pointOf(right, name),
          x: 0 - pointOf(right, name).x,
        });
      for (const { plan } of [right, left])
        expect(plan.cuttings).toEqual([{ cloth: 'lining', count: 1, onFold: false }]);
    }
  });

  it('ends with the lining where a low vent would reach below it', () => {
    for (const vent_length of ['45 mm', '10 mm']) {
      const low = gradedOnce({ ...DEMO, style: 'shared-drop', set: { ...set, vent_length } });
      for (const { label } of low.range.sizes) {
        const lowest = pointOf(pieceOf(low, label, 'right_back_lining'), 'center_hem').y;
        for (const piece of ['right_back_lining', 'left_back_lining'])
          for (const name of ['vent_top', 'vent_top_outer', 'vent_hem'])
            expect(pointOf(pieceOf(low, label, piece), name).y).toBeLessThanOrEqual(lowest);
      }
      const simple = low.findings.filter(
        ({ check, piece }) => check === 'outline-simple' && piece.endsWith('back_lining'),
      );
      expect(simple).not.toEqual([]);
      expect(new Set(simple.map(({ severity }) => severity))).toEqual(new Set(['ok']));
    }
  });

  it('is one pair of backs without a vent, and with a slit', () => {
    const names = (set: Readonly<Record<string, string>>) =>
      gradedOnce({ ...DEMO, style: 'shared-drop', set })
        .range.plans.map(({ name }) => name)
        .filter((name) => name.endsWith('back_lining'));
    expect(names({})).toEqual(['back_lining']);
    expect(names({ ...set, vent_width: '0 cm' })).toEqual(['back_lining']);
    expect(names(set)).toEqual(['right_back_lining', 'left_back_lining']);
  });
});

describe('a lining that does not fit', () => {
  const result = gradedOnce({ ...DEMO, style: 'shared-drop' });
  const each = (severity: string) => result.range.sizes.map(() => severity);

  it.each([
    [0.5, 'note'],
    [2, 'warning'],
    [4, 'fail'],
  ])('is found where its side is %d mm too long: %s', (y, severity) => {
    const range = withMoved(result.range, 'front_lining', 'side_hem', { x: 0, y });
    const found = seamFindings(result, range).filter(
      ({ check, subject }) => check === 'seam-lengths' && subject === 'lining side',
    );
    expect(found.map((finding) => finding.severity)).toEqual(each(severity));
  });

  it.each([
    [-1, 'warning'],
    [-4, 'fail'],
  ])('is found where its hip is %d mm too wide: %s', (x, severity) => {
    const range = withMoved(result.range, 'front_lining', 'side_hip', { x, y: 0 });
    const found = checkLining(range, CM).filter(({ piece }) => piece === 'front_lining');
    expect(found.map((finding) => finding.severity)).toEqual(each(severity));
  });
});

describe('which pieces are made', () => {
  const chart = chartText('cm', { waist_girth: [70, 74], hip_girth: [96, 100] }, ['S', 'M']);
  const names = (set: Readonly<Record<string, string>>): readonly string[] =>
    gradeLazily({ chart, base: 'S', style: 'shared-drop', set }).range.plans.map((p) => p.name);

  it('is chosen by waist_finish and lining', () => {
    const lining = ['front_lining', 'back_lining'];
    expect(names({})).toEqual(['front', 'back', 'waistband', ...lining]);
    expect(names({ waist_finish: '2' })).toEqual([
      ...['front', 'back', 'front_facing', 'back_facing'],
      ...lining,
    ]);
    expect(names({ waist_finish: '0', lining: '0' })).toEqual(['front', 'back']);
  });

  it.each([
    ['waist_finish', '1.5'],
    ['waist_finish', '3'],
    ['lining', '0.5'],
    ['lining', '2'],
    ['facing_depth', '2.9 cm'],
    ['band_ease', '-1 mm'],
  ])('refuses %s = %s', (name, value) => {
    expect(() => names({ [name]: value })).toThrowError(
      expect.objectContaining({ code: 'parameter-out-of-range' }),
    );
  });
});

// Every size is base plus rules: a plan that changed between sizes could not be graded.
it.each(['1', '2'])('every piece grades: base plus rules is the redraft, finish %s', (finish) => {
  for (const [, { findings, range }] of everyResult({ waist_finish: finish })) {
    for (const { draft, pieces } of draftedSizes(range))
      pieces.forEach(({ points }, p) =>
        points.forEach(({ x, y }, i) => {
          const other = draft.pieces[p]?.points[i] ?? { x: NaN, y: NaN };
          expect(Math.hypot(x - other.x, y - other.y)).toBeLessThan(0.01);
        }),
      );
    const failed = findings.filter(({ severity }) => severity === 'fail');
    expect(failed.filter(({ piece }) => !['', 'front', 'back'].includes(piece))).toEqual([]);
    expect(failed.filter(({ check }) => check === 'graded-equals-draft')).toEqual([]);
  }
});
