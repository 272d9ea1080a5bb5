/** Notches of drawings that are no vertex of a line, graded by the intercept theorem. */
import { describe, expect, it } from 'vitest';
import { pointOf } from '../../src/pattern/piece';
import { MILLIMETERS, drawing, polyline, read, spot, told, words } from './foreign';

/** Half a skirt whose side runs from (180, 0) down to (225, 600); its upper end moves by (50, 0). */
const PANEL = [
  [0, 0],
  [180, 0],
  [225, -600],
  [0, -600],
] as const;
const WAIST_MOVES = `GRADE RULE TABLE: t
UNITS: METRIC
NUMBER OF SIZES: 3
SIZE LIST: 38 40 42
SAMPLE SIZE: 40
RULE: DELTA 1
0, 0
0, 0
0, 0
RULE: DELTA 2
-50, 0
0, 0
50, 0
END
`;
const ruled = (corners: readonly (readonly [number, number])[]): string =>
  corners.map((at, i) => words('2', at, `# ${i === 1 ? 2 : 1}`)).join('');

function panel(inside: string) {
  const block = polyline('1', PANEL) + ruled(PANEL) + inside;
  return read(drawing({ header: MILLIMETERS, blocks: { FRONT: block } }), WAIST_MOVES);
}

const placesOf = (result: ReturnType<typeof panel>, name: string) =>
  result.range.sizes.map(({ pieces: [piece] }) => piece && pointOf(piece, name));

describe('a notch without a rule', () => {
  it('stays on its edge and moves by its share of the way', () => {
    const result = panel(spot('4', [195, -200]));
    // A third of the way down the side two thirds of the waist's move are left.
    const [small, sample, large] = placesOf(result, 'cut_notch_1');
    expect(sample).toEqual({ x: 195, y: 200 });
    expect(small?.x).toBeCloseTo(195 - (50 * 2) / 3, 9);
    expect(large?.x).toBeCloseTo(195 + (50 * 2) / 3, 9);
    expect([small?.y, large?.y]).toEqual([200, 200]);
    expect(told(result, 'notch-beside')).toEqual([]);
    expect(told(result, 'point-unruled')).toEqual([
      'note: the point has no rule and moves between corner_2 and corner_3, by its share of the way; a rule of its own would move it otherwise',
    ]);
  });

  it('is warned of farther than 1 mm from every line', () => {
    // Across a side that goes out by 45 on 600 down, 46.5 sideways are 46.5 * 600 / hypot(600, 45).
    const off = (46.5 * 600) / Math.hypot(600, 45);
    expect(told(panel(spot('4', [148.5, -200])), 'notch-beside')[0]).toContain(
      `cut_notch_1 stands on no line: ${off.toFixed(1)} mm from`,
    );
    expect(told(panel(spot('4', [194.1, -200])), 'notch-beside')).toEqual([]);
    expect(told(panel(spot('4', [193.9, -200])), 'notch-beside')).toHaveLength(1);
  });

  it('may stand on the cut line beside a sewing line, and moves along it', () => {
    const cut = [
      [-10, 10],
      [190, 10],
      [235, -590],
      [-10, -590],
    ] as const;
    const block =
      polyline('1', cut) +
      ruled(cut) +
      polyline('14', PANEL) +
      ruled(PANEL) +
      spot('4', [212.5, -290]);
    const result = read(drawing({ header: MILLIMETERS, blocks: { FRONT: block } }), WAIST_MOVES);
    expect(told(result, 'notch-beside')).toEqual([]);
    // In the middle of the cut line's side half of the move is left.
    expect(placesOf(result, 'cut_notch_1').map((at) => at?.x)).toEqual([187.5, 212.5, 237.5]);
  });
});
