import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readChart } from '../../src/chart/read-chart';
import { ownFormula } from '../../src/formula/own-formula';
import { plainTree } from '../../src/formula/plain-tree';
import { treeText } from '../../src/formula/tree';
import { draftRange } from '../../src/jobs/draft-range';
import { parseNumberCell } from '../../src/table/number-cell';
import { expectRefusal } from '../expect-refusal';
import { runs } from '../samples';
import { chartText } from '../skirts';
import { STYLE_NAMES } from '../styles';
import { PLACE, formula } from './formulas';

const CHART = chartText(
  'cm',
  { waist_girth: [68, 72], hip_girth: [94, 98], waist_to_hip: [20, 20], skirt_length: [60, 60] },
  ['10', '12'],
);

const { text } = fc.letrec<{ text: string; atom: string }>((tie) => ({
  atom: fc.constantFrom(
    'a',
    'hem.x',
    'base.width',
    '2',
    '0.5',
    '12.25',
    '3 in',
    '1 cm',
    '-2 mm',
    'in',
    'to',
  ),
  text: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    tie('atom'),
    fc
      .tuple(
        tie('text'),
        fc.constantFrom('+', '-', '*', '/', ' + ', ' - ', ' * ', ' '),
        tie('text'),
      )
      .map((parts) => parts.join('')),
    tie('text').map((inner) => `(${inner})`),
    tie('text').map((inner) => `-${inner}`),
    tie('atom').map((inner) => `${inner}^2`),
    tie('text').map((inner) => `sqrt(${inner})`),
    fc.tuple(tie('text'), tie('text')).map((parts) => `max(${parts.join(', ')})`),
  ),
}));

/** The tree that mathjs gives, or undefined where the text is refused. */
function judged(typed: string): unknown {
  try {
    return formula(typed).tree;
  } catch {
    return undefined;
  }
}

describe('a formula of the engine', () => {
  it.each(STYLE_NAMES)('is read of all of %s as mathjs reads it', (style) => {
    const { drafter } = draftRange(readChart(CHART, 'chart.csv'), 0, { style });
    const texts = drafter.definitions.order.flatMap(({ given }) =>
      given.by === 'formula' && parseNumberCell(given.formula.text).kind !== 'number'
        ? [given.formula.text]
        : [],
    );
    expect(texts.length).toBeGreaterThan(30);
    for (const own of texts) expect(plainTree(own), own).toEqual(formula(own).tree);
  });

  it('is read as mathjs reads it, or left to it', () => {
    fc.assert(
      fc.property(text, (typed) => {
        const own = plainTree(typed);
        if (own !== undefined) expect(own).toEqual(judged(typed));
      }),
      { numRuns: runs(300) },
    );
  });

  it('names what it uses in the order of first use', () => {
    expect(ownFormula('b + max(a, 2 in)*b - hem.x', PLACE).names).toEqual(['b', 'a', 'hem.x']);
  });

  it('that is not plain is read by mathjs, and refused by it', () => {
    expect(ownFormula('1/2 in', PLACE).tree).toEqual(formula('1/2 in').tree);
    for (const odd of ['a b', 'log(2)', 'a.z', 'a^b', 'sqrt(2) in', ''])
      expectRefusal(() => ownFormula(odd, PLACE), 'formula-not-allowed', PLACE);
    for (const odd of ['2 +', '(a'])
      expectRefusal(() => ownFormula(odd, PLACE), 'formula-malformed', PLACE);
  });

  it('as text is the same formula, with the parentheses it needs', () => {
    expect(treeText(formula('((a + b))*2 - (c - (d - 1))^2/-sqrt(a)').tree)).toBe(
      '(a + b) * 2 - (c - (d - 1))^2 / -sqrt(a)',
    );
    fc.assert(
      fc.property(text, (typed) => {
        const tree = plainTree(typed);
        if (tree !== undefined) expect(plainTree(treeText(tree))).toEqual(tree);
      }),
      { numRuns: runs(300) },
    );
  });
});
