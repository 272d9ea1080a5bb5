import { describe, expect, test } from 'vitest';
import { gradeChart, pointOf, turnUp } from '../../src/index';

// Hip line at 20 cm, hem at 60 cm: the side tapers over exactly 40 cm.
const CHART = `# unit: cm
measurement,36,38,40
waist_girth,68,72,76
hip_girth,94,98,102
waist_to_hip,20,20,20
skirt_length,60,60,60
`;

describe('turn-up of a tapered hem', () => {
  test('taper 2 cm in 40 cm, turn-up 4 cm: 0.2 cm wider than the hem, not narrower', () => {
    // Arithmetic of the mirror (common practice, no source): 4 cm * 2/40 = 0.2 cm an edge; the taper
    // run straight on would be 0.2 cm narrower, a shortfall of 0.4 cm an edge.
    const { range } = gradeChart({
      style: 'pencil',
      chart: CHART,
      base: '38',
      set: { hem_taper: '2 cm' },
    });
    for (const size of range.sizes) {
      for (const piece of size.pieces) {
        const hem = pointOf(piece, 'side_hem');
        const hip = pointOf(piece, 'side_hip');
        const edge = turnUp(piece, 40);
        expect(edge?.from.y).toBeCloseTo(640, 9);
        expect(edge?.from.x).toBeCloseTo(hem.x + 2, 9);
        const straightOn = hem.x + (40 * (hem.x - hip.x)) / (hem.y - hip.y);
        expect((edge?.from.x ?? NaN) - straightOn).toBeCloseTo(4, 9);
        // At the center the hem is square, and so is its turn-up.
        expect(edge?.to).toEqual({ x: 0, y: 640 });
      }
    }
  });

  test('a straight skirt has a turn-up as wide as its hem', () => {
    const { range } = gradeChart({ chart: CHART, base: '38', style: 'straight' });
    const piece = range.sizes[0]?.pieces[0];
    if (piece === undefined) throw new Error('no piece');
    expect(turnUp(piece, 40)?.from.x).toBeCloseTo(pointOf(piece, 'side_hem').x, 9);
  });
});
