/**
 * Which side of the cloth is up. By hand: from behind, the wearer's right is on the right, so a half of her
 * back seen from outside has its side to the right; a lining turns its right side to the body.
 */
import { expect, it } from 'vitest';
import { pointOf } from '../../src/pattern/piece';
import { cuttings } from '../../src/render/captions';
import { dxfFiles } from '../../src/files/dxf-files';
import { gradePattern } from '../../src/jobs/grade-pattern';
import { FRONT, evenRules, graded } from '../given/sheets';
import { demo } from '../print/printing';

it('is brought back by the exchange files, and is nowhere guessed', () => {
  const drafted = demo();
  const { files } = dxfFiles(drafted);
  const textOf = (name: string): string => files.find((file) => file.name === name)?.text ?? '';
  const cutAgain = (dxf: string): readonly (readonly string[])[] =>
    gradePattern({
      pattern: { text: dxf, file: 'pattern.dxf' },
      rules: { text: textOf('pattern.rul'), file: 'pattern.rul' },
    }).range.sizes[0]?.pieces.map(({ plan }) => cuttings(plan)) ?? [];
  const dxf = textOf('pattern.dxf');
  const cut = drafted.range.sizes[0]?.pieces.map(({ plan }) => cuttings(plan)) ?? [];
  expect(cut.flat()).toContain('Cut 1 of lining, wrong side up');
  expect(cutAgain(dxf)).toEqual(cut);
  // The name of a piece alone does not say from which side whoever drew it saw it.
  const silent = cutAgain(dxf.replace(/(?:RIGHT|WRONG) SIDE UP: \w+/gu, 'SIZE: 12'));
  expect(silent).toEqual(cut.map((lines) => lines.map((line) => line.replace(/, .*/u, ''))));
});

it.each([
  ['1 of lining, wrong side up', 'Cut 1 of lining, wrong side up'],
  ['1 right side up', 'Cut 1, right side up'],
  ['1 of lining', 'Cut 1 of lining'],
])('is read where a pattern sheet states it: %s', (cell, told) => {
  const pattern = FRONT.replace('edge,seam\n', 'edge,seam,cut\n').replace(
    '0,0,corner,waist,',
    `0,0,corner,waist,,"${cell}"`,
  );
  const [piece] = graded(pattern, evenRules('12, 14')).range.sizes[0]?.pieces ?? [];
  expect(piece && cuttings(piece.plan)).toEqual([told]);
});

it('linings of one side are drawn from outside, where their wrong side is seen, and say so', () => {
  const pieces = demo().range.sizes[0]?.pieces ?? [];
  const named = (name: string) => {
    const piece = pieces.find(({ plan }) => plan.name === name);
    if (piece === undefined) throw new RangeError(name);
    return piece;
  };
  const across = (name: string): number =>
    pointOf(named(name), 'side_hip').x - pointOf(named(name), 'center_hip').x;
  expect(across('right_back_lining')).toBeGreaterThan(0);
  expect(across('left_back_lining')).toBeLessThan(0);
  for (const name of ['right_back_lining', 'left_back_lining'])
    expect(cuttings(named(name).plan)).toEqual(['Cut 1 of lining, wrong side up']);
  expect(cuttings(named('waistband').plan)).toEqual([
    'Cut 1, right side up',
    'Cut 1 of interfacing',
  ]);
});
