/** Notches, drill holes, grain and labels of cut pieces, in every size of every style. */
import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point';
import { measureOf, pointOf } from '../../src/index';
import type { GradeResult, gradeChart } from '../../src/index';
import type { CutPiece, Notch } from '../../src/pattern/cut-piece';
import { cutOf } from './cut-of';
import { CHARTS, DEMO, chords, everyResult, total } from '../draft/shaped-pieces';
import { densely, edgePlaces, isWithin, nearest, sewingPolygon } from './sewing-line';
import { gradedOnce } from '../graded';

const RESULTS: readonly (readonly [string, GradeResult])[] = [
  ...everyResult({}),
  ...CHARTS.map((input) => [`pencil, base ${input.base}`, gradedOnce(input)] as const),
  ...CHARTS.map(
    (input) => [`rounded, base ${input.base}`, gradedOnce({ ...input, round: '1/8in' })] as const,
  ),
];

function named(pieces: readonly CutPiece[], name: string): CutPiece {
  const found = pieces.find(({ piece }) => piece.plan.name === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
}

function notchesOf({ notches }: CutPiece, name: string): readonly Notch[] {
  return notches.filter((notch) => notch.name === name);
}

/** mm along a seam from the place nearest to `p` to the end of the seam. */
function toEnd({ piece }: CutPiece, seam: string, p: Point): number {
  const edges = piece.plan.outline.filter((edge) => edge.seam === seam && edge.kind !== 'dart');
  const last = edges.at(-1)?.to ?? '';
  const chain = [...edges.flatMap((edge) => edgePlaces(piece, edge)), pointOf(piece, last)];
  let best = Infinity;
  let after = 0;
  let found = 0;
  for (let i = chain.length - 1; i > 0; i--) {
    const [a, b] = [chain[i - 1], chain[i]];
    if (a === undefined || b === undefined) continue;
    const away = nearest(p, [a, b], false);
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    if (away < best) {
      best = away;
      found = after + Math.hypot(b.x - p.x, b.y - p.y);
    }
    after += long;
  }
  return found;
}

describe.each(RESULTS)('marks of %s', (_, { range }) => {
  it('stand on the sewing line and begin on the cut line, straight out from it', () => {
    for (const cutPieces of range.sizes.map(cutOf))
      for (const { piece, cut, notches } of cutPieces)
        for (const { net, cut: at, inward } of notches) {
          expect(nearest(net, sewingPolygon(piece))).toBeLessThan(0.02);
          expect(nearest(at, densely(cut, 60))).toBeLessThan(0.02);
          const long = Math.hypot(net.x - at.x, net.y - at.y);
          expect(net.x - at.x - long * inward.x).toBeCloseTo(0, 6);
          expect(net.y - at.y - long * inward.y).toBeCloseTo(0, 6);
          expect(long).toBeLessThan(60);
        }
  });

  it('are as far from the hem on the front side as on the back one', () => {
    for (const cutPieces of range.sizes.map(cutOf))
      for (const [a, b] of [
        ['front', 'back'],
        ['front_lining', 'back_lining'],
        ['front_lining', 'right_back_lining'],
        ['front_lining', 'left_back_lining'],
      ] as const) {
        if (!cutPieces.some(({ piece }) => piece.plan.name === b)) continue;
        if (!cutPieces.some(({ piece }) => piece.plan.name === a)) continue;
        const [front, back] = [named(cutPieces, a), named(cutPieces, b)];
        const [single] = notchesOf(front, 'hip-line');
        const [double] = notchesOf(back, 'hip-line');
        expect([single?.marks, double?.marks]).toEqual([1, 2]);
        if (single === undefined || double === undefined) continue;
        const [inFront, inBack] = [
          toEnd(front, 'side', single.net),
          toEnd(back, 'side', double.net),
        ];
        expect(inFront).toBeCloseTo(inBack, 1);
        expect(nearest(single.net, [pointOf(front.piece, 'side_hip')])).toBeLessThan(1e-6);
      }
  });

  it('show the end of the zip at its length, on shell and lining alike', () => {
    for (const size of range.sizes)
      for (const name of ['back', 'back_lining']) {
        const back = cutOf(size).find(({ piece }) => piece.plan.name === name);
        if (back === undefined) continue;
        const [notch] = notchesOf(back, 'zip-end');
        const waist = pointOf(back.piece, 'center_waist');
        const zip = size.measures.some(({ name: measure }) => measure === 'zip_length')
          ? measureOf(size, 'zip_length')
          : pointOf(back.piece, 'center_hip').y - waist.y - 20;
        expect((notch?.net.y ?? NaN) - waist.y).toBeCloseTo(zip, 6);
        expect(notch?.net.x).toBeCloseTo(waist.x, 9);
      }
  });

  it('stand at both legs of every dart, which meet when it is sewn', () => {
    for (const cutPieces of range.sizes.map(cutOf))
      for (const piece of cutPieces) {
        const { darts } = piece.piece.plan;
        if (darts.length === 0) continue;
        const legs = darts.flatMap(({ from, to }) => [from, to]);
        expect(notchesOf(piece, 'dart').map(({ net }) => net)).toEqual(
          legs.map((leg) => pointOf(piece.piece, leg)),
        );
        // Folded along its axis the dart brings one notch onto the other: both are as long.
        const long = notchesOf(piece, 'dart').map(({ net, cut }) =>
          Math.hypot(net.x - cut.x, net.y - cut.y),
        );
        for (let i = 0; i + 1 < long.length; i += 2)
          expect(Math.abs((long[i] ?? NaN) - (long[i + 1] ?? NaN))).toBeLessThan(0.35);
      }
  });

  it('have a drill hole 15 mm short of each tip, a grainline inside, and a number', () => {
    for (const cutPieces of range.sizes.map(cutOf))
      cutPieces.forEach(({ piece, drillHoles, grain, number, fold, cut }, i) => {
        expect(number).toBe(i + 1);
        piece.plan.darts.forEach(({ tip }, k) => {
          const [end, hole] = [pointOf(piece, tip), drillHoles[k]];
          expect(Math.hypot((hole?.x ?? NaN) - end.x, (hole?.y ?? NaN) - end.y)).toBeCloseTo(15, 9);
        });
        const sewn = sewingPolygon(piece);
        expect(isWithin(grain.from, sewn) && isWithin(grain.to, sewn)).toBe(true);
        const across = piece.plan.part === 'waistband';
        expect(across ? grain.from.y - grain.to.y : grain.from.x - grain.to.x).toBe(0);
        expect(fold === undefined).toBe(!piece.plan.outline.some(({ kind }) => kind === 'fold'));
        for (const end of fold === undefined ? [] : [fold.from, fold.to])
          expect(nearest(end, densely(cut, 60))).toBeLessThan(1e-6);
      });
  });
});

describe('notches of the waist', () => {
  it('of band and facing divide it as darts and seams divide the skirt', () => {
    for (const waist_finish of ['1', '2']) {
      const { range } = gradedOnce({ ...DEMO, style: 'shared-drop', set: { waist_finish } });
      for (const size of range.sizes) {
        const { parameters } = size;
        const cutPieces = cutOf(size);
        const [front, back] = [named(cutPieces, 'front'), named(cutPieces, 'back')];
        const halves = [chords(back.piece, 'waist'), chords(front.piece, 'waist').toReversed()];
        if (waist_finish === '2') {
          for (const panel of [front, back]) {
            const facing = named(cutPieces, `${panel.piece.plan.name}_facing`);
            const joints = notchesOf(facing, 'dart').map(({ net }) => toEnd(facing, 'waist', net));
            const own = chords(panel.piece, 'waist');
            const wanted = own.slice(1).map((__, i) => total(own.slice(i + 1)));
            expect(joints).toHaveLength(wanted.length);
            joints.forEach((joint, i) => expect(joint).toBeCloseTo(wanted[i] ?? NaN, 0));
          }
          continue;
        }
        const half = halves.flat();
        const round = [...half, ...half.toReversed()];
        const band = named(cutPieces, 'waistband');
        const xs = band.notches.map(({ net }) => net.x).sort((a, b) => a - b);
        const ease = (total(round) - (parameters.get('band_ease') ?? NaN)) / total(round);
        expect(xs).toHaveLength(round.length + 1);
        let along = 0;
        xs.forEach((x, i) => {
          expect(x - (xs[0] ?? NaN)).toBeCloseTo(along * ease, 0);
          along += round[i] ?? 0;
        });
      }
    }
  });

  it('are double on the back and single on the front, on the band too', () => {
    const { range } = gradedOnce({ ...DEMO, style: 'shared-drop' });
    const [size = []] = range.sizes.map(cutOf);
    const band = named(size, 'waistband');
    expect(band.notches.map(({ marks }) => marks).join('')).toMatch(/^2+1+2+$/);
    for (const { piece, notches } of size) {
      if (piece.plan.name === 'waistband') continue;
      const wanted = piece.plan.name.startsWith('back') ? 2 : 1;
      expect(new Set(notches.map(({ marks }) => marks))).toEqual(new Set([wanted]));
    }
  });

  it('mark the top of a vent on all backs', () => {
    const { range } = gradedOnce({ ...DEMO, style: 'shared-pencil' });
    for (const cutPieces of range.sizes.map(cutOf))
      for (const name of ['back', 'right_back_lining', 'left_back_lining']) {
        const back = named(cutPieces, name);
        const [top] = notchesOf(back, 'vent-top');
        expect(top?.net).toEqual(pointOf(back.piece, 'vent_top'));
      }
  });
});

describe('allowances', () => {
  it('come from the preset, and style and caller go before it', () => {
    const side = (request: Partial<Parameters<typeof gradeChart>[0]>): number | undefined =>
      gradedOnce({ ...DEMO, ...request })
        .range.sizes.map(cutOf)[0]?.[0]
        ?.allowances.get('side');
    expect(side({})).toBeCloseTo(15.875, 9);
    expect(side({ allowances: 'home' })).toBeCloseTo(15.875, 9);
    expect(side({ allowances: 'industry' })).toBeCloseTo(9.525, 9);
    expect(side({ allowances: 'industry', set: { side_allowance: '2 cm' } })).toBeCloseTo(20, 9);
  });

  it('are as wide in every size', () => {
    const { range } = gradedOnce({ ...DEMO, style: 'shared-pencil' });
    const [first] = range.sizes.map(cutOf);
    for (const cutPieces of range.sizes.map(cutOf))
      cutPieces.forEach(({ allowances }, i) => expect(allowances).toEqual(first?.[i]?.allowances));
  });

  it('of center back are those of the zip, in the net points too', () => {
    const { range } = gradedOnce({ ...DEMO, set: { zip_allowance: '5/8 in' } });
    for (const cutPieces of range.sizes.map(cutOf)) {
      const back = named(cutPieces, 'back');
      expect(back.allowances.get('center_back')).toBeCloseTo(15.875, 9);
      expect(back.corners.get('center_waist')?.x).toBeCloseTo(
        pointOf(back.piece, 'zip_waist').x,
        9,
      );
    }
  });
});
