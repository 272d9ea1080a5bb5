/** What printed pages say: only what this pattern has, and what fits paper or a projector. */
import { describe, expect, it } from 'vitest';
import { drawingOf } from '../../src/files/drawing-files';
import { printTables } from '../../src/files/print-tables';
import type { GradeResult } from '../../src/jobs/grade-result';
import { printedDrawing } from '../../src/print/printed-drawing';
import { readPaper } from '../../src/print/paper';
import { readPrintOptions } from '../../src/print/print-options';
import { FRONT, graded } from '../given/sheets';
import type { Scene } from '../../src/render/scene';
import { flatPaths, flatTexts } from '../render/flat';
import { demo, wholeDemo } from './printing';

const GIVEN = graded(
  FRONT,
  `# sizes: 10, 12, 14
piece,point,size,dx,dy,step_dx,step_dy
front,center_waist,,,,0,0
front,dart_in,,,,0,0
front,dart_tip,,,,0,0
front,dart_out,,,,0,0
front,side_waist,,,,1/4,0
front,side_hip,,,,1/4,0
front,side_hem,,,,1/4,0
front,center_hem,,,,0,0
`,
);

/** All pages of a file and the drawings that they show. */
function scenes(result: GradeResult, paper: string): readonly Scene[] {
  const options = readPrintOptions({ paper: [paper] });
  const { pages } = printedDrawing(
    drawingOf(result),
    printTables(result),
    readPaper(paper),
    options,
  );
  return pages.flatMap(({ scene, windows }) => [
    scene,
    ...windows.map(({ drawing }) => ({ ...scene, shapes: drawing })),
  ]);
}

/** All words of a file in one line, since a paragraph is broken where its column ends. */
function said(result: GradeResult, paper: string): string {
  return scenes(result, paper)
    .flatMap(flatTexts)
    .map(({ text }) => text.words)
    .join(' ');
}

function parts(result: GradeResult, paper: string): readonly string[] {
  return scenes(result, paper)
    .flatMap(flatPaths)
    .map(({ part }) => part);
}

const PAPERS = ['letter', 'a0', 'roll=36in'];

describe('a printed pattern', () => {
  const drafted = demo({ sizes: ['8', '12', '16'] });

  it.each(PAPERS)('that was given speaks of no zip and no stride: %s', (paper) => {
    const words = said(GIVEN, paper);
    expect(words).toContain('Sew a toile before you cut cloth.');
    expect(words).toContain('Lines as base.csv gives them, without any allowance added.');
    expect(words).not.toMatch(/zip|stride|in the table/i);
  });

  it.each(PAPERS)('names each of its sizes where some between them are left out: %s', (paper) => {
    const words = said(wholeDemo({ sizes: ['8', '12', '16'] }), paper);
    expect(words).toContain('Sizes 8, 12 and 16');
    expect(words).not.toContain('Sizes 8 to 16');
    expect(said(drafted, paper)).toContain('Sizes 8 to 16');
  });

  it.each(PAPERS)('of a skirt points to the stride in its table: %s', (paper) => {
    const words = said(drafted, paper);
    expect(words).toContain('See "stride" in the table of the finished garment.');
    expect(words).toMatch(/Finished garment.* stride /u);
    expect(words).toContain('Print at 100 % and measure again');
    expect(words).not.toMatch(/projector/i);
  });

  it.each([...PAPERS, 'projector'])(
    'has no ring at the stack point, which is no mark: %s',
    (paper) => {
      expect(parts(drafted, paper)).toContain('drill-hole');
      expect(parts(drafted, paper)).not.toContain('stack-point');
    },
  );

  it('for a projector speaks of no table and no printer', () => {
    for (const result of [drafted, GIVEN]) {
      const words = said(result, 'projector');
      expect(words).toContain('Measure this square on the cloth before you cut.');
      expect(words).toContain('Set up the picture by its edge scale and squares');
      expect(words).not.toMatch(/in the table|100 %|print/i);
    }
    expect(said(drafted, 'projector')).toContain('A narrow hem shortens the stride');
  });
});
