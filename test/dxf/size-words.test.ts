/** Labels of sizes as words of the rule table, which parts them by blanks. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readRuleTable, sizeWords, writeRuleTable } from '../../src/dxf/rule-table';
import { dxfFiles } from '../../src/files/dxf-files';
import { gradeChart } from '../../src/jobs/grade-chart';
import { gradePattern } from '../../src/jobs/grade-pattern';
import { tableNumber, trimmed } from '../../src/units';
import { dxfNumber } from '../../src/dxf/entities';
import { chartText } from '../skirts';

describe('sizes in a rule table', () => {
  it('stay apart where their words would be alike', () => {
    expect(sizeWords(['EU 38', 'EU_38', 'EU  38', '40'])).toEqual([
      'EU_38_2',
      'EU_38',
      'EU_38_3',
      '40',
    ]);
  });

  it('stay apart whatever their labels are, and read back', () => {
    const label = fc.string({ unit: fc.constantFrom(...'a1_ ,2'), minLength: 1, maxLength: 5 });
    const labels = fc.uniqueArray(
      label.filter((text) => text.trim() === text),
      { minLength: 1, maxLength: 8 },
    );
    fc.assert(
      fc.property(labels, (sizes) => {
        const words = sizeWords(sizes);
        const sample = sizes[0] ?? '';
        const text = writeRuleTable({ name: 'x', sizes, sample, rules: new Map() });
        expect(readRuleTable(text, 'x.rul')).toMatchObject({ sizes: words, sample: words[0] });
      }),
    );
  });

  it('go out into a drawing and come back, as many as they were', () => {
    const chart = chartText('in', { waist_girth: [25, 26, 27], hip_girth: [35, 36, 37] }, [
      'EU 38',
      'EU_38',
      'EU,38',
    ]);
    const result = gradeChart({ chart: chart.replace('EU,38', '"EU,38"'), base: 'EU 38' });
    const texts = new Map(dxfFiles(result).files.map(({ name, text }) => [name, text]));
    const named = (file: string) => ({ file, text: texts.get(file) ?? '' });
    const back = gradePattern({ pattern: named('pattern.dxf'), rules: named('pattern.rul') });
    expect(back.range.sizes).toHaveLength(3);
    expect(back.range.base).toBe('EU_38_2');
  });
});

describe('a number that is not finite', () => {
  it.each([NaN, Infinity, -Infinity])('%d is never written', (value) => {
    expect(() => trimmed(value, 3)).toThrow(RangeError);
    expect(() => tableNumber(value, 'in')).toThrow(RangeError);
    expect(() => dxfNumber(value)).toThrow(RangeError);
  });
});
