/** Options as they are typed: lists, and how much of a wrong value a message repeats. */
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { list } from '../../src/cli/options';
import { chartText } from '../skirts';
import { workplace } from './workplace';

const place = workplace();
const LABELS = ['S, tall', 'M "wide"', 'L'];
place.write(
  'chart.csv',
  chartText('in', { waist_girth: [25, 26, 27], hip_girth: [35, 36, 37] }, LABELS.map(quoted)),
);

function quoted(label: string): string {
  return `"${label.replaceAll('"', '""')}"`;
}

describe('a list', () => {
  it('of quoted parts is what csv-parse reads of it', () => {
    fc.assert(
      fc.property(fc.array(fc.stringMatching(/^[a-z,"]{0,5}$/), { minLength: 1 }), (parts) => {
        const text = parts.map(quoted).join(',');
        expect(list(text)).toEqual(parts);
        expect([list(text)]).toEqual(parse(text));
      }),
    );
  });

  it('of plain parts is parted at the commas', () => {
    expect(list('8, 10 ,12')).toEqual(['8', '10', '12']);
    expect(list('8,')).toEqual(['8', '']);
    expect(list('')).toEqual(['']);
    // A quote within a part, such as the mark of inches, is no more than a sign.
    expect(list('roll=36",a4')).toEqual(['roll=36"', 'a4']);
    expect(list('"8" inch,10')).toEqual(['"8" inch', '10']);
  });

  it('picks a size that has a comma in its label', async () => {
    const args = ['grade', 'chart.csv', '--base', 'L', '--sizes', '"S, tall",L', '--out', 'picked'];
    const { status, stdout } = await place.run(...args);
    expect(status).toBe(0);
    expect(stdout.replace(/\s+/gu, ' ')).toContain('2 size-<label>.svg');
  });
});

describe('a message', () => {
  it('does not repeat more of a wrong value than tells what is wrong', async () => {
    const long = 'x'.repeat(5_000);
    for (const args of [
      ['--base', long],
      ['--base', 'L', '--sizes', Array.from({ length: 4_000 }, (_, i) => `n${i}`).join(',')],
      ['--base', 'L', '--style', long],
      ['--base', 'L', '--set', `hip_ease=${long}`],
      ['--base', 'L', '--set', `${long}=1`],
      ['--base', 'L', '--stack', long],
      ['--base', 'L', '--unit', long],
      ['--base', 'L', `--${long}`],
    ]) {
      const { status, stderr } = await place.run('grade', 'chart.csv', ...args, '--out', 'none');
      expect(status, args.join(' ').slice(0, 40)).toBe(2);
      expect(stderr.length, stderr.slice(0, 80)).toBeLessThan(2_500);
    }
  });
});
