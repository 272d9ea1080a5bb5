import { describe, expect, it } from 'vitest';
import { checkFacings } from '../../src/check/facing';
import type { Point } from '../../src/geometry/point';
import type { Cubic } from '../../src/geometry/segment';
import type { Piece } from '../../src/index';
import { pointOf } from '../../src/index';
import { casteljau, chordLength } from '../geometry/curves';
import { seamFindings, withMoved } from '../seam-findings';
import { movesOf, pieceOf } from '../skirts';
import {
  apart,
  bearing,
  chords,
  curveOf,
  dartNames,
  DEMO,
  dense,
  everyResult,
  total,
} from './shaped-pieces';
import { gradedOnce } from '../graded';

const CM = { unit: 'cm', fractions: false } as const;
const PANELS = ['front', 'back'] as const;
const FACED = { waist_finish: '2' };

/** The stretches of the waist edge: first and last point in the panel and in the facing. */
function stretches(panel: Piece): readonly (readonly [string, string, string, string])[] {
  const darts = dartNames(panel);
  const starts = [['center_waist', 'center_waist'], ...darts.map((d) => [`${d}_outer`, d])];
  const ends = [...darts.map((d) => [`${d}_inner`, d]), ['side_waist', 'side_waist']];
  return starts.map(([a = '', c = ''], i) => [a, ends[i]?.[0] ?? '', c, ends[i]?.[1] ?? '']);
}

function corners({ from, leave, arrive, to }: Cubic): readonly [Point, Point, Point, Point] {
  return [from, leave, arrive, to];
}

/** Degrees that the darts up to the `count`th take out, from their width and their legs. */
function closedAngle(panel: Piece, count: number): number {
  return total(
    panel.plan.darts.slice(0, count).map(({ from, tip, to }) => {
      const leg = apart(panel, from, tip);
      return (2 * Math.asin(apart(panel, from, to) / 2 / leg) * 180) / Math.PI;
    }),
  );
}

describe.each(everyResult(FACED))('the facings of %s', (_, result) => {
  const { sizes, rules } = result.range;

  it('have the waist edge with its darts closed, turned but not bent', () => {
    for (const { label } of sizes)
      for (const name of PANELS) {
        const panel = pieceOf(result, label, name);
        const facing = pieceOf(result, label, `${name}_facing`);
        stretches(panel).forEach(([a, b, c, d], i) => {
          const [flat, closed] = [curveOf(panel, a, b), curveOf(facing, c, d)];
          const [p, q] = [corners(flat), corners(closed)];
          for (const j of [0, 1, 2, 3] as const)
            for (const k of [0, 1, 2, 3] as const)
              expect(Math.hypot(q[j].x - q[k].x, q[j].y - q[k].y)).toBeCloseTo(
                Math.hypot(p[j].x - p[k].x, p[j].y - p[k].y),
                6,
              );
          const turned = bearing(flat.from, flat.to) - bearing(closed.from, closed.to);
          expect(turned).toBeCloseTo(closedAngle(panel, i), 6);
          expect(chordLength(closed, 200)).toBeCloseTo(chordLength(flat, 200), 6);
        });
      }
  });

  it('run on without a corner where a dart is closed', () => {
    for (const { label } of sizes)
      for (const name of PANELS) {
        const facing = pieceOf(result, label, `${name}_facing`);
        for (const dart of dartNames(pieceOf(result, label, name))) {
          const at = pointOf(facing, dart);
          const into = bearing(pointOf(facing, `${dart}_arrive`), at);
          expect(bearing(at, pointOf(facing, `${dart}_leave`))).toBeCloseTo(into, 6);
        }
      }
  });

  it('are 6 cm deep all along, within 0.3 mm', () => {
    for (const { label } of sizes.filter((__, i) => i % 3 === 0))
      for (const name of PANELS) {
        const facing = pieceOf(result, label, `${name}_facing`);
        const waist = dense(facing, 'waist', 400);
        for (const p of dense(facing, 'facing_edge', 12)) {
          const depth = Math.min(...waist.map((q) => Math.hypot(p.x - q.x, p.y - q.y)));
          expect(Math.abs(depth - 60)).toBeLessThan(0.3);
        }
      }
  });

  it('lie on the side seam, 6 cm of it in front and in back', () => {
    for (const { label } of sizes)
      for (const name of PANELS) {
        const panel = pieceOf(result, label, name);
        const facing = pieceOf(result, label, `${name}_facing`);
        expect(total(chords(facing, 'side'))).toBeCloseTo(60, 4);
        // The same length of the panel's side, found by halving, spans the same chord.
        const side = curveOf(panel, 'side_waist', 'side_hip');
        let [low, high] = [0, 1];
        for (let i = 0; i < 40; i++) {
          const middle = (low + high) / 2;
          if (chordLength(side, 200, 0, middle) < 60) low = middle;
          else high = middle;
        }
        const end = casteljau(side, low);
        const chord = Math.hypot(end.x - side.from.x, end.y - side.from.y);
        expect(apart(facing, 'side_waist', 'side_lower')).toBeCloseTo(chord, 3);
        const closed = curveOf(facing, 'side_waist', 'side_lower');
        const turned = bearing(side.from, end) - bearing(closed.from, closed.to);
        expect(turned).toBeCloseTo(closedAngle(panel, panel.plan.darts.length), 3);
      }
  });

  it('are square at the center and run on across the side, above and below', () => {
    for (const { label } of sizes)
      for (const name of PANELS) {
        const at = (point: string) => pointOf(pieceOf(result, label, `${name}_facing`), point);
        expect(at('center_waist_leave').y).toBeCloseTo(at('center_waist').y, 9);
        expect(at('center_lower_arrive').y).toBeCloseTo(at('center_lower').y, 9);
        for (const [edge, corner, side] of [
          ['side_waist_arrive', 'side_waist', 'side_waist_leave'],
          ['side_lower_leave', 'side_lower', 'side_lower_arrive'],
        ] as const) {
          const angle = bearing(at(corner), at(edge)) - bearing(at(corner), at(side));
          expect(Math.abs(Math.cos((angle * Math.PI) / 180))).toBeLessThan(1e-6);
        }
      }
  });

  it('do not grade in depth', () => {
    for (const { label } of sizes)
      for (const name of PANELS) {
        const move = (point: string) =>
          movesOf(rules.moves, result, label, `${name}_facing`, point);
        expect(move('center_lower').x).toBe(0);
        expect(move('center_lower').y).toBeCloseTo(move('center_waist').y, 9);
      }
  });

  it('are cut on the fold in front and twice in back, with interfacing', () => {
    const cut = (name: string) => pieceOf(result, result.range.base, name).plan.cuttings;
    expect(cut('front_facing')).toEqual([
      { cloth: 'shell', count: 1, onFold: true },
      { cloth: 'interfacing', count: 1, onFold: true },
    ]);
    expect(cut('back_facing')).toEqual([
      { cloth: 'shell', count: 2, onFold: false },
      { cloth: 'interfacing', count: 2, onFold: false },
    ]);
  });

  it('are found well in every size', () => {
    const found = result.findings.filter(({ check, subject }) =>
      /facing-depth|facing side|waist and facing/u.test(`${check} ${subject}`),
    );
    // Two depths; the length of the side; on each panel the length and the darts; the corners once.
    expect(found).toHaveLength((2 + 1 + 4) * sizes.length + 1);
    expect(new Set(found.map(({ severity }) => severity))).toEqual(new Set(['ok']));
  });
});

describe('a facing that does not fit', () => {
  const result = gradedOnce({ ...DEMO, style: 'shared-drop', set: FACED });

  it.each([
    ['center_waist', { x: -0.2, y: 0 }, 'seam-lengths', 'front waist and facing', 'note'],
    ['center_waist', { x: -4, y: 0 }, 'seam-lengths', 'front waist and facing', 'fail'],
    ['side_lower', { x: 4, y: 4 }, 'seam-lengths', 'facing side', 'fail'],
    ['side_waist_arrive', { x: 0, y: 2 }, 'corners-across-seam', 'facing side', 'warning'],
  ] as const)('is found at %s moved by %o', (point, by, check, seam, severity) => {
    const found = seamFindings(result, withMoved(result.range, 'front_facing', point, by)).filter(
      (own) => own.check === check && own.subject.startsWith(seam) && own.severity === severity,
    );
    expect(found).toHaveLength(check === 'corners-across-seam' ? 1 : result.range.sizes.length);
  });

  it('is found where it is not as deep as asked', () => {
    const range = withMoved(result.range, 'front_facing', 'center_lower', { x: 0, y: 0.4 });
    const found = checkFacings(range, CM).filter(({ severity }) => severity === 'warning');
    expect(found.map(({ check }) => check)).toEqual(range.sizes.map(() => 'facing-depth'));
  });
});
