import { describe, expect, it } from 'vitest';
import type { HandIn } from '../../../src/study/mark/mark-sheet';
import { isRight, markSheet } from '../../../src/study/mark/mark-sheet';
import { some } from '../../samples';

/** A half skirt of an invented shop, the front with a dart, the back in gores of its own. */
const PATTERN = `# unit: in
# base: 12
piece,point,x,y,kind,edge,seam
front,center_waist,0,0,corner,waist,
front,dart_in,3,0
front,dart_tip,3.5,4,dart
front,dart_out,4,0
front,side_waist,7.5,0,corner,side,side_seam
front,side_hem,9,25,corner,hem
front,center_hem,0,25,corner,center_front
gore,left_waist,0,0,corner,waist,
gore,right_waist,4,0,corner,side,side_seam
gore,right_hem,5.5,25,corner,hem
gore,left_hem,-1.5,25,corner,gore_seam
`;

const SIZES = ['8', '10', '12', '14', '16', '18'];
const BASE = 2;
/** Steps outward from 8 to 18: the whole waist grows by 1, 1, 1, 1.5 and 1.5 in. */
const GIRTH = [0, 1, 2, 3, 4.5, 6];

/** Shares of the girth by the shop: three eighths go to the front half, an eighth to the gore. */
const SHARES: readonly (readonly [string, number])[] = [
  ['front.center_waist', 0],
  ['front.dart_in', 1 / 8],
  ['front.dart_out', 1 / 8],
  ['front.side_waist', 3 / 8],
  ['front.side_hem', 3 / 8],
  ['front.center_hem', 0],
  ['gore.left_waist', 0],
  ['gore.right_waist', 1 / 8],
  ['gore.right_hem', 1 / 8],
  ['gore.left_hem', 0],
];

type Cells = readonly (number | undefined)[];
const right = (share: number): readonly number[] =>
  GIRTH.map((girth) => share * (girth - (GIRTH[BASE] ?? NaN)));

function sheetOf(
  habit: (moves: readonly number[], name: string) => Cells = (moves) => moves,
  dy: readonly number[] = SIZES.map((_, i) => (i - BASE) / 4),
): string {
  const rows = SHARES.flatMap(([name, share]) => {
    const down = name.endsWith('hem') ? dy : SIZES.map(() => 0);
    return [
      [name, 'dx', ...habit(right(share), name).map((cell) => cell ?? '')].join(),
      [name, 'dy', ...down].join(),
    ];
  });
  return ['# unit: in', ['point', 'axis', ...SIZES].join(), ...rows, ''].join('\n');
}

const mark = (sheet: string, more: Partial<HandIn> = {}) =>
  markSheet({
    pattern: { text: PATTERN, file: 'base.csv' },
    rules: { text: sheetOf(), file: 'rules.csv' },
    sheet,
    ...more,
  });

const slips = (sheet: string): readonly string[] =>
  mark(sheet).diagnosis.found.map(({ slip }) => slip.id);

const at =
  (name: string, change: (move: number, i: number) => number) =>
  (moves: readonly number[], own: string): Cells =>
    own === name ? moves.map(change) : moves;

describe('a sheet held against a given pattern and its rules', () => {
  it('has full marks where it is the rules, in moves, in steps, from any zero, and with y up', () => {
    const steps = (moves: readonly number[]): Cells =>
      moves.map((move, i) => (i === BASE ? 0 : move - (moves[i < BASE ? i + 1 : i - 1] ?? NaN)));
    const fromSide = (moves: readonly number[], name: string): Cells =>
      moves.map((move, i) => move - (right(name.startsWith('front') ? 3 / 8 : 1 / 8)[i] ?? NaN));
    const sheets = [
      sheetOf(),
      sheetOf(steps, steps(SIZES.map((_, i) => (i - BASE) / 4)) as readonly number[])
        .replaceAll(',dx,', ',step_dx,')
        .replaceAll(',dy,', ',step_dy,'),
      sheetOf(fromSide),
      sheetOf(
        undefined,
        SIZES.map((_, i) => (BASE - i) / 4),
      ),
    ];
    for (const sheet of sheets) {
      const marking = mark(sheet);
      expect(isRight(marking), sheet).toBe(true);
      // Share, sign and break of six axes in x, share and sign of four in y, whose steps are even.
      const { asked, right: got } = marking.decisions;
      expect(got).toBe(asked);
      if (sheet !== sheets[2]) expect(asked).toBe(6 * 3 + 4 * 2);
    }
  });

  it.each(
    some([
      ['sign', at('front.side_waist', (move) => -move)],
      ['half', at('gore.right_hem', (move) => 2 * move)],
      ['whole', at('gore.right_hem', (move) => 4 * move)],
      ['eighth', at('front.side_hem', (move) => move / 2)],
      // Nothing tells it from a fourth of the way but that nothing is there.
      ['still', at('front.side_hem', () => 0)],
      // 14-16 as small as 12-14: an eighth of half an inch less in 16 and 18.
      ['break 14-16 as 12-14', at('front.side_waist', (move, i) => move - (i > 3 ? 3 / 16 : 0))],
    ] as const),
  )('has its slip named: %s', (id, habit) => {
    expect(slips(sheetOf(habit))).toEqual([id]);
  });

  it('tells a seam that opens', () => {
    // In 18 the girth is 4 in larger than in the base: the front waist goes four times its share of it.
    const marking = mark(sheetOf(at('front.side_waist', (move) => 4 * move)));
    const [largest] = marking.worn.slice(-1);
    const gap = largest?.gaps.find(({ words }) => words.includes('side'));
    // By Pythagoras: 1 1/2 in aslant where it is right, and three shares less as handed in; 3/4 in longer.
    const side = (x: number) => 25.4 * Math.hypot(x, 25 + 3 / 4);
    const [own, made] = [side(1.5), side(1.5 - 3 * (3 / 8) * 4)];
    expect((gap?.sheet ?? NaN) - (gap?.right ?? NaN)).toBeCloseTo(made - own, 6);
  });

  it('is of a part where points are named, and asks only for points that have rules', () => {
    const { asked } = mark(sheetOf());
    expect(asked.points.map(({ piece, point }) => `${piece}.${point}`)).toEqual(
      SHARES.map(([name]) => name),
    );
    const wrong = sheetOf(at('gore.right_hem', (move) => 2 * move));
    expect(isRight(mark(wrong, { pieces: ['front'], points: ['side_waist'] }))).toBe(true);
  });
});
