import { describe, expect, it } from 'vitest';
import { gradeChart } from '../../src/index';
import { CANONICAL } from '../chart/charts';
import { expectRefusal } from '../expect-refusal';

describe('a chart that asks for what a chart does not decide', () => {
  const graded = (line: string, style?: string) => () =>
    gradeChart({ chart: `${line}\n${CANONICAL}`, base: '12', ...(style ? { style } : {}) });

  it('is refused with its seam allowance', () => {
    for (const line of ['# seam allowance: 1 in', '# allowances 1 cm'])
      expectRefusal(graded(line), 'bad-option', { file: 'chart', row: 1 }, 'side_allowance');
  });

  it('is refused with another base than its own line says', () => {
    for (const line of ['# base: 10', 'base size 10'])
      expectRefusal(
        graded(line),
        'rule-contradicted',
        { file: 'chart', row: 1, field: 'base' },
        '10',
      );
    for (const line of ['# base: 12', '# base: size 12', '# base: 12.0'])
      expect(graded(line)).not.toThrow();
  });

  it('is refused with a style that is not asked for', () => {
    for (const line of ['# style: pencil', '# based on shared drop', 'style,Straight'])
      expectRefusal(graded(line), 'bad-option', { file: 'chart', row: 1, field: 'style' });
    expect(graded('# style: straight', 'straight')).not.toThrow();
    expect(graded('# based on: the table of 1968')).not.toThrow();
    expect(graded('# style: shared-pencil')).not.toThrow();
  });
});
