/** Pieces on the fold drawn whole; places are worked by hand from a half of 10 by 20 cm with a dart and a notch. */
import { describe, expect, it } from 'vitest';
import { dxfFiles } from '../../src/files/dxf-files';
import { readDxf } from '../../src/dxf/read';
import { graded } from '../given/sheets';

const HALF = `# unit: cm
# base: M
piece,point,x,y,kind,edge,fold
front,top,0,0,corner,waist,
front,dart_in,3,0,,,
front,dart_tip,3.5,6,dart,,
front,dart_out,4,0,,,
front,side,10,0,corner,side,
front,hip,10,12,notch,,
front,low,10,20,corner,hem,
front,center,0,20,corner,middle,fold
front,hole,5,10,drill,,
strap,a,0,0,corner,long,
strap,b,3,0,corner,end,
strap,c,3,9,corner,back,
strap,d,0,9,corner,start,
`;
const RULES =
  '# sizes: S, M\npiece,point,step_dx,step_dy\n' +
  ['top,0', 'side,1', 'low,1', 'center,0'].map((own) => `front,${own},0`).join('\n') +
  ['a', 'b', 'c', 'd'].map((own) => `\nstrap,${own},0,0`).join('');

/** Closed lines and spots of a layer, places in cm. */
function nest(pattern: string, unfold: boolean) {
  const { files, findings } = dxfFiles(graded(pattern, RULES), unfold);
  const text = files.find(({ name }) => name === 'nest.dxf')?.text ?? '';
  const { entities } = readDxf(text, 'nest.dxf');
  const own = entities.filter(({ layer }) => layer === 'SIZE_M');
  const round = (value: number): number => Math.round(value * 1000) / 10_000;
  const placesOf = (points: (typeof own)[number]['points']) =>
    points.map(({ x, y }) => [round(x), round(y)]);
  return {
    findings,
    closed: own.filter(({ closed }) => closed).map(({ points }) => placesOf(points)),
    open: own
      .filter(({ type, closed }) => type === 'POLYLINE' && !closed)
      .map(({ points }) => placesOf(points)),
    spots: own.filter(({ type }) => type === 'POINT').flatMap(({ points }) => placesOf(points)),
    words: own.filter(({ type }) => type === 'TEXT').map(({ words }) => words),
  };
}

describe('a nest with pieces unfolded', () => {
  it('has both halves of what is on the fold, their darts, notches and holes, and the fold between', () => {
    const { closed, open, spots, words, findings } = nest(HALF, true);
    // The whole front is 20 cm wide, so its fold lies 10 cm from the left of the sheet.
    const right = [
      ...[
        [3, 0],
        [3.5, 6],
        [4, 0],
        [10, 0],
        [10, 12],
        [10, 20],
      ],
    ] as const;
    const whole = [
      ...right.map(([x = 0, y]) => [10 + x, y]),
      ...right.map(([x = 0, y]) => [10 - x, y]),
    ];
    const [front] = closed;
    for (const place of whole) expect(front).toContainEqual(place);
    expect(front).toHaveLength(whole.length + 2);
    expect(open).toContainEqual([
      [10, 20],
      [10, 0],
    ]);
    expect(spots).toEqual([
      [20, 12],
      [0, 12],
      [15, 10],
      [5, 10],
    ]);
    expect(words).toEqual(['front M, unfolded', 'strap M']);
    expect(findings.filter(({ check }) => check === 'still-folded')).toEqual([]);
  });

  it('leaves pieces without a fold, and all without the wish, as they are', () => {
    const [asked, usual] = [nest(HALF, true), nest(HALF, false)];
    expect(asked.closed[1]).toHaveLength(4);
    expect(usual.closed[0]).toHaveLength(8);
    expect(usual.words).toEqual(['front M', 'strap M']);
  });

  it('tells of a fold that is not straight, and leaves the half', () => {
    const bent = HALF.replace(
      'front,center,0,20,corner,middle,fold\n',
      'front,center,0,20,corner,middle,fold\nfront,between,0.05,10,corner,middle,fold\n',
    );
    const { closed, words, findings } = nest(bent, true);
    expect(closed[0]).toHaveLength(9);
    expect(words).toContain('front M');
    expect(findings).toMatchObject([
      { check: 'still-folded', severity: 'warning', piece: 'front' },
    ]);
  });
});
