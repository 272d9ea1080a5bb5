import fc from 'fast-check';
import { draftedSizes } from '../../src/grade/graded-pattern';
import { describe, expect, it } from 'vitest';
import type { Piece } from '../../src/index';
import { pointOf } from '../../src/index';
import { chartText, movesOf, pieceOf } from '../skirts';
import { seamFindings, withMoved } from '../seam-findings';
import { chords, dartNames, DEMO, everyResult, total } from './shaped-pieces';
import { runs } from '../samples';
import { gradeLazily, gradedOnce } from '../graded';

/** Every notch by its name and the length of skirt edge from center back to it, by many chords. */
function walked(front: Piece, back: Piece): readonly (readonly [string, number])[] {
  const stretches = { front: chords(front, 'waist'), back: chords(back, 'waist') };
  const half = total(stretches.front) + total(stretches.back);
  const right: [string, number][] = [
    ['center_back', 0],
    ...dartNames(back).map((dart, i): [string, number] => [
      `back_${dart}`,
      total(stretches.back.slice(0, i + 1)),
    ]),
    ['side', total(stretches.back)],
    ...dartNames(front).map((dart, i): [string, number] => [
      `front_${dart}`,
      half - total(stretches.front.slice(0, i + 1)),
    ]),
  ];
  return [
    ...right.map(([name, at]) => [`right_${name}`, at] as const),
    ['center_front', half],
    ...right.map(([name, at]) => [`left_${name}`, 2 * half - at] as const),
  ];
}

describe.each(everyResult({}))('the waistband of %s', (_, result) => {
  const { range } = result;

  it('is the body waist and its ease plus 3 cm of underlap; 1 cm more of the skirt is eased in', () => {
    for (const { label, draft } of draftedSizes(range)) {
      const band = pieceOf(result, label, 'waistband');
      const x = (name: string) => pointOf(band, name).x;
      // Waist ease 1 cm, band ease 1 cm and underlap 3 cm are common practice, no source.
      const finished = (draft.body.get('waist_girth') ?? NaN) + 10;
      expect(x('left_center_back') - x('right_center_back')).toBeCloseTo(finished, 6);
      expect(x('overlap_top') - x('underlap_top')).toBeCloseTo(finished + 30, 6);
      const half = ['front', 'back'].map((name) =>
        total(chords(pieceOf(result, label, name), 'waist')),
      );
      expect(2 * total(half)).toBeCloseTo(finished + 10, 3);
    }
  });

  it('meets center, side and every dart of the skirt edge with its ease spread evenly', () => {
    for (const { label } of range.sizes) {
      const band = pieceOf(result, label, 'waistband');
      const places = walked(pieceOf(result, label, 'front'), pieceOf(result, label, 'back'));
      const edge = 2 * (places.find(([name]) => name === 'center_front')?.[1] ?? NaN);
      // The band stretched by 1 cm is the edge.
      const stretch = edge / (edge - 10);
      for (const [name, at] of places)
        expect(Math.abs(stretch * pointOf(band, name).x - at)).toBeLessThan(1e-3);
      const notches = band.plan.pointNames.filter((name) => /^(left|right|center)_/.test(name));
      expect(notches.toSorted()).toEqual(places.map(([name]) => name).toSorted());
    }
  });

  it('is 6 cm high, folded in the middle, and grades along its length alone', () => {
    for (const { label } of range.sizes) {
      const band = pieceOf(result, label, 'waistband');
      const heights = new Map(band.plan.pointNames.map((name) => [name, pointOf(band, name).y]));
      const [fold] = band.plan.marks;
      expect(fold?.name).toBe('fold-line');
      for (const name of fold?.through ?? []) expect(heights.get(name)).toBeCloseTo(30, 9);
      expect([...new Set(heights.values())].toSorted((a, b) => a - b)).toEqual([0, 30, 60]);
      for (const name of band.plan.pointNames)
        expect(movesOf(range.rules.moves, result, label, 'waistband', name).y).toBe(0);
      for (const name of ['underlap_top', 'underlap_waist', 'right_center_back'])
        expect(movesOf(range.rules.moves, result, label, 'waistband', name).x).toBeCloseTo(0, 9);
    }
  });

  it('is cut once of cloth and once of interfacing', () => {
    const { plan } = pieceOf(result, range.base, 'waistband');
    expect(plan.part).toBe('waistband');
    expect(plan.cuttings).toEqual([
      { cloth: 'shell', count: 1, onFold: false },
      { cloth: 'interfacing', count: 1, onFold: false },
    ]);
  });

  it('is found to fit in every size', () => {
    const { findings } = result;
    for (const [check, seam] of [
      ['seam-lengths', 'waist and band'],
      ['notch-to-notch', 'waist and band'],
      ['seam-lengths', 'inside and outside of the band'],
    ]) {
      const found = findings.filter((own) => own.check === check && own.subject === seam);
      expect(found.map(({ severity }) => severity)).toEqual(range.sizes.map(() => 'ok'));
    }
  });
});

// College rule sheet of makingfashion.blogspot.com (2008-06): a step of 5 cm in the waist, none in
// the length; the same step in the hip is assumed. The band grows by the step, its height by none.
it('a step of 5 cm makes the band 5 cm longer and no higher', () => {
  const sizes = ['8', '10', '12', '14', '16'];
  const row = (first: number): readonly number[] => sizes.map((_, i) => first + 5 * i);
  const chart = chartText('cm', { waist_girth: row(60), hip_girth: row(86) }, sizes);
  const result = gradeLazily({ chart, base: '12', style: 'shared-drop' });
  sizes.forEach((size, i) => {
    const { moves } = result.range.rules;
    const end = movesOf(moves, result, size, 'waistband', 'left_center_back');
    expect(end.x).toBeCloseTo(50 * (i - 2), 6);
    expect(end.y).toBe(0);
  });
});

it('fits whatever the ease, the underlap and the height of the band', () => {
  const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(mm(0, 50), mm(0, 80), mm(10, 100), mm(-100, 150), (ease, underlap, high, waist) => {
      const set = {
        band_ease: `${ease} mm`,
        underlap: `${underlap} mm`,
        band_height: `${high} mm`,
        waist_ease: `${waist} mm`,
        hip_ease: '20 cm',
      };
      const chart = chartText('mm', { waist_girth: [600, 900], hip_girth: [900, 1160] });
      const result = gradeLazily({ chart, base: '1', style: 'shared-drop', set });
      [600, 900].forEach((girth, i) => {
        const band = pieceOf(result, `${i + 1}`, 'waistband');
        const edge = ['front', 'back'].map((name) =>
          total(chords(pieceOf(result, `${i + 1}`, name), 'waist')),
        );
        expect(2 * total(edge)).toBeCloseTo(girth + waist + ease, 3);
        const { x, y } = pointOf(band, 'left_center_back');
        expect(x).toBeCloseTo(girth + waist, 6);
        expect(y).toBeCloseTo(2 * high, 9);
        expect(pointOf(band, 'underlap_top').x).toBeCloseTo(-underlap, 9);
      });
      const found = result.findings.filter(({ subject }) => subject.endsWith(' band'));
      expect(found.map(({ severity }) => severity)).toEqual(Array<string>(6).fill('ok'));
    }),
    { numRuns: runs(3, 50) },
  );
});

describe('a band that does not fit', () => {
  const result = gradedOnce({ ...DEMO, style: 'shared-drop' });

  // Common practice, no source: 1 mm is eased in unseen, 1/8 in is adequate for many sewers.
  it.each([
    ['overlap_top', 'seam-lengths', 'inside and outside of the band'],
    ['right_side', 'notch-to-notch', 'waist and band'],
  ])('is told at %s by %s, the graver the more it is off', (point, check, seam) => {
    const severities = (by: number) =>
      seamFindings(result, withMoved(result.range, 'waistband', point, { x: by, y: 0 }))
        .filter((own) => own.check === check && own.subject === seam)
        .map(({ severity }) => severity);
    const all = (severity: string) => result.range.sizes.map(() => severity);
    expect(severities(0.09)).toEqual(all('ok'));
    expect(severities(0.11)).toEqual(all('note'));
    expect(severities(-1.1)).toEqual(all('warning'));
    expect(severities(-3.1)).toEqual(all('fail'));
  });
});
