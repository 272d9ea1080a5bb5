import { describe, expect, it } from 'vitest';
import { segmentsBounds } from '../../src/geometry/bounds';
import type { GradeResult } from '../../src/jobs/grade-result';
import type { CutPiece } from '../../src/pattern/cut-piece';
import { expectRefusal } from '../expect-refusal';
import { graded } from './sheets';

const RULES =
  '# sizes: S, M\npiece,point,step_dx,step_dy\nbox,a,0,0\nbox,b,2,0\nbox,c,2,0\nbox,d,0,0\n';

/** A box of 20 x 30 cm with a notch in its right side, its left side on the fold. */
function box(more: string, rows = ['a', 'b', 'n', 'c', 'd']): string {
  const points: Readonly<Record<string, string>> = {
    a: 'box,a,0,0,corner,top,,',
    b: 'box,b,20,0,corner,right,,',
    n: 'box,n,20,15,notch,,,',
    c: 'box,c,20,30,corner,bottom,,4',
    d: 'box,d,0,30,corner,left,x,',
  };
  const lines = rows.map((row) => points[row] ?? '');
  return `# unit: cm\n# base: M\n${more}piece,point,x,y,kind,edge,fold,allowance\n${lines.join('\n')}\n`;
}

function cutOf(result: GradeResult, size: number): CutPiece {
  const [cut] = result.range.sizes[size]?.cutPieces ?? [];
  if (cut === undefined) throw new Error('no cut piece');
  return cut;
}

describe('allowances of a given pattern', () => {
  it.each(['# seam allowance: 1.5', '# allowances 1.5 cm', '# All seam allowances = 15mm'])(
    'are stated by "%s"',
    (line) => {
      const result = graded(box(`${line}\n`), RULES);
      expect(cutOf(result, 0).allowances).toEqual(
        cutOf(graded(box('# allowance: 1.5\n'), RULES), 0).allowances,
      );
    },
  );

  it('are not guessed from a word on them', () => {
    const call = (line: string) => () => graded(box(`${line}\n`), RULES);
    const place = { file: 'base.csv', row: 3 };
    expectRefusal(call('# seam allowances are included'), 'sheet-malformed', place, 'allowance');
    expectRefusal(call('# allowance: 1 cm, hem 4 cm'), 'cell-not-a-number', place);
    expect(call('# without seam allowances')).not.toThrow();
  });

  it('lie outside each edge in every size, its own or that of all edges, and none at a fold', () => {
    const result = graded(box('# allowance: 1.5\n'), RULES);
    const widths = [180, 200];
    result.range.sizes.forEach((_, size) => {
      const bounds = segmentsBounds(cutOf(result, size).cut);
      expect(bounds.left).toBeCloseTo(0, 6);
      expect(bounds.top).toBeCloseTo(-15, 6);
      expect(bounds.right).toBeCloseTo((widths[size] ?? NaN) + 15, 6);
      expect(bounds.bottom).toBeCloseTo(300 + 40, 6);
    });
    const [notch] = cutOf(result, 1).notches;
    expect(notch?.cut.x).toBeCloseTo(215, 6);
    expect(notch?.inward.x).toBeCloseTo(-1, 6);
  });

  it('are not for lines inside', () => {
    const pattern = `${box('# allowance: 1.5\n')}box,i,5,5,inside,pocket,,\nbox,k,9,5,inside,pocket,,\n`;
    expect([...cutOf(graded(pattern, RULES), 0).allowances.keys()]).toEqual([
      ...['top', 'right', 'bottom', 'left'],
    ]);
  });

  it('are the same whichever way the outline runs', () => {
    // An edge leaves the point that its row names, so the names move on when the order is turned.
    const turned =
      '# unit: cm\n# base: M\n# allowance: 1.5\npiece,point,x,y,kind,edge,fold,allowance\n' +
      'box,a,0,0,corner,left,x,\nbox,d,0,30,corner,bottom,,4\nbox,c,20,30,corner,right,,\n' +
      'box,n,20,15,notch,,,\nbox,b,20,0,corner,top,,\n';
    const one = segmentsBounds(cutOf(graded(box('# allowance: 1.5\n'), RULES), 1).cut);
    const other = segmentsBounds(cutOf(graded(turned, RULES), 1).cut);
    for (const side of ['left', 'right', 'top', 'bottom'] as const) {
      expect(other[side]).toBeCloseTo(one[side], 6);
    }
  });

  it('are kept all round in every size, and a finding says so', () => {
    const kept = (result: GradeResult) =>
      result.findings.filter(({ check }) => check === 'cut-line').map(({ severity }) => severity);
    expect(kept(graded(box('# allowance: 1.5\n'), RULES))).toEqual(['ok', 'ok']);
  });

  it('are none where the pattern has none', () => {
    const without = box('').replace(',,4', ',,');
    expect(graded(without, RULES).range.sizes[0]?.cutPieces).toBeUndefined();
  });

  it.each([
    ['negative', box('').replace(',,4', ',,-1'), 'parameter-out-of-range', { row: 7, column: 8 }],
    ['words', box('').replace(',,4', ',,wide'), 'cell-not-a-number', { row: 7, column: 8 }],
    [
      'two on one edge',
      box('')
        .replace('n,20,15,notch,,,', 'n,20,15,notch,,,1')
        .replace('b,20,0,corner,right,,', 'b,20,0,corner,right,,2'),
      'outline-malformed',
      { row: 6, column: 8 },
    ],
    ['too wide for all', box('# allowance: 1 m\n'), 'cell-not-a-number', { row: 3 }],
  ] as const)('are refused: %s', (_, pattern, code, place) => {
    expectRefusal(() => graded(pattern, RULES), code, { file: 'base.csv', ...place });
  });
});
