import { describe, expect, it } from 'vitest';
import { chartNotes } from '../../src/check/chart-notes';
import { readChart } from '../../src/chart/read-chart';
import { CANONICAL, chartOf } from '../chart/charts';

describe('chartNotes', () => {
  it('has nothing to say about the canonical form', () => {
    expect(chartNotes(readChart(CANONICAL, 'chart.csv'))).toEqual([]);
  });

  it.each([
    ['skirt lenght', 'warning'],
    ['Finished length', 'warning'],
    ['Length', 'note'],
    ['hem width', 'warning'],
    ['hem_girth', 'warning'],
    ['Sleeve length', 'note'],
    ['Back waist length', 'note'],
  ])('tells a row "%s" as a %s', (label, severity) => {
    const notes = chartNotes(
      chartOf('# unit: cm', `size,Waist,hip_girth,${label}`, 'M,70,96,60', 'S,66,92,58'),
    );
    const found = notes.filter(({ check }) => check === 'unknown-row' || label === 'Length');
    expect(found.at(-1)?.severity).toBe(severity);
  });

  it('says how a chart was understood', () => {
    const notes = chartNotes(
      chartOf(
        '# unit: cm',
        'size,Waist,hip_girth,High hip,Sleeve',
        'L,76,102,,60',
        'M,70,96,88,60',
        'S,66,92,?,60',
      ),
    );
    expect(notes.map(({ check, subject }) => [check, subject])).toEqual([
      ['layout', 'chart.csv'],
      ['size-order', 'chart.csv'],
      ['read-as', 'waist_girth'],
      ['read-as', 'high_hip_girth'],
      ['incomplete-row', 'high_hip_girth'],
      ['unknown-row', 'sleeve'],
    ]);
    expect(notes.map(({ message }) => message).join('\n')).toMatch(
      /"Waist"[^]*"High hip"[^]*size S, L[^]*"Sleeve"/,
    );
    for (const note of notes) {
      expect(note).toMatchObject({
        ...{ severity: 'note', quantity: 'number', source: "the engine's own rule" },
        ...{ size: '', piece: '' },
      });
    }
  });
});
