import { expect, it } from 'vitest';
import { pieceRules } from '../../../src/study/explain/piece-rules';
import { STYLE_NAMES } from '../../styles';
import { gradeLazily } from '../../graded';

const BODIES = {
  waist_girth: [26, 28, 31],
  hip_girth: [36, 38, 40.5],
  waist_to_hip: [7.75, 8, 8.25],
  skirt_length: [24, 24.5, 25],
  knee_height: [17.5, 18, 18.5],
};

const CHART = [
  ...['# unit: in', 'measurement,1,2,3'],
  ...Object.entries(BODIES).map(([name, values]) => `${name},${values.join(',')}`),
].join('\n');

/** `1/8 hip - 0.5 waist_to_hip` worked out for what each measurement grows from size 2 to 3, in inches. */
function worked(rule: string): number {
  const terms = [...rule.matchAll(/([+-]?) ?(?:(\d[\d./]*) )?([a-z]\w*)/gu)];
  expect(rule === '0' || terms.length > 0, rule).toBe(true);
  return terms.reduce((sum, [, sign, share = '1', name = '']) => {
    const [top, bottom = '1'] = share.split('/');
    const row = Object.entries(BODIES).find(([own]) => own === name || own === `${name}_girth`);
    const growth = (row?.[1][2] ?? NaN) - (row?.[1][1] ?? NaN);
    return sum + ((sign === '-' ? -1 : 1) * Number(top) * growth) / Number(bottom);
  }, 0);
}

it.each(STYLE_NAMES)('of %s, read back and worked out, give what the drafts give', (style) => {
  const result = gradeLazily({ chart: CHART, base: '2', style });
  const { plans, exactRules } = result.range;
  const rules = pieceRules(result);
  expect(rules.length).toBeGreaterThan(12);
  for (const { piece, point, dx, dy } of rules) {
    const p = plans.findIndex(({ name }) => name === piece);
    const moved = exactRules.moves[2]?.[p]?.[plans[p]?.index.get(point) ?? -1];
    for (const [rule, mm] of [
      [dx, moved?.x],
      [dy, moved?.y],
    ] as const) {
      // Rules that bend come near over one size; the others have four digits.
      const near = rule.startsWith('~') ? 0.02 : 0.0005;
      expect(Math.abs(worked(rule) - (mm ?? NaN) / 25.4), `${piece}.${point} ${rule}`).toBeLessThan(
        near,
      );
    }
  }
});
