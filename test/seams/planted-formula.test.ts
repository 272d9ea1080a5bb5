/** A wrong sign in a formula of a drafted block, whose rules are derived and not typed. */
import { expect, it } from 'vitest';
import type { Block, BlockPiece } from '../../src/draft/block';
import { QUARTER_SKIRT } from '../../src/draft/quarter-skirt';
import { gradeChart } from '../../src/jobs/grade-chart';
import { chartText } from '../skirts';

const CHART = chartText(
  'cm',
  {
    waist_girth: [64, 68, 72, 76, 82],
    hip_girth: [90, 94, 98, 102, 108],
    waist_to_hip: [20, 20, 20, 20, 20],
    skirt_length: [60, 60, 60, 60, 60],
  },
  ['36', '38', '40', '42', '44'],
);

/** The block with the graded part of one x of one piece turned round. */
function turned(block: Block, piece: string, point: string): Block {
  const wrong = (own: BlockPiece): BlockPiece => {
    if (own.name !== piece) return own;
    const right = own.points.find(({ name }) => name === point)?.x ?? '';
    return {
      ...own,
      values: [...(own.values ?? []), { name: 'right_x', quantity: 'length', formula: right }],
      points: own.points.map((one) =>
        one.name === point ? { ...one, x: '2*base.right_x - right_x' } : one,
      ),
    };
  };
  return {
    ...block,
    layout: (...context) => {
      const layout = block.layout(...context);
      return { ...layout, pieces: layout.pieces.map(wrong) };
    },
  };
}

function findings(block: Block) {
  const style = { name: 'planted', description: '', block, settings: [] };
  const result = gradeChart({ chart: CHART, base: '40', style: { style, settings: [] } });
  return result.findings.filter(({ check }) => /^(wrong-sign|rule-slip|rule-doubt)$/u.test(check));
}

it('accuses no point of the block as it is', () => {
  expect(findings(QUARTER_SKIRT)).toEqual([]);
});

it.each(['front', 'back'])('names a wrong sign in a drafted block, on the %s', (piece) => {
  const [first, ...more] = findings(turned(QUARTER_SKIRT, piece, 'side_hem'));
  expect(first).toMatchObject({ check: 'wrong-sign', piece, subject: 'side_hem' });
  expect(first?.message).toContain(`the sign of dx at ${piece} side_hem is probably wrong`);
  expect(more).toEqual([]);
});
