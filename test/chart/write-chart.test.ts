import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readChart } from '../../src/chart/read-chart';
import { findRow } from '../../src/chart/size-chart';
import { writeChart } from '../../src/chart/write-chart';
import type { LengthUnit } from '../../src/units';
import { fromMillimeters, trimmed } from '../../src/units';
import { CANONICAL, chartOf, expectSameMeaning } from './charts';
import { runs } from '../samples';

describe('writeChart', () => {
  it('writes the canonical form', () => {
    expect(writeChart(readChart(CANONICAL, 'chart.csv'))).toBe(CANONICAL);
  });

  it('brings any chart into the canonical form', () => {
    const chart = chartOf(
      'Skirts; "spring"',
      'Size;Waist (cm);Hips;High hip;Remarks, if any;#',
      'L;76,25;102;;"tight, ""very""";3',
      'M;70;96;?;;4',
    );
    expect(writeChart(chart)).toBe(
      [
        '# unit: cm',
        '# Skirts, spring',
        'measurement,M,L',
        'waist_girth,70,76.25',
        'hip_girth,96,102',
        'high_hip_girth,?,',
        '"Remarks, if any",,"tight, ""very"""',
        ',4,3',
        '',
      ].join('\n'),
    );
  });

  it('writes in another unit', () => {
    const chart = readChart(CANONICAL, 'chart.csv');
    const cm = writeChart(chart, 'cm');
    expect(cm).toContain('# unit: cm\n');
    expect(cm).toContain('# not read: rounded from in to millimeters: ');
    expect(cm).toContain('waist_girth,63.5,67.3,71.1\n');
    expect(writeChart(readChart(cm, 'chart.csv'), 'mm')).toContain('waist_girth,635,673,711\n');
    // 673 / 25.4 = 26.496, of which the nearest sixteenth is 26 8/16; 711 / 25.4 = 27.992.
    expect(writeChart(readChart(cm, 'chart.csv'), 'in')).toContain('waist_girth,25,26 1/2,28\n');
  });
});

describe('what was written', () => {
  const unit = fc.constantFrom<LengthUnit>('in', 'cm', 'mm');
  const cell = fc.oneof(
    fc.string(),
    fc.constantFrom('', '12', '3/4', 'wool', '"', 'a,b', 'a\nb', '#', '5 cm'),
  );
  const label = fc.string({ minLength: 1 }).map((text) => `x ${text}`);
  const chart = fc
    .record({
      unit,
      size: fc.uniqueArray(fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9 .,;"/-]{0,5}$/), {
        minLength: 2,
        maxLength: 6,
        selector: (text) => text.trim(),
      }),
      start: fc.double({ min: 600, max: 700, noNaN: true }),
      step: fc.double({ min: 0, max: 60, noNaN: true }),
      cells: fc.array(cell, { minLength: 6, maxLength: 6 }),
      title: fc.string(),
      label,
      reversed: fc.boolean(),
    })
    .map(({ size, start, step, reversed, ...rest }) => {
      const sizes = reversed ? size.toReversed() : size;
      const waists = sizes.map((_, i) => start + step * (reversed ? sizes.length - i : i));
      const number = (mm: number) => trimmed(fromMillimeters(mm, rest.unit), 12);
      const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`;
      return [
        `# unit: ${rest.unit}`,
        `# ${rest.title.replaceAll(/[\r\n]/g, ' ')}`,
        ['measurement', ...sizes.map(quoted)].join(','),
        ['Waist', ...waists.map(number)].join(','),
        ['hips', ...waists.map((waist) => number(waist + 250))].join(','),
        [rest.label, ...rest.cells.slice(0, sizes.length)].map(quoted).join(','),
        ['thigh', ...sizes.map(() => '')].join(','),
      ].join('\n');
    })
    // A random comment may state a unit, and a random cell may hold a line that is a comment.
    .filter((text) => !/# units?\s*[:=].*\n# units?\s*[:=]/i.test(text));

  it('is read as the same chart, and written again as the same text', () => {
    fc.assert(
      fc.property(chart, (text) => {
        const first = readChart(text, 'chart.csv');
        const written = writeChart(first);
        const second = readChart(written, 'chart.csv');
        expectSameMeaning(second, first);
        expect(second.unit).toBe(first.unit);
        expect(second.comments).toEqual(first.comments);
        expect(second.rows[2]?.cells).toEqual(first.rows[2]?.cells);
        expect(writeChart(second)).toBe(written);
      }),
      { numRuns: runs(100) },
    );
  });

  it('is the same in every unit, to half of what its tape shows where that is another', () => {
    fc.assert(
      fc.property(chart, unit, (text, other) => {
        const first = readChart(text, 'chart.csv');
        const second = readChart(writeChart(first, other), 'chart.csv');
        const isOther = (first.unit === 'in') !== (other === 'in');
        const slack = isOther ? (other === 'in' ? 25.4 / 32 : 0.5) : 0;
        for (const name of ['waist_girth', 'hip_girth']) {
          const values = findRow(second, name)?.values ?? [];
          for (const [index, mm] of (findRow(first, name)?.values ?? []).entries()) {
            expect(Math.abs((values[index] ?? 0) - (mm ?? 0))).toBeLessThan(slack + 1e-9);
          }
        }
      }),
    );
  });
});
