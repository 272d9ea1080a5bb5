/**
 * Blocks scaled, turned and mirrored. The DXF reference has the block scaled, then turned against the
 * clock, then moved; an extrusion of (0, 0, -1) turns the x axis round (its arbitrary axis algorithm).
 */
import { describe, expect, it } from 'vitest';
import { cuttings } from '../../src/render/captions';
import { expectRefusal } from '../expect-refusal';
import type { Insert } from './foreign';
import {
  MILLIMETERS,
  RECTANGLE,
  SQUARE,
  drawing,
  insert,
  line,
  outline,
  polyline,
  read,
  ruled,
  rules,
  told,
  words,
} from './foreign';

const once = (own: Insert, block = RECTANGLE): string =>
  drawing({ header: MILLIMETERS, blocks: { FRONT: block }, sheet: insert('FRONT', own) });
const close = (xy: readonly number[]) => xy.map((n) => expect.closeTo(n, 9) as number);

describe('an inserted block', () => {
  // The far corner is at (200, 100), and moves by (4, 1) in the axes of the block.
  it.each([
    ['twice as large, its moves as they are', { scale: [2, 2] }, [400, 200], [4, 1]],
    ['turned by 90 degrees', { turn: 90 }, [-100, 200], [-1, 4]],
    ['turned by 180 degrees', { turn: 180 }, [-200, -100], [-4, -1]],
    ['mirrored left to right', { scale: [-1, 1] }, [-200, 100], [-4, 1]],
    ['mirrored upside down', { scale: [1, -1] }, [200, -100], [4, -1]],
    ['mirrored, then turned', { scale: [-1, 1], turn: 90 }, [-100, -200], [-1, -4]],
    ['seen from behind', { extrusion: -1 }, [-200, 100], [-4, 1]],
    ['seen from behind, turned in its own axes', { extrusion: -1, turn: 90 }, [100, 200], [1, 4]],
    ['half as large and mirrored', { scale: [-0.5, 0.5] }, [-100, 50], [-4, 1]],
  ] as readonly (readonly [string, Insert, readonly number[], readonly number[]])[])(
    'is %s',
    (_, own, place, move) => {
      const result = read(once(own));
      const [x = NaN, y = NaN] = place;
      const [dx = NaN, dy = NaN] = move;
      expect(outline(result).corners[2]).toEqual(close(place));
      expect(outline(result, 'L').corners[2]).toEqual(close([x + dx, y + dy]));
      expect(outline(result, 'S').corners[2]).toEqual(close([x - dx, y - dy]));
      // Scale alone turns nothing; otherwise the axes of the rules are said.
      expect(told(result, 'placed')).toHaveLength(
        _.includes('larg') && !_.includes('mirr') ? 0 : 1,
      );
    },
  );

  // What is up on paper is below once the paper is turned over.
  it('has the other side of the cloth up where it is mirrored', () => {
    const block =
      RECTANGLE +
      words('15', [20, 20], 'QUANTITY: 1') +
      words('15', [20, 20], 'WRONG SIDE UP: SHELL');
    const up = (own: Insert): readonly string[] =>
      read(once(own, block)).range.sizes[0]?.pieces.flatMap(({ plan }) => cuttings(plan)) ?? [];
    expect(up({})).toEqual(['Cut 1, wrong side up']);
    expect(up({ turn: 90 })).toEqual(['Cut 1, wrong side up']);
    expect(up({ scale: [-1, 1] })).toEqual(['Cut 1, right side up']);
    expect(up({ scale: [-1, -1] })).toEqual(['Cut 1, wrong side up']);
  });

  it('is turned by 30 degrees', () => {
    const [x, y] = outline(read(once({ turn: 30 }))).corners[1] ?? [];
    expect(x).toBeCloseTo(200 * Math.sqrt(0.75), 9);
    expect(y).toBeCloseTo(100, 9);
  });

  it('takes its grade reference line along', () => {
    // The line points up, so that the rule counts 4 up and 1 to the left; turned by 90 degrees it
    // points left, and left of that is down.
    const block = RECTANGLE + line('5', [50, 50], [50, 80]);
    const upright = read(once({}, block));
    expect(outline(upright, 'L').corners[2]).toEqual(close([199, 104]));
    const turned = read(once({ turn: 90 }, block));
    expect(outline(turned, 'L').corners[2]).toEqual(close([-104, 199]));
    const mirrored = read(once({ scale: [-1, 1] }, block));
    expect(outline(mirrored, 'L').corners[2]).toEqual(close([-199, 104]));
    expect(told(turned, 'placed')).toEqual([]);
  });

  it('is counted from its base point, as are blocks in blocks', () => {
    const dxf = drawing({
      header: MILLIMETERS,
      base: [10, 20],
      blocks: {
        LINE: polyline('1', SQUARE),
        FRONT: insert('LINE', { place: [5, 5], scale: [-1, 1] }) + words('15', [0, 0], 'SIZE: M'),
      },
      sheet: insert('FRONT', { place: [700, 0], scale: [2, 2] }),
    });
    const result = read(dxf);
    expect(result.pattern.pieces).toHaveLength(1);
    // 200 from the base at 10 is 190 to the right, mirrored at 5, from the base of the other, twice.
    expect(outline(result).corners[1]).toEqual(close([2 * (5 - 190 - 10), 2 * (5 - 20 - 20)]));
  });

  it('gives what is on layer 0 its own layer', () => {
    const dxf = drawing({
      header: MILLIMETERS,
      blocks: { FRONT: polyline('0', SQUARE) },
      sheet: insert('FRONT', { layer: '1' }),
    });
    expect(outline(read(dxf)).corners).toHaveLength(4);
  });

  it('is one piece when it is there twice, and that is said', () => {
    const pair = insert('FRONT') + insert('FRONT', { place: [500, 0], scale: [-1, 1] });
    const result = read(
      drawing({ header: MILLIMETERS, blocks: { FRONT: RECTANGLE }, sheet: pair }),
    );
    expect(result.pattern.pieces).toHaveLength(1);
    expect(told(result, 'placed')[0]).toMatch(/^warning: .*2 times, 1 of them mirrored/u);
  });

  it('is not forgotten when it is not inserted', () => {
    const blocks = { FRONT: RECTANGLE, BACK: RECTANGLE };
    const result = read(drawing({ header: MILLIMETERS, blocks, sheet: insert('FRONT') }));
    expect(told(result, 'left-out')[0]).toMatch(/^fail: .*block BACK, row \d+, not inserted/u);
  });

  it('may be a frame or a legend, which is told of', () => {
    const blocks = {
      FRONT: RECTANGLE,
      FRAME: polyline('LINES', SQUARE),
      ARROW: line('0', [0, 0], [9, 9]),
    };
    const sheet = insert('FRONT') + insert('FRAME') + insert('ARROW', { scale: [3, 1] });
    const result = read(drawing({ header: MILLIMETERS, blocks, sheet }));
    expect(result.pattern.pieces).toHaveLength(1);
    expect(told(result, 'left-out').map((own) => own.replace(/,? (row|inserted) .*/u, ''))).toEqual(
      [
        'warning: not taken over from the drawing: block FRAME',
        'note: not taken over from the drawing: block ARROW',
      ],
    );
  });

  it.each([
    ['stretched', insert('FRONT', { scale: [2, 1] }), 165],
    ['of no size', insert('FRONT', { scale: [0, 0] }), 165],
    ['not there', insert('SIDE'), 165],
    ['there in two scales', insert('FRONT') + insert('FRONT', { scale: [2, 2] }), 187],
  ])('is refused if it is %s', (_, sheet, row) => {
    const dxf = drawing({ header: MILLIMETERS, blocks: { FRONT: RECTANGLE }, sheet });
    expectRefusal(() => read(dxf), 'dxf-malformed', { file: 'foreign.dxf', row });
  });

  it('is refused if it is in itself', () => {
    const blocks = { A: RECTANGLE + insert('B'), B: insert('A') };
    const dxf = drawing({ header: MILLIMETERS, blocks, sheet: insert('A') });
    expectRefusal(() => read(dxf), 'dxf-malformed', { file: 'foreign.dxf', row: 181 });
  });
});

describe('sizes as blocks of their own', () => {
  const sized = (names: readonly string[], text: (size: string) => string): string => {
    const blocks = names.map((name, i) => {
      const size = ['S', 'M', 'L'][i] ?? '';
      return [name, polyline('1', SQUARE) + ruled(SQUARE) + text(size)] as const;
    });
    const sheet = names.map((name) => insert(name)).join('');
    return drawing({ header: MILLIMETERS, blocks: Object.fromEntries(blocks), sheet });
  };
  const named = (text: string): string => words('15', [9, 9], text);

  it.each([
    [
      'words',
      ['A', 'B', 'C'],
      (size: string) => named('PIECE NAME: FRONT') + named(`SIZE: ${size}`),
      183,
    ],
    ['block names', ['FRONT_S', 'FRONT_M', 'FRONT_L'], () => '', 159],
    ['block names with one title', ['F-S', 'F-M', 'F-L'], () => named('PIECE NAME: FRONT'), 171],
    ['titles', ['A', 'B', 'C'], (size: string) => named(`PIECE NAME: FRONT ${size}`), 171],
  ] as const)('are a nest by their %s, and never graded again', (_, names, text, row) => {
    const call = (): unknown => read(sized(names, text));
    expect(call).toThrow(/the drawing is a nest, graded already: .* in 3 sizes.*Got: S, M, L/u);
    expectRefusal(call, 'dxf-malformed', { file: 'foreign.dxf', row });
  });

  it('are refused too where nothing tells them apart', () => {
    expect(() => read(sized(['A', 'B'], () => named('PIECE NAME: FRONT')))).toThrow(
      /nothing tells/u,
    );
  });

  it('are refused where one is not in the sample size', () => {
    const wrong = sized(['FRONT'], () => named('SIZE: L'));
    expect(() => read(wrong)).toThrow(/another size.*Allowed: the sample size M. Got: L/u);
  });

  it('are refused where their names have sizes that the table does not have', () => {
    const grown = (by: number): string => {
      const corners = SQUARE.map(([x, y]) => [x * by, y * by] as const);
      return polyline('1', corners) + ruled(corners);
    };
    const blocks = { FRONT_36: grown(1), FRONT_38: grown(1.04), FRONT_40: grown(1.1) };
    const call = (): unknown => read(drawing({ header: MILLIMETERS, blocks }));
    expect(call).toThrow(/look like sizes of FRONT.*Got: FRONT_36, FRONT_38, FRONT_40/u);
    expectRefusal(call, 'dxf-malformed', { file: 'foreign.dxf', row: 159 });
  });

  it('are no panels with numbers', () => {
    const gores = read(
      sized(['GORE_1', 'GORE_2'], () => ''),
      `${['UNITS: METRIC', 'SIZE LIST: 2 4', 'SAMPLE SIZE: 2'].join('\n')}\nRULE: DELTA 1\n0 0\n0 0\nRULE: DELTA 2\n0 0\n4 1\nEND\n`,
    );
    expect(gores.pattern.pieces).toHaveLength(2);
  });

  /** Panels of which the right side is as far out as said; rule 2 moves it sideways in `SIDEWAYS`. */
  const panels = (widths: Readonly<Record<string, number>>, far = -600): string => {
    const blocks = Object.entries(widths).map(([name, wide]) => {
      const corners = [
        [0, 0],
        [wide, 0],
        [wide + 45, far],
        [0, far],
      ] as const;
      const ruledHere = corners.map((at, i) => words('2', at, `# ${i === 1 || i === 2 ? 2 : 1}`));
      return [name, polyline('1', corners) + ruledHere.join('')] as const;
    });
    return drawing({ header: MILLIMETERS, blocks: Object.fromEntries(blocks) });
  };
  const SIDEWAYS = rules('METRIC', '38 40 42', '40')
    .replace('-4 -1', '-10 0')
    .replace('4 1', '10 0');

  it.each([
    ['SIZE38', 'SIZE40', 'SIZE42'],
    ['38-FRONT', '40-FRONT', '42-FRONT'],
    ['38FRONT', '40FRONT', '42FRONT'],
    ['FRONT.38', 'FRONT.40', 'FRONT.42'],
  ])('are a nest as %s, %s and %s', (...names) => {
    const dxf = panels(Object.fromEntries(names.map((name, i) => [name, 170 + 10 * i])));
    expect(() => read(dxf, SIDEWAYS)).toThrow(/the drawing is a nest.*Got: 38, 40, 42/u);
  });

  it.each([
    ['FRONT_S', 'FRONT_M', 'FRONT_L'],
    ['FRONT_1', 'FRONT_2', 'FRONT_3'],
    ['FRONT_3', 'FRONT_2', 'FRONT_1'],
    ['FRONT36', 'FRONT37', 'FRONT39'],
  ])('as %s, %s and %s are no larger in length, but grow as their rules go', (...names) => {
    const widths = Object.fromEntries(names.map((name, i) => [name, 170 + 10 * i]));
    expect(() => read(panels(widths), SIDEWAYS)).toThrow(/look like sizes of FRONT/u);
    // Five times the rules are the same mistake.
    const steeper = SIDEWAYS.replaceAll('10 0', '50 0');
    expect(() => read(panels(widths), steeper)).toThrow(/look like sizes of FRONT/u);
  });

  it('are warned of where names say that they are pieces', () => {
    const result = read(panels({ FRONT: 170, SIDE: 180, BACK: 190 }), SIDEWAYS);
    expect(told(result, 'nest')).toEqual([
      expect.stringMatching(/^warning: FRONT, SIDE, BACK have the same rules and grow/u),
    ]);
  });

  it.each([
    ['A', 'B', 'C'],
    ['pca', 'pcb', 'pcc'],
    ['Xc', 'Xa', 'Xb'],
  ])('are refused as %s, %s and %s, whatever way the rules go', (...names) => {
    const widths = [170, 175, 181];
    const dxf = panels(Object.fromEntries(names.map((name, i) => [name, widths[i] ?? NaN])));
    for (const table of [SIDEWAYS, SIDEWAYS.replaceAll('10 0', '1 90')])
      expect(() => read(dxf, table)).toThrow(
        `look like sizes of one piece. Allowed: one block for each piece, in the sample size 40, or SIZE: 40 in each. Got: ${names.join(', ')}`,
      );
  });

  it.each([
    ['a front, a back and their linings', { FA: 170, LA: 168, FB: 180, LB: 178 }],
    ['panels that say that they are in the sample size', { PA: 170, PB: 175, PC: 180 }],
    ['tiers, each half as wide again', { TA: 170, TB: 255, TC: 380 }],
    ['twins beside one that is wider', { PL: 170, PR: 170, PM: 175 }],
  ])('are not %s', (what, widths) => {
    const dxf = panels(widths);
    const said = dxf.replaceAll(/0\nENDBLK/gu, `${words('1', [9, -9], 'SIZE: 40')}0\nENDBLK`);
    const result = read(what.includes('sample size') ? said : dxf, SIDEWAYS);
    expect(result.pattern.pieces).toHaveLength(Object.keys(widths).length);
  });

  it.each([
    ['of equal shape', { GORE_1: 170, GORE_2: 170 }],
    ['turned over', { FRONT_L: 170, FRONT_R: 170 }],
    ['of which one is wider', { FRONT: 170, BACK: 180 }],
  ])('are no pieces %s', (_, widths) => {
    const result = read(panels(widths), SIDEWAYS);
    expect(result.pattern.pieces).toHaveLength(2);
    expect(told(result, 'nest')).toEqual([]);
  });

  it('are a nest in one block, unlike a cut-out', () => {
    const half = (side: number): string =>
      polyline('1', [
        [0, 0],
        [side, 0],
        [side, side / 2],
        [0, side / 2],
      ]);
    const inside = (...sides: readonly number[]): string =>
      drawing({ header: MILLIMETERS, blocks: { FRONT: RECTANGLE + sides.map(half).join('') } });
    expect(() => read(inside(210, 220))).toThrow(/FRONT is a nest: 3 boundaries/u);
    expect(() => read(inside(210))).toThrow(/FRONT is a nest: 2 boundaries/u);
    expect(told(read(inside(20)), 'left-out')[0]).toMatch(/^fail: .*1 POLYLINE on layer 1/u);
  });
});
