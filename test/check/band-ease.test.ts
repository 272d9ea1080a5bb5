import { describe, expect, it } from 'vitest';
import { draftedSizes } from '../../src/grade/graded-pattern';
import { gradeChart } from '../../src/index';
import { chartText } from '../skirts';
import { gradeLazily } from '../graded';

const CHART = chartText('cm', { waist_girth: [64, 68], hip_girth: [91, 95] }, ['S', 'M']);

function found(set: Readonly<Record<string, string>>, style = 'shared-drop') {
  return gradeChart({ chart: CHART, base: 'S', style, set }).findings;
}

const ofBand = (set: Readonly<Record<string, string>>, style?: string) =>
  found(set, style).filter(({ check }) => check === 'band-ease');

describe('the ease of a band', () => {
  it('is 1 cm beyond the body waist, and the skirt edge is 1 cm longer than the band', () => {
    const result = gradeLazily({ chart: CHART, base: 'S', style: 'shared-drop' });
    // Body 64, common practice: 1 cm of ease in the band, 1 to 2 cm of the skirt eased into it.
    const finished = result.range.sizes[0]?.measures ?? [];
    const cm = (name: string) => (finished.find((own) => own.name === name)?.value ?? NaN) / 10;
    expect(cm('waist')).toBeCloseTo(65, 6);
    expect(cm('skirt_waist_edge')).toBeCloseTo(66, 3);
    expect(ofBand({}).map(({ severity }) => severity)).toEqual(['ok', 'ok']);
    expect(ofBand({})[0]?.measured).toBeCloseTo(10, 6);
  });

  it('is warned of where there is none, whatever is eased in', () => {
    for (const set of [{ waist_ease: '0 cm' }, { waist_ease: '0 cm', band_ease: '3 cm' }]) {
      const [first, second] = ofBand(set);
      expect([first?.severity, second?.severity]).toEqual(['warning', 'warning']);
      expect(first?.message).toContain('just as long as the body waist');
    }
    expect(ofBand({ waist_ease: '-1 cm' })[0]?.message).toContain('1 cm shorter than the body');
  });

  it('is not asked for where there is no band', () => {
    expect(ofBand({ waist_finish: '2' })).toEqual([]);
    expect(ofBand({ waist_finish: '0', waist_ease: '0 cm' })).toEqual([]);
    expect(ofBand({}, 'pencil')).toEqual([]);
  });

  it('leaves a facing and a plain edge as long as the finished waist', () => {
    for (const waist_finish of ['0', '2'])
      for (const { draft, measures } of draftedSizes(
        gradeLazily({ chart: CHART, base: 'S', style: 'fixed-dart', set: { waist_finish } }).range,
      )) {
        const waist = measures.find(({ name }) => name === 'waist')?.value ?? NaN;
        expect(waist).toBeCloseTo((draft.body.get('waist_girth') ?? NaN) + 10, 3);
        expect(measures.some(({ name }) => name === 'skirt_waist_edge')).toBe(false);
      }
  });
});
