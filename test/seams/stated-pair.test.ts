/** One seam is walked once, however often and in whatever words it is stated. */
import { describe, expect, it } from 'vitest';
import { expectRefusal } from '../expect-refusal';
import { FRONT_AND_BACK, graded } from '../given/sheets';

const GROWS = 'point,axis,10,12,14\nfront.side_hip,x,-1/4,0,1/4\nback.side_hip,x,-1/4,0,1/4\n';
const UNNAMED = FRONT_AND_BACK.replaceAll(',side_seam', ',');

/** Name, ease in mm and sides of each seam of a pattern with a list of seams. */
function walked(pattern: string, rows: readonly string[] = []) {
  const text = `edge,sewn_to,ease,way\n${rows.join('\n')}\n`;
  const more = rows.length === 0 ? {} : { seams: { text, file: 'seams.csv' } };
  return graded(pattern, GROWS, more).seams.map(({ pair }) => ({
    name: pair.name,
    ease: pair.ease,
    first: pair.sides[0].edges.map(({ piece }) => piece).join(),
  }));
}

describe('a seam name', () => {
  it.each(['Side seam', 'SIDE_SEAM', 'side-seam', ' side  seam '])(
    'pairs side_seam with %j, and a gap shows',
    (name) => {
      const [front, back] = FRONT_AND_BACK.split('back,center_waist');
      const pattern = `${front}back,center_waist${back?.replace('side_seam', name)}`;
      expect(walked(pattern)).toEqual([{ name: 'side_seam', ease: 0, first: 'front' }]);
      const longer = pattern.replace('back,side_waist,7.5,0', 'back,side_waist,7.5,-1');
      const { findings } = graded(longer, GROWS);
      expect(findings.filter((f) => f.severity === 'fail').map((f) => f.check)).toContain(
        'seam-lengths',
      );
      expect(findings.filter(({ check }) => check === 'seam-unpaired')).toEqual([]);
    },
  );

  it('that three edges share in two spellings pairs nothing, and says of how many', () => {
    const third = FRONT_AND_BACK.replace(
      'front,side_hem,9,25,corner,hem,',
      'front,side_hem,9,25,corner,hem,Side Seam',
    );
    const { seams, findings } = graded(third, GROWS);
    expect(seams).toEqual([]);
    expect(findings.find(({ check }) => check === 'seam-unpaired')?.message).toContain('3 edges');
  });
});

describe('an edge in a list', () => {
  it('whose name two fit is refused with these two alone, and a dot parts them', () => {
    const [front, back] = UNNAMED.split('back,center_waist');
    const left = `${front}back,center_waist${back}`
      .replaceAll('back,', 'front_left,')
      .replace('corner,side,', 'corner,left_side,');
    const rules = GROWS.replace('back.', 'front_left.');
    const text = 'edge,sewn_to\nfront left side,front.waist\n';
    expectRefusal(
      () => graded(left, rules, { seams: { text, file: 'seams.csv' } }),
      'edge-unknown',
      { file: 'seams.csv', row: 2, column: 1 },
      'Allowed: front.left_side, front_left.side.',
    );
    const parted = text.replace('front left side', 'front left.side');
    const { seams } = graded(left, rules, { seams: { text: parted, file: 'seams.csv' } });
    expect(seams.map(({ pair }) => pair.sides[0].edges)).toEqual([
      [{ piece: 'front_left', edge: 'side' }],
    ]);
  });

  it.each(['front.side.hem', 'fro.ntside', 'frontier side', '.side'])('%s is none', (edge) => {
    expectRefusal(() => walked(FRONT_AND_BACK, [`${edge},back.side,,`]), 'edge-unknown', {
      file: 'seams.csv',
      row: 2,
      column: 1,
    });
  });
});

describe('a seam that is stated twice', () => {
  it.each([
    ['by its name and in the list', FRONT_AND_BACK, ['front.side,back.side,,'], 'side_seam', 0],
    ['from the other side', FRONT_AND_BACK, ['Back.Side,front.side,,'], 'side_seam', 0],
    ['with an ease in the list', FRONT_AND_BACK, ['front.side,back.side,1/4,'], 'side_seam', 6.35],
    ['so from the other side', FRONT_AND_BACK, ['back.side,front.side,1/4,'], 'side_seam', -6.35],
    ['without dots', FRONT_AND_BACK, ['front side,BACK side,1/4,'], 'side_seam', 6.35],
    [
      'in two rows',
      UNNAMED,
      ['front.side,back.side,1/4,', 'back.side,front.side,-1/4,'],
      'front.side to back.side',
      6.35,
    ],
  ])('%s is walked once', (_, pattern, rows, name, ease) => {
    const [seam, ...others] = walked(pattern, rows);
    expect(others).toEqual([]);
    expect(seam).toMatchObject({ name, first: 'front' });
    expect(seam?.ease).toBeCloseTo(ease, 9);
  });

  it.each([
    [
      ['front.side,back.side,1/4,', 'front.side,back.side,1/2,'],
      ['0.5 in in this row', '0.25 in in row 2'],
    ],
    // From the other side what is longer is shorter.
    [
      ['front.side,back.side,1/4,', 'back.side,front.side,1/4,'],
      ['0.25 in in this row', '-0.25 in in row 2'],
    ],
    [
      ['front.side,back.side,,', 'back.side,front.side,1/4,'],
      ['0.25 in in this row', '0 in in row 2'],
    ],
    [
      ['front.side,back.side,,same', 'front.side,back.side,,opposite'],
      ['two ways, opposite', 'same in row 2'],
    ],
  ])('otherwise is refused: %j', (rows, words) => {
    for (const pattern of [UNNAMED, FRONT_AND_BACK])
      expectRefusal(
        () => walked(pattern, rows),
        'seam-contradicted',
        { file: 'seams.csv', row: 3, column: 1 },
        ...words,
      );
  });

  it('leaves seams alone that share one side', () => {
    const rows = ['front.side,back.side,,', 'front.side + front.hem,back.side + back.hem,,'];
    expect(walked(UNNAMED, rows)).toHaveLength(2);
  });
});
