import { describe, expect, it } from 'vitest';
import { checkGradedEqualsDraft } from '../../src/check/graded-equals-draft';
import { checkOutlineSimple } from '../../src/check/outline-simple';
import { gradeChart } from '../../src/index';
import type { Finding, GradeRequest, DraftedPattern } from '../../src/index';
import { seamFindings, withMoved } from '../seam-findings';
import { chartText } from '../skirts';

const INCHES = { unit: 'in', fractions: false } as const;

const CHART = chartText('in', { waist_girth: [24, 28], hip_girth: [36, 38] }, ['S', 'L']);

function found(check: string, request: Partial<GradeRequest> = {}): readonly Finding[] {
  const { findings } = gradeChart({ style: 'pencil', chart: CHART, base: 'S', ...request });
  return findings.filter((finding) => finding.check === check);
}

const METRIC = chartText('cm', { waist_girth: [62, 66], hip_girth: [92, 96] }, ['S', 'L']);

const inInches = (mm: number | undefined) => (mm ?? NaN) / 25.4;

describe('darts', () => {
  it('that are well are said to be so, once a piece and size', () => {
    const ok = found('darts');
    expect(ok.map(({ size, piece, severity }) => `${size} ${piece} ${severity}`)).toEqual([
      ...['S front ok', 'S back ok', 'L front ok', 'L back ok'],
    ]);
  });

  // Under 1 cm (3/8 in) or over 3.5 cm (1 3/8 in): common practice, no source.
  it.each([
    ['9.5 mm', 9.5, 9.525],
    ['35.1 mm', 35.1, 35],
  ])('of %s are warned of in every size', (intake, measured, expected) => {
    const warned = found('dart-intake', { set: { front_dart_intake: intake } });
    expect(warned.map(({ size, piece, severity }) => [size, piece, severity])).toEqual([
      ['S', 'front', 'warning'],
      ['L', 'front', 'warning'],
    ]);
    for (const finding of warned) {
      expect(finding.measured).toBeCloseTo(measured, 9);
      expect(finding.expected).toBe(expected);
      expect(finding.source).toBe('common practice, no source');
    }
  });

  it.each(['1 cm', '3/8 in', '3.5 cm', '1 3/8 in'])('of %s are not', (front_dart_intake) => {
    expect(found('dart-intake', { set: { front_dart_intake } })).toEqual([]);
  });

  it('of a style with a limit of its own are held against that limit, and told once', () => {
    const told = (set: Readonly<Record<string, string>>) =>
      gradeChart({ chart: METRIC, base: 'S', style: 'shared-pencil', set }).findings.filter(
        ({ check, severity }) => /^dart-(intake|number)$/u.test(check) && severity !== 'ok',
      );
    // Above 3.5 cm, and within the 4 cm that a single back dart may have by the style.
    expect(told({ back_intake: '3.9 cm' })).toEqual([]);
    expect(told({ back_darts: '1', back_intake: '4.5 cm' }).map(({ check }) => check)).toEqual([
      'dart-number',
    ]);
    for (const { facts, expected } of told({ back_intake: '9 cm' }))
      expect({ facts, expected }).toEqual({
        facts: { setting: 'set a smaller back_intake, and the side takes in more for it' },
        expected: 40,
      });
  });

  it('that reach the hip line fail, and name the size', () => {
    const chart = chartText(
      'in',
      { waist_girth: [24, 28], hip_girth: [36, 38], waist_to_hip: [7, 8] },
      ['S', 'L'],
    );
    const deep = found('dart-above-hip', { chart, set: { back_dart_length: '7 in' } });
    expect(deep.map(({ size, piece, severity }) => [size, piece, severity])).toEqual([
      ['S', 'back', 'fail'],
    ]);
    expect(inInches(deep[0]?.measured)).toBeCloseTo(7, 9);
    expect(inInches(deep[0]?.expected)).toBeCloseTo(7, 9);
    expect(found('dart-above-hip', { chart, set: { back_dart_length: '6.9 in' } })).toEqual([]);
  });

  it('without waist edge between them fail', () => {
    // Two darts that stand on the same place of the waist edge leave nothing between them.
    const touching = found('darts-apart', {
      style: 'fixed-dart',
      set: {
        ...{ front_darts: '2', front_inner_dart_position: '1/2' },
        ...{ front_outer_dart_position: '1/2' },
      },
    });
    expect(touching.map(({ size, piece, severity }) => [size, piece, severity])).toEqual([
      ['S', 'front', 'fail'],
      ['L', 'front', 'fail'],
    ]);
  });
});

describe('the side', () => {
  it('that leans outward fails in the sizes where it does', () => {
    // Front and back: (36 + 2)/4 - (34/4 + 1) = 0 in, and (38 + 2)/4 - (37/4 + 1) = -1/4 in.
    const chart = chartText('in', { waist_girth: [34, 37], hip_girth: [36, 38] }, ['S', 'L']);
    const sides = found('side-take-up', { chart });
    expect(
      sides.map(({ size, piece, severity, measured }) => [
        ...[size, piece, severity],
        Math.round(inInches(measured) * 1e6) / 1e6 + 0,
      ]),
    ).toEqual([
      ['L', 'front', 'fail', -0.25],
      ['L', 'back', 'fail', -0.25],
      ['S', 'front', 'ok', 0],
      ['S', 'back', 'ok', 0],
    ]);
  });

  it('of a hip smaller than the waist fails', () => {
    const chart = chartText('in', { waist_girth: [40, 42], hip_girth: [38, 40] }, ['S', 'L']);
    expect(new Set(found('side-take-up', { chart }).map(({ severity }) => severity))).toEqual(
      new Set(['fail']),
    );
  });
});

describe('finished girths', () => {
  it('meet body plus ease in every size', () => {
    const girths = found('finished-girth', { set: { waist_ease: '1 in' } });
    expect(
      girths.map(({ size, subject, severity, expected }) => [
        size,
        subject,
        severity,
        Math.round(inInches(expected) * 1e6) / 1e6,
      ]),
    ).toEqual([
      ['S', 'waist', 'ok', 25],
      ['S', 'hip', 'ok', 38],
      ['L', 'waist', 'ok', 29],
      ['L', 'hip', 'ok', 40],
    ]);
  });

  it('do not, where the hem lies above the hip', () => {
    const set = { skirt_length: '8 in', waist_to_hip: '9 in' };
    expect(found('finished-girth', { set }).some(({ severity }) => severity === 'fail')).toBe(true);
  });
});

/** The range with one point of one graded piece moved. */
function tampered(size: string, piece: string, point: string, by: number): DraftedPattern {
  const { range } = gradeChart({ style: 'pencil', chart: CHART, base: 'S' });
  return {
    ...range,
    sizes: range.sizes.map((graded) => ({
      ...graded,
      pieces: graded.pieces.map((one) => ({
        plan: one.plan,
        points: one.points.map(({ x, y }, i) =>
          graded.label === size && one.plan.name === piece && one.plan.pointNames[i] === point
            ? { x: x + by, y }
            : { x, y },
        ),
      })),
    })),
  };
}

describe('a graded pattern that is not its redraft', () => {
  it.each([
    ['side_hip', 0.0101],
    ['dart_tip', 0.02],
    ['zip_hem', -3],
    ['side_waist_handle', 0.02],
  ])('is found by its %s, %d mm off', (point, by) => {
    const [small, large] = checkGradedEqualsDraft(tampered('L', 'back', point, by), INCHES);
    expect(small?.severity).toBe('ok');
    expect(large).toMatchObject({ severity: 'fail', size: 'L', piece: 'back', subject: point });
    expect(large?.measured).toBeCloseTo(Math.abs(by), 9);
  });

  it('may be a hundredth of a millimeter off', () => {
    for (const { severity } of checkGradedEqualsDraft(
      tampered('L', 'front', 'side_hip', 0.0099),
      INCHES,
    ))
      expect(severity).toBe('ok');
  });
});

describe('side seams of front and back', () => {
  it.each([
    [0.09, 'ok'],
    [0.9, 'note'],
    [2.9, 'warning'],
    [3.1, 'fail'],
  ])('%d mm apart are %s', (apart, severity) => {
    // A straight side runs straight down, so that its seam grows by as much as its hem sinks.
    const result = gradeChart({
      style: 'pencil',
      chart: CHART,
      base: 'S',
      set: { hem_taper: '0 in' },
    });
    const longer = withMoved(result.range, 'back', 'side_hem', { x: 0, y: apart });
    const sides = seamFindings(result, longer).filter(
      ({ check, subject }) => check === 'seam-lengths' && subject === 'side',
    );
    expect(sides.map((finding) => finding.severity)).toEqual([severity, severity]);
  });
});

describe('an outline that crosses itself', () => {
  it('is found with the seams that cross', () => {
    const [front, ...others] = checkOutlineSimple(tampered('S', 'front', 'dart_tip', 400));
    expect(front).toMatchObject({ severity: 'fail', size: 'S', piece: 'front' });
    expect(front?.subject).toContain('side');
    for (const { severity } of others) expect(severity).toBe('ok');
  });
});

describe('the note on rounding', () => {
  it('is there only where the rules are rounded', () => {
    expect(found('rounding')).toEqual([]);
    expect(
      found('rounding', { round: '1/8in' })
        .map(({ size, subject }) => [size, subject])
        .toSorted(([a = '', b = ''], [c = '', d = '']) =>
          a === c ? (b < d ? 1 : -1) : a < c ? 1 : -1,
        ),
    ).toEqual([
      ['S', 'waist'],
      ['S', 'hip'],
      ['L', 'waist'],
      ['L', 'hip'],
    ]);
  });
});
