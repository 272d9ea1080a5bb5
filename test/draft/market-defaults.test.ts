/** The defaults of both markets against a table typed by hand: common practice, no source. */
import { describe, expect, it } from 'vitest';
import { presetSettings } from '../../src/draft/presets';
import { marketValue } from '../../src/draft/market-value';
import { defaultOf } from '../../src/draft/styles';
import { measureOf, resultFiles, STYLES } from '../../src/index';
import { chartText } from '../skirts';
import { gradeLazily } from '../graded';

// Home pattern envelopes print seams of 5/8 in as 1.5 cm, and hems of 2 in as 5 cm.
const HOME = {
  side_allowance: ['1.5 cm', '5/8 in'],
  waist_allowance: ['1.5 cm', '5/8 in'],
  vent_allowance: ['1.5 cm', '5/8 in'],
  band_allowance: ['1.5 cm', '5/8 in'],
  hem_allowance: ['5 cm', '2 in'],
  facing_edge_allowance: ['1 cm', '3/8 in'],
  lining_hem_allowance: ['3 cm', '1 1/4 in'],
};
const INDUSTRY = {
  side_allowance: ['1 cm', '3/8 in'],
  hem_allowance: ['3 cm', '1 1/4 in'],
  zip_allowance: ['2 cm', '3/4 in'],
  facing_edge_allowance: ['6 mm', '1/4 in'],
  lining_hem_allowance: ['2 cm', '3/4 in'],
};
const SHAPED = { zip_allowance: ['2 cm', '3/4 in'], zip_step: ['2 cm', '1 in'] };

const pair = (value: Parameters<typeof marketValue>[0]): readonly string[] => [
  marketValue(value, 'cm'),
  marketValue(value, 'in'),
];

describe.each(STYLES.map((style) => [style.name, style] as const))('%s', (name, style) => {
  const own = new Map(style.block.parameters.map((p) => [p.name, defaultOf(style, p).value]));

  it('has allowances as they are sold in each market', () => {
    const isShaped = name.startsWith('shared') || name === 'fixed-dart';
    const wanted = { ...HOME, ...(isShaped ? SHAPED : {}) };
    for (const [parameter, values] of Object.entries(wanted))
      expect([parameter, pair(own.get(parameter) ?? '')]).toEqual([parameter, values]);
  });

  it('has no length that is round in the other market alone', () => {
    for (const value of own.values()) {
      const [metric = '', inch = ''] = pair(value);
      if (/^-?[\d.]+ (cm|mm)$/u.test(metric)) expect(inch).toMatch(/^-?[\d /]+ in$|^0 cm$/u);
    }
  });
});

it('are as narrow as in a factory where that is asked for', () => {
  const settings = new Map(presetSettings('industry').map((s) => [s.parameter, s.value]));
  for (const [parameter, values] of Object.entries(INDUSTRY))
    expect([parameter, pair(settings.get(parameter) ?? '')]).toEqual([parameter, values]);
});

describe('a skirt', () => {
  const metric = chartText('cm', { waist_girth: [70, 74], hip_girth: [96, 100] });
  const inch = chartText('in', { waist_girth: [27.5, 29], hip_girth: [38, 39.5] });
  const millimeters = chartText('mm', { waist_girth: [700, 740], hip_girth: [960, 1000] });
  const graded = (chart: string, unit: 'in' | 'cm' | undefined = undefined) =>
    gradeLazily({ chart, base: '1', style: 'shared-drop', ...(unit && { unit }) });

  it.each([
    // A hip line at 20.5 cm less 0.5 and 2 asks for 18 cm; at 8 in less 1/4 and 3/4 for 7 in.
    ['cm', metric, 180, 15, 'a zip of 18 cm (7 in) ends 2 cm above the hip line'],
    ['mm', millimeters, 180, 15, 'a zip of 180 mm (7 in) ends 20 mm above the hip line'],
    ['in', inch, 7 * 25.4, 15.875, 'a zip of 7 in (18 cm) ends 0.75 in above the hip line'],
  ])('by a chart in %s has zip and seams of its market', (_, chart, zip, side, words) => {
    const { range, findings } = graded(chart);
    for (const size of range.sizes) {
      expect(measureOf(size, 'zip_length')).toBeCloseTo(zip, 9);
      expect(size.parameters.get('side_allowance')).toBeCloseTo(side, 9);
    }
    const zips = findings.filter(({ check }) => check === 'zip-length');
    expect(zips.map(({ message }) => message)).toEqual([words, words]);
  });

  it('follows the unit of its chart, whatever unit is shown', () => {
    const [shown, plain] = [graded(metric, 'in'), graded(metric)];
    expect(shown.range.sizes.map(({ pieces }) => pieces)).toEqual(
      plain.range.sizes.map(({ pieces }) => pieces),
    );
    const [zip] = shown.findings.filter(({ check }) => check === 'zip-length');
    expect(zip?.message).toContain('a zip of 7 in (18 cm) ends');
  });

  it.each([
    ['cm', metric, '1.5 cm (5/8 in): waist', 'ZIP ALLOWANCE 2 cm (3/4 in)'],
    ['in', inch, '5/8 in (1.5 cm): waist', 'ZIP ALLOWANCE 3/4 in (2 cm)'],
  ])('by a chart in %s says both on its pieces', (_, chart, seams, zip) => {
    const result = gradeLazily({ chart, base: '1', style: 'shared-drop' });
    const nest = resultFiles(result).find(({ name }) => name === 'nest.svg')?.text ?? '';
    expect(nest).toContain(seams);
    const net = gradeLazily({ chart, base: '1', style: 'shared-drop', lines: 'net' });
    expect(resultFiles(net).find(({ name }) => name === 'nest.svg')?.text).toContain(zip);
    const said = [...nest.matchAll(/<text[^>]*>([^<]*)/gu)].map(([, words]) => words).join('; ');
    expect(said).not.toMatch(/\d\.\d\d/u);
  });
});
