import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/check/finding';
import { ruleFinding } from '../../src/check/finding';
import { gradeChart } from '../../src/jobs/grade-chart';
import { REMEDIES } from '../../src/verdict/remedies';
import { sizeWords, sizesAt } from '../../src/verdict/size-words';
import { verdictOf } from '../../src/verdict/verdict';
import { countWords, decisionLines, verdictLine } from '../../src/verdict/words';

const SIZES = ['2', '4', '6', '8', '10'];
const CM = { unit: 'cm', fractions: false } as const;

function finding(severity: Finding['severity'], check: string, more: Partial<Finding>): Finding {
  return { ...ruleFinding(severity, check, {}, 'said'), ...more };
}

function textsOf(...findings: readonly Finding[]): readonly string[] {
  return verdictOf(findings, SIZES, CM).decisions.map(({ text }) => text);
}

describe('sizes', () => {
  it.each([
    [['6', '8', '10'], 'Size 6 and up'],
    [['2', '4'], 'Up to size 4'],
    [['4'], 'Size 4'],
    [['2', '6', '8', '10'], 'Sizes 2, 6 to 10'],
    [['2', '10'], 'Sizes 2, 10'],
    [SIZES, 'All sizes'],
  ])('%j is %s', (sizes, words) => {
    expect(sizeWords(sizes, SIZES)).toBe(words);
  });

  it('of a place may be a label with a hyphen, a step or the whole range', () => {
    expect(sizesAt('4-8', SIZES)).toEqual(['4', '6', '8']);
    expect(sizesAt('', SIZES)).toEqual(SIZES);
    expect(sizesAt('S-M', ['XS', 'S-M', 'L-XL'])).toEqual(['S-M']);
    expect(sizesAt('S-M-L-XL', ['XS', 'S-M', 'L-XL'])).toEqual(['S-M', 'L-XL']);
  });
});

describe('the verdict', () => {
  it('is to mend, to decide or to cut, and notes decide nothing', () => {
    const fail = finding('fail', 'cut-line', { piece: 'front' });
    const warning = finding('warning', 'turn-up', { piece: 'front', measured: 3, expected: 0 });
    const note = finding('note', 'grade-break', {});
    const kinds = [[fail, warning], [warning, note], [note]].map((own) =>
      verdictOf(own, SIZES, CM),
    );
    expect(kinds.map(({ kind }) => kind)).toEqual(['mend', 'decide', 'cut']);
    expect(kinds.map((own) => verdictLine(own))).toEqual([
      'Mend first: 1 thing to mend, 1 decision to make.',
      'Decide first: nothing failed, 1 decision to make.',
      'Can be cut: nothing failed, and nothing is left to decide.',
    ]);
    expect(kinds.map(countWords).at(1)).toBe('Findings: 0 fail, 1 warning, 1 note, 0 ok');
  });

  it('tells the same remedy once, with its sizes and the range of its numbers', () => {
    const turn = (size: string, measured: number): Finding =>
      finding('warning', 'turn-up', {
        ...{ size, piece: 'front', quantity: 'length', measured, expected: 0 },
      });
    expect(textsOf(turn('6', 2), turn('8', 4), turn('10', 3))).toEqual([
      'Size 6 and up: shape the hem allowance of front by hand: folded up it misses by 0.4 cm (5/32 in).',
    ]);
  });

  it('names the break where a panel wants another number of darts', () => {
    expect(
      textsOf(
        finding('warning', 'dart-number', {
          ...{ size: '8-10', piece: 'back', subject: 'back_intake' },
          facts: { darts: 'two darts', setting: 'set back_darts=2', breaks: 'between 6 and 8' },
        }),
      ),
    ).toEqual([
      'Size 8 and up: the back wants two darts in each half; split the range between 6 and 8, or ' +
        'set back_darts=2.',
    ]);
  });

  it('joins what hand truing mends, and keeps apart what it does not', () => {
    const texts = textsOf(
      finding('warning', 'closed-waist', { size: '2', piece: 'front, back' }),
      finding('warning', 'edge-over-dart', { size: '4', piece: 'front' }),
      finding('warning', 'corners-across-seam', { size: '2', subject: 'side at front.side_hem' }),
      finding('warning', 'dart-axis', { size: '2', piece: 'front', subject: 'dart' }),
    );
    expect(texts).toEqual([
      'Up to size 4: true the edges by hand before you cut: fold the darts, join the sides and draw ' +
        'waist and hem through without corners.',
      'Size 2: move tip and legs of dart on front together.',
    ]);
  });

  it('counts the seams that a slip opens to the slip, and no others', () => {
    const seam = (subject: string): Finding =>
      finding('fail', 'seam-lengths', {
        ...{ size: '10', piece: `front, ${subject}`, subject, quantity: 'length' },
        ...{ measured: 100, expected: 105 },
      });
    const slip = finding('fail', 'wrong-sign', {
      ...{ size: '8', piece: 'front', subject: 'side_hip', explains: ['side'] },
    });
    const { decisions } = verdictOf([seam('side'), seam('yoke'), slip], SIZES, CM);
    expect(decisions.map(({ text }) => text)).toEqual([
      'Size 8 and up: turn the sign of the rule of front side_hip.',
      'Size 10: mend the base or the rules of front, yoke: the seam yoke is up to 0.5 cm (3/16 in) apart.',
    ]);
    expect(decisions.map(({ findings }) => findings.length)).toEqual([2, 1]);
  });

  it('makes one decision of one row of the chart, and one of rounding', () => {
    const texts = textsOf(
      finding('fail', 'larger-is-smaller', { size: '4-6', subject: 'hip_girth' }),
      finding('warning', 'uneven-steps', { size: '8-10', subject: 'hip_girth' }),
      finding('warning', 'seam-lengths', { size: '4', subject: 'side', byRounding: true }),
      finding('warning', 'finished-girth', { size: '2', subject: 'hip', byRounding: true }),
    );
    expect(texts).toEqual([
      'Size 4 and up: hold the row hip_girth of the chart against its source: larger sizes get smaller.',
      'Up to size 4: take a smaller step of rounding, or let the sewer ease in what it leaves.',
    ]);
  });

  it('tells five decisions and counts the rest', () => {
    const many = ['a', 'b', 'c', 'd', 'e', 'f', 'g'].map((piece) =>
      finding('warning', 'step-turns', { size: '4', piece, subject: 'hem' }),
    );
    const lines = decisionLines(verdictOf(many, SIZES, CM), 'in findings.csv');
    expect(lines).toHaveLength(6);
    expect(lines.at(-1)).toBe('And 2 more, in findings.csv.');
  });
});

describe('the table of remedies', () => {
  it('has a line for every check that the sources name', () => {
    const sources = ['src/check', 'src/dxf'].flatMap((folder) =>
      readdirSync(folder).map((name) => readFileSync(join(folder, name), 'utf8')),
    );
    const named = sources.flatMap((text) =>
      [...text.matchAll(/\b(?:check: |CHECK = |note\((?:table, )?)'([a-z-]+)'/gu)].map(
        ([, check]) => check ?? '',
      ),
    );
    expect(named.length).toBeGreaterThan(60);
    expect([...new Set(named)].filter((check) => REMEDIES[check] === undefined)).toEqual([]);
  });

  it('fills every brace for the demo in both styles', () => {
    const chart = readFileSync('size-charts/demo.csv', 'utf8');
    for (const style of ['pencil', 'shared-pencil']) {
      const { findings, range, display } = gradeChart({ chart, base: '12', style });
      const labels = range.sizes.map(({ label }) => label);
      const { decisions } = verdictOf(findings, labels, display);
      const texts = decisions.map(({ text }) => text);
      expect(texts.length).toBeGreaterThan(0);
      expect(texts.length).toBeLessThanOrEqual(5);
      for (const text of texts) expect(text).not.toMatch(/[{}]|NaN|undefined/u);
    }
  });
});
