import { describe, expect, it } from 'vitest';
import { checkCutLine } from '../../src/check/cut-line';
import { checkTurnUp } from '../../src/check/turn-up';
import type { Finding, GradedSize, GradeRequest } from '../../src/index';
import type { CutPiece } from '../../src/pattern/cut-piece';
import { CHARTS, DEMO } from '../draft/shaped-pieces';
import { cutOf } from '../pattern/cut-of';
import { STYLE_NAMES } from '../styles';
import { gradedOnce } from '../graded';

const INCHES = { unit: 'in', fractions: false } as const;
const CHECKS = ['cut-line', 'turn-up', 'notches-match'];

function found(request: Partial<GradeRequest>): readonly Finding[] {
  const { findings } = gradedOnce({ ...DEMO, ...request });
  return findings.filter(({ check }) => CHECKS.includes(check));
}

/** What a check says of every cut piece of every size, each piece changed before. */
function foundOn(
  change: (piece: CutPiece) => CutPiece,
  check: (piece: CutPiece, size: GradedSize) => Finding | undefined,
): readonly Finding[] {
  const { range } = gradedOnce(DEMO);
  return range.sizes.flatMap((size) =>
    cutOf(size).flatMap((piece) => check(change(piece), size) ?? []),
  );
}

describe('checks of the cut pattern', () => {
  it.each(STYLE_NAMES)('hold for %s in every size, whatever the corners', (style) => {
    for (const corner_style of ['0', '1', '2'])
      for (const allowances of ['home', 'industry'] as const) {
        const findings = found({ style, allowances, set: { corner_style } });
        expect(findings.filter(({ severity }) => severity !== 'ok')).toEqual([]);
        expect(new Set(findings.map(({ check }) => check))).toEqual(new Set(CHECKS));
      }
  });

  it('fail for a cut line that lies on the sewing line, or crosses it', () => {
    const check = (piece: CutPiece, { parameters, label }: GradedSize): Finding =>
      checkCutLine(piece, parameters, label, INCHES);
    const bare = foundOn((piece) => ({ ...piece, cut: piece.net }), check);
    expect(bare.every(({ severity }) => severity === 'fail')).toBe(true);
    const aside = foundOn(
      (piece) => ({
        ...piece,
        cut: piece.cut.map((part) =>
          part.kind === 'line'
            ? { ...part, from: moved(part.from), to: moved(part.to) }
            : {
                kind: 'cubic',
                from: moved(part.from),
                leave: moved(part.leave),
                arrive: moved(part.arrive),
                to: moved(part.to),
              },
        ),
      }),
      check,
    );
    expect(aside.every(({ severity }) => severity === 'fail')).toBe(true);
    expect(aside.some(({ message }) => message.includes('crosses the sewing line'))).toBe(true);
  });

  it('warn where the turn-up runs straight on below a taper', () => {
    const straight = foundOn(
      (piece) => ({
        ...piece,
        corners: new Map(
          [...piece.corners].map(([name, p]) => [name, { x: p.x - 5, y: p.y }] as const),
        ),
      }),
      (piece, { label }) => checkTurnUp(piece, label, INCHES),
    );
    expect(straight.some(({ severity }) => severity === 'warning')).toBe(true);
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
      ({ check }) => check === 'notches-match',
    );
    for (const { severity, measured = NaN, expected = NaN } of findings)
      expect(severity === 'ok').toBe(Math.abs(measured - expected) <= 0.1);
  });
});

function moved({ x, y }: { readonly x: number; readonly y: number }) {
  return { x: x + 20, y };
}
