/** The cutting card of pieces whose areas are sums of rectangles. */
import { describe, expect, it } from 'vitest';
import { cardFiles } from '../../src/files/card-files';
import { rowsOf } from '../csv-tables';
import { graded } from '../given/sheets';

/** A panel of 20 x 60 cm on the fold with 1 cm beside and 4 cm below, and a strip of 70 x 8 cm without allowances. */
const PATTERN = `# unit: cm
# base: M
piece,point,x,y,kind,edge,allowance,fold,cut
panel,top_center,0,0,corner,top,1,,1 on fold
panel,top_side,20,0,corner,side,1,,
panel,low_side,20,60,corner,hem,4,,
panel,low_center,0,60,corner,center,,fold,
`;
const RULES = `# sizes: S, M, L
point,axis,S,M,L
panel.top_center,dx,0,0,0
panel.top_side,dx,-1,0,1
panel.low_side,dx,-1,0,1
panel.low_center,dx,0,0,0
`;

it('has area and perimeter of the whole piece as it is cut', async () => {
  const { files, printed } = await cardFiles(graded(PATTERN, RULES));
  const rows = rowsOf(files[0]?.text ?? '');
  // 2 x (20 + 1) cm wide and 60 + 1 + 4 cm high; a size is 2 x 1 cm wider.
  expect(rows.map(({ size, line, area_cm2 }) => [size, line, area_cm2])).toEqual([
    ['S', 'cut', String(40 * 65)],
    ['M', 'cut', String(42 * 65)],
    ['L', 'cut', String(44 * 65)],
  ]);
  expect(rows.map((row) => row.perimeter_cm)).toEqual(['210', '214', '218']);
  expect(rows[0]).toMatchObject({ number: '1', piece: 'panel', cut: 'Cut 1 on fold' });
  expect(Buffer.from(printed?.[0]?.bytes ?? []).toString('latin1')).toMatch(/^%PDF-/u);
});

describe('where nothing says how a piece is cut', () => {
  const folded = `${PATTERN.replace(/,(1|4),,/gu, ',,,')}panel,middle,20,30,notch,,,,\n`.replace(
    /(panel,low_side.*\n)(.*\n)(.*\n)/u,
    '$3$1$2panel,hole,10,30,drill,,,,\n',
  );
  const net = folded.replace(',1 on fold', ',1').replace(',center,,fold,', ',center,,,');

  it.each([
    ['in one layer', net, '1200', '160', '1140', '158'],
    // Opened, 40 cm wide and 60 high; 38 in S.
    ['on a fold, which is not cut', folded, '2400', '200', '2280', '196'],
  ])('is that of the sewing line, %s', async (_, pattern, area, around, smaller, less) => {
    const { files } = await cardFiles(graded(pattern, RULES));
    const [small, middle] = rowsOf(files[0]?.text ?? '');
    expect(middle).toMatchObject({ line: 'sewing', area_cm2: area, perimeter_cm: around });
    expect(middle).toMatchObject({ notches: '1', drill_holes: '1' });
    expect(small).toMatchObject({ area_cm2: smaller, perimeter_cm: less });
  });
});
