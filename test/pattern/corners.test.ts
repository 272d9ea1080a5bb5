/** Corners of the cut line, worked out by hand. */
import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point';
import { pointOf } from '../../src/index';
import type { CutPiece } from '../../src/pattern/cut-piece';
import type { Edge, Piece } from '../../src/pattern/piece';
import { piecePlan } from '../../src/pattern/piece';
import { usualFinish } from '../../src/pattern/allowance';
import { cutOf as cutSize } from './cut-of';
import { gradeLazily } from '../graded';

/** The width outside each seam, by its parameter; none at a fold. */
const ALLOWED: Readonly<Record<string, string>> = {
  ...{ waist: 'waist_allowance', side: 'side_allowance', hem: 'hem_allowance' },
  ...{ vent: 'vent_allowance', vent_top: 'vent_allowance', center_back: 'zip_allowance' },
};

type Corner = readonly [x: number, y: number, seam: string];

/** A piece of straight edges; each corner comes with the seam of the edge that starts there. */
function polygon(corners: readonly Corner[]): Piece {
  const outline = corners.map(([, , seam], i): Edge => {
    const kind = seam === 'fold' ? 'fold' : 'line';
    return { kind, from: `p${i}`, to: `p${(i + 1) % corners.length}`, seam };
  });
  const lines = {
    name: 'front',
    part: 'facing' as const,
    pointNames: corners.map((_, i) => `p${i}`),
    outline,
    marks: [],
  };
  const edges = new Map(
    outline.map(({ seam }) => [seam, { allowance: ALLOWED[seam], finish: usualFinish(seam) }]),
  );
  const plan = piecePlan({ ...lines, edges, cuttings: [], handles: new Set() });
  return { plan, points: corners.map(([x, y]) => ({ x, y })) };
}

const WIDTHS = { waist: 10, side: 20, hem: 40, vent: 15, zip: 25 };

function cutOf(piece: Piece, style = 0, widths: Partial<typeof WIDTHS> = {}): CutPiece {
  const all = Object.entries({ ...WIDTHS, ...widths });
  const parameters = new Map<string, number>(
    all.map(([name, width]) => [`${name}_allowance`, width]),
  );
  const [cut] = cutSize({ pieces: [piece], parameters: parameters.set('corner_style', style) });
  if (cut === undefined) throw new Error('no piece');
  return cut;
}

/** The corners of a cut line of straight lines, to a thousandth of a millimeter. */
function cornersOf({ cut }: CutPiece): readonly (readonly [number, number])[] {
  const round = (n: number): number => Math.round(n * 1000) / 1000 + 0;
  return cut.map(({ from }) => [round(from.x), round(from.y)] as const);
}

function expectCorners(piece: CutPiece, wanted: readonly (readonly [number, number])[]): void {
  const corners = cornersOf(piece);
  for (const corner of wanted) expect(corners).toContainEqual(corner);
}

/** 200 wide, 300 deep, clockwise on paper from the top left; the side leans in by `lean`. */
function panel(lean: number, left = 'center_back'): Piece {
  return polygon([
    [0, 0, 'waist'],
    [200, 0, 'side'],
    [200 - lean, 300, 'hem'],
    [0, 300, left],
  ]);
}

describe('corners of the cut line', () => {
  it.each([0, 1, 2])('of a square corner are square, style %s', (style) => {
    const narrow = { side: 10, hem: 10, zip: 10 };
    expectCorners(cutOf(panel(0), style, narrow), [
      [-10, -10],
      [210, -10],
      [210, 310],
      [-10, 310],
    ]);
  });

  it('follow the fold, on which nothing is added', () => {
    const cut = cutOf(panel(0, 'fold'));
    expectCorners(cut, [
      [0, -10],
      [0, 340],
    ]);
    expect(cut.fold?.from).toEqual({ x: 0, y: 340 });
    expect(cut.fold?.to).toEqual({ x: 0, y: -10 });
    for (const { from } of cut.cut) expect(from.x).toBeGreaterThanOrEqual(0);
  });

  it('are mirrored at the hem: 20 mm in 200 and a hem of 40 spread by 4 mm', () => {
    // The side goes in by 1 mm in 10, so 40 mm below the hem it has come out by 4.
    const piece = polygon([
      [0, 0, 'waist'],
      [200, 0, 'side'],
      [180, 200, 'hem'],
      [0, 200, 'center_back'],
    ]);
    const cut = cutOf(piece, 0, { side: 0 });
    expectCorners(cut, [
      [180, 200],
      [184, 240],
    ]);
    const wide = cutOf(piece);
    // Along the hem a slanted strip of 20 mm is 20 mm divided by the cosine of its slant wide.
    const across = 20 * Math.hypot(1, 0.1);
    expect(wide.corners.get('p2')?.x).toBeCloseTo(184 + across, 9);
  });

  it('are mirrored at the hem of a flared side too, where the turn-up must be narrower', () => {
    const cut = cutOf(panel(-100), 0, { side: 5 });
    const fall = 40 * (100 / 300);
    expect(cut.corners.get('p2')?.x).toBeCloseTo(300 + 5 * Math.hypot(1, 1 / 3) - fall, 9);
    expect(cut.corners.get('p2')?.y).toBeCloseTo(340, 9);
  });

  it('are mirrored at the hem of a side that flares by four in three, far beyond the widths', () => {
    // The slanted strip of 20 mm is 20 / 0.6 wide along the hem; from there its image comes back by
    // 4 in 3 of the depth of 40, a way of 40 / 0.6 = 66.7 mm.
    expectCorners(cutOf(panel(-400)), [
      [633.333, 300],
      [580, 340],
    ]);
  });

  it('are squared off where the side is pressed open', () => {
    const cut = cutOf(panel(60));
    // The sewing line of the side, run on, meets the cut line of the waist 10 mm above it.
    const slope = 60 / 300;
    const onWaist: Point = { x: 200 + 10 * slope, y: -10 };
    const along = Math.hypot(1, slope);
    const end = { x: onWaist.x + 20 / along, y: onWaist.y + (20 * slope) / along };
    const corners = cut.cut.map(({ from }) => from);
    for (const p of [onWaist, end])
      expect(Math.min(...corners.map((q) => Math.hypot(q.x - p.x, q.y - p.y)))).toBeLessThan(1e-9);
  });

  // A miter reaches 1 / sin(half the angle) widths beyond its corner: 2.92 at 40 degrees, 4.28 at 27.
  it.each([
    [40, 10 / Math.sin((20 * Math.PI) / 180)],
    [30, 10 / Math.sin((15 * Math.PI) / 180)],
  ])('of one seam at %d degrees run on until they meet', (angle, reach) => {
    expect(Math.min(...tipOf(angle).map(([, y]) => y))).toBeCloseTo(-reach, 3);
  });

  it('of one seam that are sharper end within four widths', () => {
    expect(Math.min(...tipOf(27).map(([, y]) => y))).toBeGreaterThan(-40);
  });

  /** The cut corners of a wedge of this many degrees that points upward, 10 mm wider all round. */
  function tipOf(angle: number): readonly (readonly [number, number])[] {
    const half = 300 * Math.tan(((angle / 2) * Math.PI) / 180);
    const wedge = polygon([
      [0, 0, 'waist'],
      [half, 300, 'waist'],
      [-half, 300, 'waist'],
    ]);
    return cornersOf(cutOf(wedge, 1));
  }

  it('are mitered where that is asked for', () => {
    const cut = cutOf(panel(60), 1);
    const across = 20 * Math.hypot(1, 60 / 300);
    expect(cut.corners.get('p1')?.y).toBeCloseTo(-10, 9);
    expect(cut.corners.get('p1')?.x).toBeCloseTo(200 + across + 2, 9);
  });

  it('are stepped where that is asked for: the wider allowance ends on the seam line', () => {
    const cut = cutOf(panel(0), 2);
    expectCorners(cut, [
      [210, -10],
      [210, 0],
      [220, 0],
    ]);
    expect(cornersOf(cut)).not.toContainEqual([220, -10]);
  });

  it('step where one allowance is wider than the other along a straight line', () => {
    const piece = polygon([
      [0, 0, 'waist'],
      [200, 0, 'side'],
      [200, 150, 'vent'],
      [200, 300, 'hem'],
      [0, 300, 'center_back'],
    ]);
    expectCorners(cutOf(piece), [
      [220, 150],
      [215, 150],
    ]);
  });

  it('turn inward where the cut lines cross, whatever their widths', () => {
    const piece = polygon([
      [0, 0, 'waist'],
      [200, 0, 'side'],
      [200, 100, 'vent_top'],
      [260, 100, 'vent'],
      [260, 300, 'hem'],
      [0, 300, 'center_back'],
    ]);
    expectCorners(cutOf(piece), [
      [220, 85],
      [275, 85],
    ]);
    // The side's strip wider than the vent: nothing is left to cut beside it but the side's own.
    const wide = cutOf(piece, 1, { side: 90 });
    for (const { from } of wide.cut) expect(from.x).toBeLessThanOrEqual(290 + 1e-9);
    expectCorners(wide, [
      [290, -10],
      [290, 100],
      [275, 100],
    ]);
  });

  it('vanish with an edge of no length, and survive one that is tiny', () => {
    const with0 = polygon([
      [0, 0, 'waist'],
      [200, 0, 'waist'],
      [200, 0, 'side'],
      [200, 300, 'hem'],
      [0, 300, 'center_back'],
    ]);
    expectCorners(cutOf(with0), [[220, -10]]);
    const tiny = polygon([
      [0, 0, 'waist'],
      [199.99, 0, 'waist'],
      [200, 0.01, 'side'],
      [200, 300, 'hem'],
      [0, 300, 'center_back'],
    ]);
    const corners = cutOf(tiny, 1).cut.map(({ from }) => from);
    expect(Math.min(...corners.map(({ y }) => y))).toBeCloseTo(-10, 9);
    expect(Math.max(...corners.map(({ x }) => x))).toBeCloseTo(220, 9);
  });

  it('are cut off where they would run out in a point', () => {
    const piece = polygon([
      [0, 0, 'waist'],
      [400, 20, 'side'],
      [0, 40, 'center_back'],
    ]);
    const reach = Math.max(...cutOf(piece).cut.map(({ from }) => from.x));
    expect(reach).toBeGreaterThan(400 + 19);
    expect(reach).toBeLessThan(400 + 30);
  });
});

describe('the taper of a real hem', () => {
  // Hip line at 20 cm, hem at 60 cm: the side tapers by 2 cm over exactly 40 cm.
  const CHART = `# unit: cm
measurement,36,38,40
waist_girth,68,72,76
hip_girth,94,98,102
waist_to_hip,20,20,20
skirt_length,60,60,60
`;

  it('spreads the turn-up of 4 cm by 2 mm an edge, in every size', () => {
    const set = { hem_taper: '2 cm', hem_allowance: '4 cm', side_allowance: '0 cm' };
    const { range } = gradeLazily({ style: 'pencil', chart: CHART, base: '38', set });
    for (const cut of range.sizes.map(cutSize))
      for (const { piece, corners } of cut) {
        const hem = pointOf(piece, 'side_hem');
        expect(corners.get('side_hem')?.x).toBeCloseTo(hem.x + 2, 6);
        expect(corners.get('side_hem')?.y).toBeCloseTo(640, 6);
      }
  });
});
