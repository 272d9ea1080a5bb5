import type { Point } from '../../src/geometry/point';
import type { Segment } from '../../src/geometry/segment';
import { describe, expect, it } from 'vitest';
import { checkCutLines } from '../../src/check/cut-line';
import { checkTurnUps } from '../../src/check/turn-up';
import type { Finding, GradeRequest, GradedPattern } from '../../src/index';
import type { CutPiece } from '../../src/pattern/cut-piece';
import { CHARTS, DEMO } from '../draft/shaped-pieces';
import { LONG } from '../samples';
import { STYLE_NAMES } from '../styles';
import { gradedOnce } from '../graded';

const INCHES = { unit: 'in', fractions: false } as const;
const PRESETS = ['home', 'industry'] as const;
const CHECKS = ['cut-line', 'turn-up', 'notch-to-notch'];

function found(request: Partial<GradeRequest>): readonly Finding[] {
  const { findings } = gradedOnce({ ...DEMO, ...request });
  return findings.filter(({ check }) => CHECKS.includes(check));
}

/** The demo with each of its cut pieces changed. */
function changed(change: (piece: CutPiece) => CutPiece): GradedPattern {
  const { range } = gradedOnce(DEMO);
  const sizes = range.sizes.map((size) => ({ ...size, cutPieces: size.cutPieces?.map(change) }));
  return { ...range, sizes };
}

describe('checks of the cut pattern', () => {
  it.each(STYLE_NAMES)('hold for %s in every size, whatever the corners', (style) => {
    for (const [i, corner_style] of ['0', '1', '2'].entries())
      // In passing the next corners with the next allowances.
      for (const allowances of PRESETS.filter((_, k) => LONG || k === i % PRESETS.length)) {
        const findings = found({ style, allowances, set: { corner_style } });
        expect(findings.filter(({ severity }) => severity !== 'ok')).toEqual([]);
        expect(new Set(findings.map(({ check }) => check))).toEqual(new Set(CHECKS));
      }
  });

  // On the side seam, which is nearly upright, the allowance loses what the line is moved by.
  it.each([
    [0.04, 'ok'],
    [0.06, 'fail'],
    [0.2, 'fail'],
  ])('of a cut line %d mm too near are %s', (by, severity) => {
    const range = changed((piece) => ({
      ...piece,
      cut: piece.cut.map((part) => shifted(part, -by)),
    }));
    const nearer = checkCutLines(range, INCHES).filter(({ piece }) => piece === 'front');
    expect(nearer.length).toBeGreaterThan(0);
    for (const finding of nearer) {
      expect(finding.severity).toBe(severity);
      expect((finding.expected ?? NaN) - (finding.measured ?? NaN)).toBeCloseTo(by, 1);
    }
  });

  it('fail for a cut line that lies on the sewing line, or crosses it', () => {
    const bare = checkCutLines(
      changed((piece) => ({ ...piece, cut: piece.net })),
      INCHES,
    );
    expect(bare.length).toBeGreaterThan(0);
    expect(bare.every(({ severity }) => severity === 'fail')).toBe(true);
    const moved = changed((piece) => ({
      ...piece,
      cut: piece.cut.map((part) => shifted(part, 20)),
    }));
    const aside = checkCutLines(moved, INCHES);
    expect(aside.every(({ severity }) => severity === 'fail')).toBe(true);
    expect(aside.some(({ message }) => message.includes('crosses the sewing line'))).toBe(true);
  });

  it('warn where the turn-up runs straight on below a taper', () => {
    const straight = changed((piece) => ({
      ...piece,
      corners: new Map(
        [...piece.corners].map(([name, p]) => [name, { x: p.x - 5, y: p.y }] as const),
      ),
    }));
    expect(checkTurnUps(straight, INCHES).some(({ severity }) => severity === 'warning')).toBe(
      true,
    );
  });

  it('tell where the edge beside a hem turns within its depth', () => {
    const [demo] = CHARTS;
    const findings = found({
      ...demo,
      style: 'shared-pencil',
      set: { vent_length: '4.5 cm', vent_width: '4 cm' },
    }).filter(({ check, piece }) => check === 'turn-up' && piece === 'back');
    expect(findings.every(({ severity }) => severity === 'warning')).toBe(true);
    expect(findings[0]?.message).toContain('turns within the depth of the hem');
  });

  it('note hip lines that rounding has moved apart along the side seams', () => {
    const findings = found({ style: 'shared-a-line', round: '1/8in' }).filter(
      ({ check, subject }) => check === 'notch-to-notch' && subject === 'side',
    );
    expect(findings.length).toBeGreaterThan(0);
    for (const { severity, measured = NaN, expected = NaN } of findings)
      expect(severity === 'ok').toBe(Math.abs(measured - expected) <= 0.1);
  });
});

function shifted(part: Segment, by: number): Segment {
  const moved = ({ x, y }: Point): Point => ({ x: x + by, y });
  const [from, to] = [moved(part.from), moved(part.to)];
  if (part.kind === 'line') return { ...part, from, to };
  return { ...part, from, leave: moved(part.leave), arrive: moved(part.arrive), to };
}
