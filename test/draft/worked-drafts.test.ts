/**
 * Worked drafts and grades from published pages, through the public API. Expected numbers are those
 * of the source or plain arithmetic on them; y runs down here, so a downward move is positive.
 */
import { describe, expect, test } from 'vitest';
import type { GradeRequest, SizedPattern, Piece } from '../../src/index';
import { gradeChart, measureOf, pointOf, seamLength } from '../../src/index';
import { gradeLazily } from '../graded';

const CM = 10;

interface Body {
  readonly waist: number;
  readonly hip: number;
  readonly depth: number;
  readonly length: number;
}

/** A chart in cm whose sizes are named by their distance from the base: -2 ... +8. */
function chart(from: number, to: number, body: (step: number) => Body): string {
  const steps = Array.from({ length: to - from + 1 }, (_, i) => from + i);
  const row = (name: string, of: (b: Body) => number): string =>
    [name, ...steps.map((step) => of(body(step)).toFixed(4))].join(',');
  return [
    '# unit: cm',
    ['measurement', ...steps.map((step) => `s${step}`)].join(','),
    row('waist_girth', (b) => b.waist),
    row('hip_girth', (b) => b.hip),
    row('waist_to_hip', (b) => b.depth),
    row('skirt_length', (b) => b.length),
  ].join('\n');
}

function grade(request: Omit<GradeRequest, 'base'>) {
  const result = gradeLazily({ ...request, base: 's0' });
  const size = (step: number): SizedPattern => {
    const found = result.range.sizes.find(({ label }) => label === `s${step}`);
    if (found === undefined) throw new Error(`no size s${step}`);
    return found;
  };
  const piece = (step: number, name: string): Piece => {
    const found = size(step).pieces.find(({ plan }) => plan.name === name);
    if (found === undefined) throw new Error(`no piece ${name}`);
    return found;
  };
  const x = (step: number, name: string, point: string): number =>
    pointOf(piece(step, name), point).x / CM;
  const y = (step: number, name: string, point: string): number =>
    pointOf(piece(step, name), point).y / CM;
  const dartX = (step: number, name: string, dart: string): number =>
    (x(step, name, `${dart}_inner`) + x(step, name, `${dart}_outer`)) / 2;
  const measure = (step: number, name: string): number => measureOf(size(step), name) / CM;
  const parameter = (step: number, name: string): number =>
    (size(step).parameters.get(name) ?? NaN) / CM;
  const sewn = (step: number, name: string): number => seamLength(piece(step, name), 'waist') / CM;
  const fails = result.findings.filter(({ severity }) => severity === 'fail');
  return { result, x, y, dartX, measure, parameter, sewn, fails, piece };
}

describe('shared-drop draft of abc-style.org (straight skirt)', () => {
  // Input H 96, W 70, D 18, L 60, ease 0; back hip H/4 - 1, front hip H/4 + 1; side half of the
  // difference, back dart 0.3, front dart 0.2; center back down 1.0, center front down 1.5.
  const draft = grade({
    chart: chart(0, 1, (s) => ({ waist: 70 + 4 * s, hip: 96 + 4 * s, depth: 18, length: 60 })),
    style: 'shared-drop',
    set: {
      waist_ease: '0',
      band_ease: '0',
      hip_ease: '0',
      side_shift: '-1 cm',
      side_rise: '0',
      center_front_drop: '1.5 cm',
      center_back_drop: '1 cm',
      front_darts: '1',
      back_darts: '1',
      front_dart_length: '8 cm',
      back_dart_length: '13 cm',
    },
  });

  test('widths, darts and side', () => {
    expect(draft.x(0, 'back', 'side_hip')).toBeCloseTo(23, 9);
    expect(draft.x(0, 'front', 'side_hip')).toBeCloseTo(25, 9);
    expect(draft.measure(0, 'back_dart_intake')).toBeCloseTo(3.9, 9);
    expect(draft.measure(0, 'front_dart_intake')).toBeCloseTo(2.6, 9);
    expect(draft.parameter(0, 'back_side_take_up')).toBeCloseTo(3.25, 9);
    expect(draft.parameter(0, 'front_side_take_up')).toBeCloseTo(3.25, 9);
  });

  test('finished half waist 15.85 + 19.15 = 35.0 = W/2', () => {
    expect(draft.sewn(0, 'back')).toBeCloseTo(15.85, 4);
    expect(draft.sewn(0, 'front')).toBeCloseTo(19.15, 4);
    expect(draft.measure(0, 'skirt_waist_edge')).toBeCloseTo(70, 4);
    expect(draft.fails).toEqual([]);
  });
});

describe('rounding trap of patternstudio101.com (dart width)', () => {
  // Garment H 37 in, W 29 in: 13 % side a panel, 8 % front dart, 16 % back dart of the 8 in.
  const body = 'measurement,a,s0\nwaist_girth,28,29\nhip_girth,36,37\n';
  const request = {
    chart: `# unit: in\n${body}`,
    style: 'shared-drop',
    base: 's0',
  };
  const plain = {
    waist_ease: '0',
    band_ease: '0',
    hip_ease: '0',
    front_darts: '1',
    back_darts: '1',
  };

  test('exact percentages give the waist', () => {
    const { range } = gradeLazily({
      ...request,
      set: { ...plain, side_share: '0.52', back_dart_share: '0.32', front_dart_share: '0.16' },
    });
    const size = range.sizes[1];
    if (size === undefined) throw new Error('no size');
    const inches = (name: string): number => measureOf(size, name) / 25.4;
    expect(inches('front_dart_intake')).toBeCloseTo(0.64, 9);
    expect(inches('back_dart_intake')).toBeCloseTo(1.28, 9);
    expect(size.parameters.get('front_side_take_up')).toBeCloseTo(1.04 * 25.4, 9);
    expect(inches('skirt_waist_edge')).toBeCloseTo(29, 4);
  });

  test('the rounded values of the page take out only 7 3/4: the waist is 29 1/4, and that fails', () => {
    const { range, findings } = gradeChart({
      ...request,
      set: {
        ...plain,
        front_side_take_up: '1 in',
        back_side_take_up: '1 in',
        front_intake: '5/8 in',
        back_intake: '1 1/4 in',
      },
    });
    const size = range.sizes[1];
    if (size === undefined) throw new Error('no size');
    expect(measureOf(size, 'skirt_waist_edge') / 25.4).toBeCloseTo(29.25, 4);
    expect(
      findings.some(
        (f) => f.severity === 'fail' && f.check === 'finished-girth' && f.size === 's0',
      ),
    ).toBe(true);
  });
});

/** Base of the metric draft: project-patterns.co.uk, corsetmaking.blogspot.com. */
const METRIC: Body = { waist: 70, hip: 96, depth: 20.5, length: 60 };

/**
 * A flat arc by its chord c and its rise f: c + 8/3 f^2/c, from memory of engineers' handbooks. The
 * bulge of a hip curve over a take-up t and a height h is a quarter of t, measured level (the
 * engine's own rule; the published draft says only "curve").
 */
function flatArc(t: number, h: number): number {
  const chord = Math.hypot(t, h);
  const rise = ((t / 4) * h) / chord;
  return chord + (8 * rise * rise) / (3 * chord);
}

describe('metric draft with fixed darts (project-patterns.co.uk, corsetmaking.blogspot.com)', () => {
  const draft = grade({
    chart: chart(0, 1, (s) => ({ ...METRIC, waist: 70 + 4 * s, hip: 96 + 4 * s })),
    style: 'fixed-dart',
    set: { band_ease: '0' },
  });

  test('half block 49.5: back 25.5, front 24.0; darts at the thirds', () => {
    expect(draft.x(0, 'back', 'side_hip')).toBeCloseTo(25.5, 9);
    expect(draft.x(0, 'front', 'side_hip')).toBeCloseTo(24, 9);
    expect(draft.dartX(0, 'back', 'inner_dart')).toBeCloseTo(7.25, 9);
    expect(draft.dartX(0, 'back', 'outer_dart')).toBeCloseTo(14.5, 9);
    // The front dart stands a third in from the side (from memory).
    expect(draft.dartX(0, 'front', 'dart')).toBeCloseTo((19.75 * 2) / 3, 9);
    expect(draft.parameter(0, 'back_side_take_up')).toBeCloseTo(3.75, 9);
    expect(draft.parameter(0, 'front_side_take_up')).toBeCloseTo(4.25, 9);
  });

  test('sewn waist 71.0, though the sloping edges of the plan measure more', () => {
    // Straight edges along the slopes: 71.15 by arithmetic on the published points.
    const slope = (x: number, rise: number): number => Math.hypot(x, rise);
    const plain = 2 * (slope(21.75, 1.25) - 4 + slope(19.75, 1.25) - 2);
    expect(plain).toBeCloseTo(71.15, 2);
    expect(draft.measure(0, 'skirt_waist_edge')).toBeCloseTo(71, 4);
    const moved = draft.result.range.draft.sizes[0]?.trued.map(({ moved: mm }) => mm / CM) ?? [];
    expect(moved[0]).toBeGreaterThan(0);
    expect(moved[1]).toBeGreaterThan(0);
    expect((moved[0] ?? NaN) + (moved[1] ?? NaN)).toBeLessThan(0.4);
  });

  test('side seams 22.17 and 22.29 before truing, equal after it', () => {
    expect(flatArc(3.75, 21.75)).toBeCloseTo(22.17, 2);
    expect(flatArc(4.25, 21.75)).toBeCloseTo(22.29, 2);
    // The engine's own curves, from the places of their ends; 39.5 straight down from hip to hem.
    for (const name of ['front', 'back']) {
      const takenIn = draft.x(0, name, 'side_hip') - draft.x(0, name, 'side_waist');
      const height = draft.y(0, name, 'side_hip') - draft.y(0, name, 'side_waist');
      const side = draft.measure(0, `side_seam_${name}`);
      expect(side - 39.5).toBeCloseTo(flatArc(takenIn, height), 2);
    }
    const rise = draft.result.range.draft.sizes[0]?.trued[2]?.moved ?? NaN;
    expect(rise).toBeGreaterThan(0.8);
    expect(rise).toBeLessThan(1.8);
    expect(draft.measure(0, 'side_seam_front')).toBeCloseTo(draft.measure(0, 'side_seam_back'), 4);
  });
});

describe('graded equals redrafted: W +4, H +4, D +0.3, L +1 (arithmetic on the metric draft)', () => {
  const body = (s: number): Body => ({
    waist: 70 + 4 * s,
    hip: 96 + 4 * s,
    depth: 20.5 + 0.3 * s,
    length: 60 + s,
  });
  const draft = grade({ chart: chart(-2, 4, body), style: 'fixed-dart', set: { band_ease: '0' } });

  test('rules of one size', () => {
    const step = (name: string, point: string): [number, number] => [
      draft.x(1, name, point) - draft.x(0, name, point),
      draft.y(1, name, point) - draft.y(0, name, point),
    ];
    expect(draft.dartX(1, 'back', 'inner_dart') - 7.25).toBeCloseTo(1 / 3, 9);
    expect(draft.dartX(1, 'back', 'outer_dart') - 14.5).toBeCloseTo(2 / 3, 9);
    expect(step('front', 'dart_tip')[0]).toBeCloseTo(2 / 3, 9);
    expect(step('front', 'side_hip')[0]).toBeCloseTo(1, 9);
    expect(step('front', 'side_hip')[1]).toBeCloseTo(0.3, 9);
    expect(step('back', 'side_hem')[1]).toBeCloseTo(1, 9);
    // The side point at the waist is trued, so it keeps within a tenth of a millimeter of the plan.
    expect(Math.abs(step('front', 'side_waist')[0] - 1)).toBeLessThan(0.01);
    expect(Math.abs(step('back', 'side_waist')[0] - 1)).toBeLessThan(0.01);
  });

  test('the half rule moves the front dart by 0.5 instead', () => {
    const half = grade({
      chart: chart(0, 1, body),
      style: 'fixed-dart',
      set: { band_ease: '0', half_rule: '1' },
    });
    expect(half.dartX(0, 'front', 'dart')).toBeCloseTo((19.75 * 2) / 3, 9);
    expect(half.dartX(1, 'front', 'dart') - half.dartX(0, 'front', 'dart')).toBeCloseTo(0.5, 9);
  });

  test('absolute places four sizes up', () => {
    expect(draft.x(4, 'back', 'side_hip')).toBeCloseTo(29.5, 9);
    expect(draft.x(4, 'front', 'side_hip')).toBeCloseTo(28, 9);
    expect(draft.dartX(4, 'back', 'inner_dart')).toBeCloseTo(25.75 / 3, 9);
    expect(draft.dartX(4, 'back', 'outer_dart')).toBeCloseTo((25.75 * 2) / 3, 9);
    expect(draft.dartX(4, 'front', 'dart')).toBeCloseTo((23.75 * 2) / 3, 9);
    expect(draft.y(4, 'front', 'center_hip')).toBeCloseTo(21.7, 9);
    expect(draft.y(4, 'front', 'center_hem')).toBeCloseTo(64, 9);
    expect(draft.measure(4, 'waist')).toBeCloseTo(87, 3);
    expect(draft.measure(4, 'hip')).toBeCloseTo(115, 6);
    expect(draft.measure(-2, 'waist')).toBeCloseTo(63, 3);
    expect(draft.measure(-2, 'hip')).toBeCloseTo(91, 6);
    expect(draft.fails).toEqual([]);
  });
});

describe('waist grows faster than hip (steps of comocubriruncuerpo.org: W +4, H +3)', () => {
  const body = (s: number): Body => ({ ...METRIC, waist: 70 + 4 * s, hip: 96 + 3 * s });

  test('fixed darts: the side gives a quarter of a centimeter a panel and size', () => {
    const draft = grade({ chart: chart(0, 8, body), style: 'fixed-dart', set: { band_ease: '0' } });
    const perPanel = (s: number): number =>
      (draft.parameter(s, 'front_side_take_up') + draft.parameter(s, 'back_side_take_up')) / 2;
    for (let s = 0; s <= 8; s++) expect(perPanel(s)).toBeCloseTo(4 - 0.25 * s, 9);
    expect(draft.x(1, 'front', 'side_hip') - draft.x(0, 'front', 'side_hip')).toBeCloseTo(0.75, 9);
    expect(
      Math.abs(draft.x(1, 'front', 'side_waist') - draft.x(0, 'front', 'side_waist') - 1),
    ).toBeLessThan(0.01);
    expect(draft.measure(8, 'front_dart_intake')).toBeCloseTo(2, 9);
  });

  test('shared drop: every part shrinks in its share, and the waist still grows by 2 a half', () => {
    const draft = grade({
      chart: chart(0, 8, body),
      style: 'shared-drop',
      set: {
        waist_ease: '1 cm',
        band_ease: '0',
        hip_ease: '3 cm',
        front_darts: '1',
        back_darts: '1',
      },
    });
    for (const [s, side, back, front] of [
      [0, 3.5, 4.2, 2.8],
      [8, 2.5, 3, 2],
    ] as const) {
      expect(draft.parameter(s, 'front_side_take_up')).toBeCloseTo(side, 9);
      expect(draft.parameter(s, 'back_side_take_up')).toBeCloseTo(side, 9);
      expect(draft.measure(s, 'back_dart_intake')).toBeCloseTo(back, 9);
      expect(draft.measure(s, 'front_dart_intake')).toBeCloseTo(front, 9);
    }
    expect(draft.sewn(1, 'back') - draft.sewn(0, 'back')).toBeCloseTo(1.025, 4);
    expect(draft.sewn(1, 'front') - draft.sewn(0, 'front')).toBeCloseTo(0.975, 4);
    expect(
      Math.abs(draft.x(1, 'back', 'side_waist') - draft.x(0, 'back', 'side_waist') - 0.875),
    ).toBeLessThan(0.01);
    expect(draft.fails).toEqual([]);
  });
});

describe('5 cm step, length nil (makingfashion.blogspot.com (2008-06), college rule sheet)', () => {
  // Waist 5.0 and length 0 are the sheet's; hip 5 is assumed; dart half rule common practice.
  const body = (s: number): Body => ({ waist: 70 + 5 * s, hip: 96 + 5 * s, depth: 20, length: 60 });

  test('quarter method: side 1.25, dart 0.625, nothing down, dart as it was', () => {
    const draft = grade({ chart: chart(-1, 3, body), style: 'pencil' });
    for (const name of ['front', 'back']) {
      for (let s = -1; s <= 3; s++) {
        const move = (point: string): [number, number] => [
          draft.x(s, name, point) - draft.x(0, name, point),
          draft.y(s, name, point) - draft.y(0, name, point),
        ];
        for (const point of ['side_waist', 'side_hip', 'side_hem'])
          expect(move(point)[0]).toBeCloseTo(1.25 * s, 9);
        for (const point of ['dart_inner', 'dart_tip', 'dart_outer'])
          expect(move(point)[0]).toBeCloseTo(0.625 * s, 9);
        for (const point of ['side_waist', 'side_hip', 'side_hem', 'dart_tip', 'center_hem'])
          expect(move(point)[1]).toBeCloseTo(0, 9);
        expect(draft.measure(s, `${name}_dart_intake`)).toBeCloseTo(2.5, 9);
      }
    }
  });
});

describe('dart legs with a vertical axis on a rising waist', () => {
  test('13.978 and 14.093 on the plan; equal within 0.1 mm as drafted, in every size', () => {
    // Arithmetic: 2 cm dart, waist rising 1.25 over 21.75, axis vertical and 14 long.
    const slope = 1.25 / 21.75;
    expect(Math.hypot(1, 14 - slope)).toBeCloseTo(13.978, 3);
    expect(Math.hypot(1, 14 + slope)).toBeCloseTo(14.093, 3);
    const draft = grade({
      chart: chart(-2, 4, (s) => ({ ...METRIC, waist: 70 + 4 * s, hip: 96 + 4 * s })),
      style: 'fixed-dart',
      set: { axis_square: '0', band_ease: '0' },
    });
    for (let s = -2; s <= 4; s++) {
      const inner = draft.measure(s, 'back_inner_dart_inner_leg');
      const outer = draft.measure(s, 'back_inner_dart_outer_leg');
      expect(Math.abs(inner - outer)).toBeLessThan(0.01);
      expect(draft.x(s, 'back', 'inner_dart_tip')).toBeCloseTo(
        draft.dartX(s, 'back', 'inner_dart'),
        9,
      );
    }
  });
});
