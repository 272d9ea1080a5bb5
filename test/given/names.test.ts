/** Names, zeros and words of a pattern sheet and its seams, as people type them. */
import { describe, expect, it } from 'vitest';
import { readPattern } from '../../src/given/read-pattern';
import { readSeams } from '../../src/seams/read-seams';
import { expectRefusal } from '../expect-refusal';
import { FRONT, FRONT_AND_BACK, graded, move } from './sheets';

const RULES = 'point,size,dx,dy\nfront.side_hip,10,1/4,0\n';
const lineUp = (text: string) => {
  const { pieces, seams } = readPattern(text, 'base.csv');
  return { pieces: pieces.map(({ base }) => base), seams };
};

describe('a pattern sheet', () => {
  const same = lineUp(FRONT_AND_BACK);

  it.each([
    [
      'piece and point in one column',
      FRONT_AND_BACK.replace('piece,point', 'point').replace(/^(front|back),/gmu, '$1.'),
    ],
    ['the whole name beside the piece', FRONT_AND_BACK.replace(/^(front|back),/gmu, '$1,$1.')],
    [
      'the piece in capitals further down',
      FRONT_AND_BACK.replaceAll('front,side_h', 'FRONT,side_h'),
    ],
    [
      'blanks and dashes for zero',
      FRONT_AND_BACK.replace('# unit', '# blank: 0\n# unit')
        .replaceAll(',0,0,', ',-,,')
        .replaceAll(',0,25,', ',\u2013,25,'),
    ],
    ['one seam in two spellings', FRONT_AND_BACK.replace('side,side_seam', 'side,Side Seam')],
  ])('may have %s', (_, text) => {
    const read = lineUp(text);
    expect(read.pieces).toEqual(same.pieces);
    expect(read.seams.map(({ sides }) => sides)).toEqual(same.seams.map(({ sides }) => sides));
  });

  it('says no fold with a dash or a no', () => {
    const folded = (cell: string): string =>
      FRONT.replace('edge,seam', 'edge,seam,fold').replace(
        'center_front,',
        `center_front,,${cell}`,
      );
    const foldOf = (cell: string) => lineUp(folded(cell));
    for (const cell of ['-', 'no', 'No', '0']) expect(foldOf(cell)).toEqual(foldOf(''));
    for (const cell of ['yes', 'x', 'on fold']) expect(foldOf(cell)).toEqual(foldOf('fold'));
    expect(foldOf('fold')).not.toEqual(foldOf(''));
    expectRefusal(() => foldOf('perhaps'), 'outline-malformed', {
      ...{ file: 'base.csv', row: 11, column: 8 },
    });
  });

  it('sews no edges together by a dash', () => {
    const text = FRONT_AND_BACK.replaceAll('side,side_seam', 'side,-');
    expect(readPattern(text, 'base.csv').seams).toEqual([]);
  });

  it('refuses a blank place without the line that makes it zero', () => {
    const text = FRONT.replace(',0,0,', ',,0,');
    expectRefusal(() => readPattern(text, 'base.csv'), 'cell-missing', {
      ...{ file: 'base.csv', row: 4, column: 3 },
    });
  });
});

describe('what is sewn to what', () => {
  const pattern = readPattern(FRONT_AND_BACK, 'base.csv');
  const seams = (text: string) => readSeams(text, 'seams.csv', pattern).pairs;

  it('is read with zeros, ways and names as they are typed', () => {
    const loose = '# blank: 0\nedge;sewn to;ease;way\nFRONT.Waist;Back.waist;\u2013;Same\n';
    const [pair] = seams(loose);
    const [plain] = seams('edge,sewn_to,ease,way\nfront.waist,back.waist,0,same\n');
    const own = { name: '', place: undefined };
    expect({ ...pair, ...own }).toEqual({ ...plain, ...own });
  });

  it('refuses a dash without that line', () => {
    const call = () => seams('edge,sewn_to,ease\nfront.waist,back.waist,-\n');
    expectRefusal(call, 'cell-not-a-number', { file: 'seams.csv', row: 2, column: 3 });
  });
});

describe('names beside the sheets', () => {
  it('of the point to stack on are found in any spelling', () => {
    const { range } = graded(FRONT, RULES, { stack: 'Side Hip' });
    expect(range.stackPoint).toBe('side_hip');
  });

  it('are refused with those that can be meant', () => {
    const twice = FRONT.replace('front,side_waist,', 'front,sidehip,');
    expectRefusal(
      () => graded(twice, RULES, { stack: 'SIDE HIP' }),
      'point-unknown',
      { field: 'stack' },
      'more than one',
      'sidehip, side_hip',
    );
  });
});

describe('a rule sheet for a pattern that counts y upward', () => {
  const up = FRONT.replace('# unit: in', '# unit: in, y up').replace(
    /^(front,\w+,[\d.]+,)([\d.]+)/gmu,
    '$1-$2',
  );
  const rules = (line: string, dy: string): string =>
    `${line}# sizes: 12, 14\npoint,step_dx,step_dy\nfront.side_hem,0,${dy}\n`;

  it('says how it counts y itself', () => {
    expectRefusal(() => graded(up, rules('', '-1/4')), 'sheet-malformed', {
      ...{ file: 'rules.csv', row: 3, column: 3, point: 'front.side_hem' },
    });
    const moved = (line: string, dy: string) =>
      move(graded(up, rules(line, dy)), '14', 'front', 'side_hem').y;
    expect(moved('# y: up\n', '-1/4')).toBeCloseTo(6.35, 9);
    expect(moved('# y: down\n', '1/4')).toBeCloseTo(6.35, 9);
    expect(moved('', '0')).toBe(0);
  });
});
