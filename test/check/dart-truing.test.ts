/** Darts whose points are moved by known lengths; the angles are those of right triangles. */
import { describe, expect, it } from 'vitest';
import { checkDartTruing } from '../../src/check/dart-truing';
import type { GradedPattern } from '../../src/index';
import { FRONT, graded } from '../given/sheets';
import { chartText } from '../skirts';
import { gradeLazily } from '../graded';

const MM = { unit: 'mm', fractions: false } as const;
const CHART = chartText('in', { waist_girth: [24, 28], hip_girth: [36, 38] }, ['S', 'L']);
/** mm from the waist to the tip of the front dart of the quarter method: 4 in. */
const DEPTH = 101.6;

const degrees = (radians: number): number => (radians * 180) / Math.PI;

function range(set: Readonly<Record<string, string>> = {}): GradedPattern {
  return gradeLazily({ chart: CHART, base: 'S', style: 'pencil', set }).range;
}

function frontOf(graded: GradedPattern, check: string, size: string) {
  const found = checkDartTruing(graded, MM).filter(
    (finding) => finding.check === check && finding.piece === 'front' && finding.size === size,
  );
  expect(found).toHaveLength(1);
  return found[0];
}

describe('the axis of a dart', () => {
  /** The tip of the front dart of the large size moved to the side. */
  function leaning(by: number): GradedPattern {
    const graded = range();
    return {
      ...graded,
      sizes: graded.sizes.map((size) => ({
        ...size,
        pieces: size.pieces.map((piece) => ({
          ...piece,
          points: piece.points.map((p, i) => {
            const isTip = piece.plan.name === 'front' && piece.plan.pointNames[i] === 'dart_tip';
            return isTip && size.label === 'L' ? { ...p, x: p.x + by } : p;
          }),
        })),
      })),
    };
  }

  // It stands square to the waist in the base, so it leans by the angle of its tip.
  it.each([
    [0.8, 'ok'],
    [1, 'warning'],
    [-1, 'warning'],
    [8, 'warning'],
  ])('with its tip moved %d mm aside is %s', (by, severity) => {
    const finding = frontOf(leaning(by), 'dart-axis', 'L');
    expect(finding?.measured).toBeCloseTo(degrees(Math.atan(Math.abs(by) / DEPTH)), 6);
    expect(finding?.severity).toBe(severity);
    expect(frontOf(leaning(by), 'dart-axis', 'S')?.severity).toBe('ok');
  });
});

describe('the waist over a closed dart', () => {
  // A level waist turns by twice the angle between axis and leg when the dart is closed.
  it.each([
    [1.7, 'ok'],
    [1.8, 'warning'],
    [8, 'warning'],
  ])('turns by the angle of a dart of %d mm: %s', (intake, severity) => {
    const turn = 2 * degrees(Math.atan(intake / 2 / DEPTH));
    const finding = frontOf(range({ front_dart_intake: `${intake} mm` }), 'edge-over-dart', 'L');
    expect(Math.abs((finding?.measured ?? NaN) - 180)).toBeCloseTo(turn, 6);
    expect(finding?.severity).toBe(severity);
  });

  const STILL = 'piece,point,step_dx,step_dy\nfront,center_waist,0,0\nfront,center_hem,0,1\n';
  /** The closed edges of the base size of a typed pattern: the turn in degrees, and the edge. */
  const typed = (pattern: string) =>
    graded(pattern, `# unit: in\n# sizes: 10,12,14\n${STILL}`)
      .findings.filter(({ check, size }) => check === 'edge-over-dart' && size === '12')
      .map(({ severity, measured = NaN, message }) => ({ severity, measured, message }));

  it('is told of a pattern that was typed, on whatever edge', () => {
    const turn = 2 * degrees(Math.atan(1 / 2 / 4));
    const [straight] = typed(FRONT);
    expect(straight?.severity).toBe('warning');
    expect(straight?.measured).toBeCloseTo(180 + turn, 6);
    const [side] = typed(FRONT.replace('corner,waist,', 'corner,shoulder,'));
    expect(side?.message).toContain('the edge shoulder turns by 14.3 degrees');
  });

  it('runs on where both halves of the edge are square to the legs', () => {
    // The leg from (3, 0) to (3.5, 4) is square to (-8, 1); the other is its mirror image.
    const trued = FRONT.replace('center_waist,0,0', 'center_waist,0,0.375').replace(
      'side_waist,7.5,0',
      'side_waist,8,0.5',
    );
    expect(typed(trued)).toMatchObject([{ severity: 'ok' }]);
  });

  it('is not asked for between two edges', () => {
    expect(typed(FRONT.replace('dart_out,4,0,,,', 'dart_out,4,0,corner,yoke,'))).toEqual([]);
  });
});
