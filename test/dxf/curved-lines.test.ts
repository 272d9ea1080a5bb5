/** Arcs, splines and outlines in parts; lengths and areas by the formulas of the circle. */
import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point';
import { segmentAt, segmentLength } from '../../src/geometry/segment';
import { pointOf } from '../../src/pattern/piece';
import { CURVE_POINTS } from '../../src/tolerance';
import type { GradeResult } from '../../src/jobs/grade-result';
import { drillHole } from '../../src/pattern/notch-places';
import { expectRefusal } from '../expect-refusal';
import {
  MILLIMETERS,
  RECTANGLE,
  SQUARE,
  arc,
  drawing,
  insert,
  line,
  outline,
  polyline,
  read,
  ruled,
  spot,
  tags,
  told,
  words,
} from './foreign';

const block = (inside: string): string =>
  drawing({ header: MILLIMETERS, blocks: { FRONT: inside }, sheet: insert('FRONT') });

const around = (result: GradeResult): number =>
  outline(result).segments.reduce((sum, own) => sum + segmentLength(own), 0);

/** mm by which the curved part of the outline leaves a circle, y up. */
function offCircle(result: GradeResult, center: readonly [number, number], radius: number) {
  const curved = outline(result).segments.filter(({ kind }) => kind === 'cubic');
  expect(curved.length).toBeGreaterThan(0);
  const places = curved.flatMap((own) =>
    Array.from({ length: 51 }, (_, i): Point => segmentAt(own, i / 50)),
  );
  return Math.max(
    ...places.map(({ x, y }) => Math.abs(Math.hypot(x - center[0], -y - center[1]) - radius)),
  );
}

describe('an arc', () => {
  // A bulge is the tangent of a quarter of the angle: 1 is a half circle, against the clock if > 0.
  it.each([
    ['a half circle out of the right side', 1, [200, 50], 50, 50 * Math.PI],
    ['a half circle into it', -1, [200, 50], 50, 50 * Math.PI],
    [
      'a quarter out of it',
      Math.tan(Math.PI / 8),
      [150, 50],
      Math.hypot(50, 50),
      (Math.hypot(50, 50) * Math.PI) / 2,
    ],
    [
      'three quarters',
      Math.tan((3 * Math.PI) / 8),
      [250, 50],
      Math.hypot(50, 50),
      Math.hypot(50, 50) * 1.5 * Math.PI,
    ],
  ] as const)('by a bulge is %s', (_, bulge, center, radius, long) => {
    const bent = SQUARE.map(([x, y], i) => [x, y, i === 1 ? bulge : 0] as const);
    const result = read(block(polyline('1', bent) + ruled(SQUARE)));
    expect(offCircle(result, center, radius)).toBeLessThanOrEqual(CURVE_POINTS);
    expect(around(result)).toBeCloseTo(500 + long, 3);
    const side = outline(result).segments.map(({ from }) => from.x);
    expect(Math.max(...side) > 200).toBe(bulge > 0);
    // The arc ends move by their rules, and with them what lies between.
    const ends = outline(result, 'L').corners;
    expect(ends).toContainEqual([204, 101]);
    expect(ends).toContainEqual([200, 0]);
  });

  it('of 2 m keeps within the tolerance of curve points', () => {
    const bent = [
      [0, 0],
      [1000, 0, Math.tan(Math.PI / 12)],
      [1000, 2000],
      [0, 2000],
    ] as const;
    const result = read(block(polyline('1', bent)));
    // 60 degrees over a chord of 2 m.
    expect(offCircle(result, [1000 - 2000 * Math.sqrt(0.75), 1000], 2000)).toBeLessThanOrEqual(
      CURVE_POINTS,
    );
  });

  it('seen from behind is mirrored with its bulge', () => {
    const bent = SQUARE.map(([x, y], i) => [x, y, i === 1 ? 1 : 0] as const);
    const behind = polyline('1', bent).replace('8\n1\n', '8\n1\n210\n0\n220\n0\n230\n-1\n');
    const result = read(block(behind));
    expect(offCircle(result, [-200, 50], 50)).toBeLessThanOrEqual(CURVE_POINTS);
    expect(Math.min(...outline(result).corners.map(([x]) => x))).toBeCloseTo(-250, 9);
  });

  it('is mirrored with its block', () => {
    const bent = SQUARE.map(([x, y], i) => [x, y, i === 1 ? 1 : 0] as const);
    const result = read(
      drawing({
        header: MILLIMETERS,
        blocks: { FRONT: polyline('1', bent) },
        sheet: insert('FRONT', { scale: [-2, 2] }),
      }),
    );
    expect(offCircle(result, [-400, 100], 100)).toBeLessThanOrEqual(CURVE_POINTS);
  });

  it('may be a whole circle', () => {
    const circle = tags([0, 'CIRCLE'], [8, '1'], [10, 70], [20, 40], [40, 300]);
    const result = read(block(circle));
    expect(around(result)).toBeCloseTo(2 * Math.PI * 300, 2);
    expect(offCircle(result, [70, 40], 300)).toBeLessThanOrEqual(CURVE_POINTS);
  });
});

describe('an outline in parts', () => {
  /** Right side as a half circle out, drawn against the others; the corners off by `off`. */
  const parts = (off = 0, more = ''): string =>
    block(
      line('1', [0, 0], [200, 0]) +
        polyline(
          '1',
          [
            [0, 100],
            [0, 50],
            [0, off],
          ],
          false,
        ) +
        line('1', [200, 100], [0, 100]) +
        arc('1', [200, 50], 50, 270, 90) +
        ruled(SQUARE) +
        more,
    );

  it('is joined, whichever way its parts run', () => {
    const result = read(parts());
    expect(around(result)).toBeCloseTo(500 + 50 * Math.PI, 3);
    const end = [expect.closeTo(204, 9), expect.closeTo(101, 9)];
    expect(outline(result, 'L').corners).toContainEqual(end);
    expect(told(result, 'left-out')).toEqual([]);
    expect(told(result, 'gap-closed')).toEqual([]);
  });

  it('is joined over 0.3 mm, which is said', () => {
    const result = read(parts(0.3));
    expect(around(result)).toBeCloseTo(500 + 50 * Math.PI, 0);
    expect(told(result, 'gap-closed')[0]).toMatch(/^note: .*layer 1 .* up to 0.3 mm/u);
  });

  it('is refused where it gapes by 0.5 mm, with the place', () => {
    const dxf = parts(0.5);
    expect(() => read(dxf)).toThrow('a gap of 0.5 mm from (0, 0.5) to (0, 0) mm');
    expectRefusal(() => read(dxf), 'dxf-malformed', { file: 'foreign.dxf', row: 27 });
  });

  it('is joined over a line that is shorter than a gap may be', () => {
    const short = line('1', [0, 0], [200, 0]) + line('1', [0, 0.2], [0, 0]);
    const rest = polyline(
      '1',
      [
        [200, 0],
        [200, 100],
        [0, 100],
        [0, 0.2],
      ],
      false,
    );
    for (const dxf of [block(short + rest), block(rest + short)]) {
      const result = read(dxf);
      expect(outline(result).corners).toHaveLength(5);
      expect(around(result)).toBeCloseTo(600, 9);
      expect(told(result, 'left-out')).toEqual([]);
    }
  });

  it('is refused where three lines meet', () => {
    const dxf = parts(0, line('1', [200, 0], [100, 50]));
    expect(() => read(dxf)).toThrow('more than two lines of an outline meet at (200, 0) mm');
  });

  it('fails for what is left over of a boundary', () => {
    const result = read(block(RECTANGLE + line('1', [50, 50], [80, 50])));
    expect(told(result, 'left-out')).toEqual([
      expect.stringMatching(/^fail: .*1 LINE on layer 1, boundary, in row \d+/u),
    ]);
  });
});

describe('a spline', () => {
  const spline = (
    degree: number,
    knots: readonly number[],
    controls: readonly (readonly [number, number])[],
  ) =>
    tags(
      [0, 'SPLINE'],
      [8, '1'],
      [70, 8],
      [71, degree],
      ...knots.map((knot) => [40, knot] as const),
      ...controls.flatMap(([x, y]) => [[10, x] as const, [20, y] as const]),
    );
  const rest = line('1', [200, 100], [0, 100]) + line('1', [0, 100], [0, 0]);

  it('of degree 3 in one stretch is its Bezier curve', () => {
    const bent = spline(
      3,
      [0, 0, 0, 0, 1, 1, 1, 1],
      [
        [0, 0],
        [50, -40],
        [260, 10],
        [200, 100],
      ],
    );
    const cubic = outline(read(block(bent + rest))).segments.find(({ kind }) => kind === 'cubic');
    expect(cubic).toMatchObject({
      leave: { x: 50, y: 40 },
      arrive: { x: 260, y: -10 },
    });
  });

  it('of degree 2 is its parabola', () => {
    const bent = spline(
      2,
      [0, 0, 0, 1, 1, 1],
      [
        [0, 0],
        [300, -60],
        [200, 100],
      ],
    );
    const cubic = outline(read(block(bent + rest))).segments.find(({ kind }) => kind === 'cubic');
    // At half its way a quarter of the ends and half of the middle.
    const half = cubic && segmentAt(cubic, 0.5);
    expect([half?.x, half?.y]).toEqual([expect.closeTo(200, 9), expect.closeTo(5, 9)]);
  });

  it('with inner knots is the curve of its basis functions', () => {
    const knots = [0, 0, 0, 0, 1, 3, 4, 4, 4, 4];
    const controls = [
      [0, 0],
      [30, -50],
      [90, -20],
      [150, -70],
      [260, 10],
      [200, 100],
    ] as const;
    const own = outline(read(block(spline(3, knots, controls) + rest))).segments;
    const cubics = own.filter(({ kind }) => kind === 'cubic');
    expect(cubics).toHaveLength(3);
    // The recursion of Cox and de Boor (de Boor, A Practical Guide to Splines, chapter IX).
    const basis = (i: number, degree: number, t: number): number => {
      const knot = (k: number): number => knots[k] ?? NaN;
      if (degree === 0) return knot(i) <= t && t < knot(i + 1) ? 1 : 0;
      const [up, down] = [knot(i + degree) - knot(i), knot(i + degree + 1) - knot(i + 1)];
      return (
        (up === 0 ? 0 : ((t - knot(i)) / up) * basis(i, degree - 1, t)) +
        (down === 0 ? 0 : ((knot(i + degree + 1) - t) / down) * basis(i + 1, degree - 1, t))
      );
    };
    const spans = [
      [0, 1],
      [1, 3],
      [3, 4],
    ] as const;
    cubics.forEach((cubic, k) => {
      for (const share of [0, 0.2, 0.5, 0.9]) {
        const [a, b] = spans[k] ?? [NaN, NaN];
        const t = a + share * (b - a);
        const sum = (axis: 0 | 1): number =>
          controls.reduce((all, own2, i) => all + own2[axis] * basis(i, 3, t), 0);
        const found = segmentAt(cubic, share);
        expect(found.x).toBeCloseTo(sum(0), 9);
        expect(-found.y).toBeCloseTo(sum(1), 9);
      }
    });
  });

  it('that cannot be read is not taken for straight', () => {
    const rational = spline(
      3,
      [0, 0, 0, 0, 1, 1, 1, 1],
      [
        [0, 0],
        [50, -40],
        [260, 10],
        [200, 100],
      ],
    ).replace('71\n3\n', '71\n3\n41\n1\n41\n2\n41\n1\n41\n1\n');
    expectRefusal(() => read(block(rational + rest)), 'dxf-malformed', {
      file: 'foreign.dxf',
      row: 75,
    });
    // A whole outline through fit points alone, of which no curve is sure.
    const fitted = tags(
      [0, 'SPLINE'],
      [8, '1'],
      [70, 9],
      [71, 3],
      ...[0, 200, 200, 0].flatMap((x, i) => [[11, x] as const, [21, i < 2 ? 0 : 100] as const]),
    );
    expect(() => read(block(fitted))).toThrow(
      /the boundary of the block .* is of a kind that is not read.*Got: SPLINE OF FIT POINTS/u,
    );
    const inside = read(block(RECTANGLE + rational));
    expect(told(inside, 'left-out')[0]).toMatch(/^fail: .*1 SPLINE on layer 1, boundary/u);
  });
});

describe('what lies in a piece', () => {
  it('may be round: a drill hole at the center, a line inside as chords', () => {
    const circle = (layer: string, r: number) =>
      tags([0, 'CIRCLE'], [8, layer], [10, 70], [20, 40], [40, r]);
    const result = read(block(RECTANGLE + circle('13', 2) + circle('8', 30)));
    const piece = result.range.sizes[1]?.pieces[0];
    if (piece === undefined) throw new Error('no piece');
    const { drillHoles, marks } = piece.plan;
    expect(drillHoles.map((rule) => drillHole(piece, rule))).toEqual([{ x: 70, y: -40 }]);
    const chain = marks.find(({ name }) => name === 'internal-line')?.through ?? [];
    const places = chain.map((name) => pointOf(piece, name));
    expect(places.length).toBeGreaterThan(24);
    places.forEach((at, i) => {
      expect(Math.hypot(at.x - 70, at.y + 40)).toBeCloseTo(30, 3);
      const next = places[i + 1];
      if (next === undefined) return;
      // The sagitta of a chord: how far the circle bends beyond it.
      const half = Math.hypot(next.x - at.x, next.y - at.y) / 2;
      expect(30 - Math.sqrt(900 - half * half)).toBeLessThanOrEqual(0.05);
    });
    expect(told(result, 'left-out')).toEqual([]);
  });

  it('is a notch in an arc as well, and keeps its rule', () => {
    const bent = SQUARE.map(([x, y], i) => [x, y, i === 1 ? 1 : 0] as const);
    const notch = spot('4', [250, 50]) + words('4', [250, 50], '# 2');
    const result = read(block(polyline('1', bent) + ruled(SQUARE) + notch));
    const at = (size: number) => {
      const piece = result.range.sizes[size]?.pieces[0];
      return piece?.plan.notches.map(({ place }) =>
        'point' in place ? pointOf(piece, place.point) : undefined,
      );
    };
    expect(at(1)).toEqual([{ x: 250, y: -50 }]);
    expect(at(2)).toEqual([{ x: 254, y: -51 }]);
  });
});
