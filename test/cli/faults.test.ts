/** What the terminal is told, whatever is in files, in the call, or went wrong. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { faultMessage, streamFaultMessage } from '../../src/cli/fault';
import { chartText } from '../skirts';
import { workplace, typed } from './workplace';

const place = workplace();
const CHART = chartText('in', { waist_girth: [25, 26], hip_girth: [35, 36] }, ['8', '10']);
/** What would color, clear, ring or turn around. */
const UNSEEN = ['\u001b[31m', '\u001b[2J', '\u0007', '\u009b31m', '\u202e'];

describe('a fault', () => {
  it.each([
    [new RangeError('Maximum call stack\n  size exceeded'), 'RangeError: Maximum call stack size'],
    ['text', 'text'],
    [new Error('\u001b[31m'), 'Error: \\u001B[31m'],
    [new Error('x'.repeat(10_000)), 'Error: xxx'],
  ])('is one line that says where to report it', (error, words) => {
    const message = faultMessage(error);
    expect(message).toMatch(
      /^skirtgrade: a fault of this program \([^\n]{1,420}\)\. Please report it[^\n]*\.\n$/,
    );
    expect(message).toContain(words);
    expect(message).not.toContain('\n    at ');
    expect(streamFaultMessage(error, undefined)).toMatch(/^skirtgrade: [^\n]*\n$/);
  });
});

describe('the terminal', () => {
  it.each(UNSEEN)('shows the codes in place of an argument with %j', async (text) => {
    for (const args of [
      ['check', `${text}.csv`],
      [`--${text}`],
      ['grade', 'a.csv', '--base', text, '--set', `x=${text}`],
    ]) {
      const { status, stdout, stderr } = await place.run(...args);
      expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
      expect(stderr).toMatch(/^skirtgrade: argument \d of the call has a control [^\n]*\n$/);
      expect(stderr).not.toContain(text);
    }
  });

  it.each(UNSEEN)('shows the codes in place of a file with %j', async (text) => {
    place.write('label.csv', CHART.replace(',8,', `,8${text},`));
    place.write('title.csv', `# title: ${text}\n${CHART}`);
    place.write('style.csv', `parameter,value\nhem_taper,${text}1 in\n`);
    place.write('chart.csv', CHART);
    for (const args of [
      ['check', 'label.csv'],
      ['chart', 'title.csv'],
      typed('grade chart.csv --base 8 --style style.csv'),
    ]) {
      const { status, stdout, stderr } = await place.run(...args);
      expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
      expect(stderr).toContain('has a control or bidirectional character');
      expect(stderr).not.toContain(text);
    }
  });

  it('shows the codes in place of the names of files in the folder of the results', async () => {
    mkdirSync(join(place.path, 'out'));
    place.write('out/size-\u001b[2J.svg', '');
    place.write('chart.csv', CHART);
    const { status, stdout } = await place.run('grade', 'chart.csv', '--base', '8', '--out', 'out');
    expect(status).toBe(0);
    expect(stdout).toContain('size-\\u001B[2J.svg');
    expect(stdout).not.toContain('\u001b');
  });

  it('is told where a drawing has such characters in its words', async () => {
    const dxf = `0\nSECTION\n2\nENTITIES\n0\n\u001b[2J\n0\nENDSEC\n0\nEOF\n`;
    place.write('bad.dxf', dxf);
    place.write('bad.rul', 'UNITS: METRIC\nSIZE LIST: 8 \u001b[2J\nSAMPLE SIZE: 9\n');
    const { status, stderr } = await place.run(...typed('grade --pattern bad.dxf --rules bad.rul'));
    expect(status).toBe(2);
    expect(stderr).not.toContain('\u001b');
  });
});
