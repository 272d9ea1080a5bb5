/** Which point a rule belongs to, words in other alphabets, and what is not read. */
import { describe, expect, it } from 'vitest';
import { decodedDrawing } from '../../src/dxf/drawing-text';
import { expectRefusal } from '../expect-refusal';
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
  spot,
  tags,
  told,
  words,
} from './foreign';

type XY = readonly [number, number];
const block = (inside: string, sheet = ''): string =>
  drawing({ header: MILLIMETERS, blocks: { FRONT: inside }, sheet: insert('FRONT') + sheet });

describe('the number of a rule', () => {
  const beside = (x: number, y = 0, more = ''): string => {
    const [a, b, c, d] = SQUARE as readonly [XY, XY, XY, XY];
    return block(polyline('1', SQUARE) + ruled([a, b, [c[0] + x, c[1] + y], d]) + more);
  };

  it.each([0.05, 0.09, -0.07])('counts %s mm beside its point', (off) => {
    const result = read(beside(off));
    expect(outline(result, 'L').corners[2]).toEqual([204, 101]);
    expect(told(result, 'rule-beside')).toEqual([]);
  });

  it.each([0.18, 0.5, 0.95])('counts %s mm beside its point with a word', (off) => {
    const result = read(beside(0, off));
    expect(outline(result, 'L').corners[2]).toEqual([204, 101]);
    expect(told(result, 'rule-beside')).toEqual([
      expect.stringMatching(
        new RegExp(`^warning: 2 rules or marks stand beside .* up to ${off} mm`, 'u'),
      ),
    ]);
  });

  it('is lost farther away, which fails', () => {
    const result = read(beside(1.1));
    expect(told(result, 'left-out')).toEqual([
      expect.stringMatching(/^fail: .*1 TEXT on layer 2, turn point, in row \d+ \(# 2\)/u),
      expect.stringMatching(/^warning: .*1 POINT on layer 2/u),
    ]);
  });

  it('is lost between two points, which fails', () => {
    const narrow = [...SQUARE.slice(0, 3), [199, 100.4], [0, 100]] as readonly XY[];
    const inside = polyline('1', narrow) + words('2', [199.5, 100.2], '# 2');
    expect(told(read(block(inside)), 'left-out')[0]).toMatch(/^fail: .*# 2/u);
  });

  it('is lost where two contradict each other, which fails', () => {
    const result = read(beside(0, 0, words('2', [200, 100], '# 1')));
    expect(told(result, 'left-out')[0]).toMatch(/^fail: .*1 TEXT on layer 2.*# 1/u);
  });

  it.each([
    ['on another layer', words('1', [200, 100], '# 2')],
    ['written in another way', words('2', [200, 100], '# 2a')],
  ])('is lost %s, which fails', (_, own) => {
    const result = read(block(polyline('1', SQUARE) + own));
    expect(told(result, 'left-out')[0]).toMatch(/^fail: .*1 TEXT on layer/u);
  });

  it('is found in a drawing in inches whose points are rounded to 0.01 in', () => {
    // Vertices to four places, rules and marks to two: off by up to 0.005 in, 0.13 mm, each way.
    const corners = [
      [0, 0],
      [9.3712, 0.0049],
      [10.1249, 14.2451],
      [0, 14.0],
    ] as const;
    const rounded = corners.map(
      ([x, y]) => [Math.round(x * 100) / 100, Math.round(y * 100) / 100] as const,
    );
    const dxf = drawing({
      header: { $INSUNITS: [70, 1] },
      blocks: { FRONT: polyline('1', corners) + ruled(rounded) },
    });
    const result = read(dxf, rules('ENGLISH'));
    const [x, y] = outline(result, 'L').corners[2] ?? [];
    expect(x).toBeCloseTo((10.1249 + 4) * 25.4, 9);
    expect(y).toBeCloseTo((14.2451 + 1) * 25.4, 9);
    expect(result.findings.filter(({ severity }) => severity === 'fail')).toEqual([]);
    expect(told(result, 'rule-beside')).toHaveLength(1);
  });

  it('at a corner of two lines goes to each in its turn', () => {
    // A seam line that shares two corners with the cut line, and moves otherwise there.
    const sewn = [
      [0, 0],
      [190, 10],
      [190, 90],
      [0, 100],
    ] as const;
    const own = (layer: string, corners: readonly XY[], first: number): string =>
      polyline(layer, corners) +
      corners.map((at, i) => spot('2', at) + words('2', at, `# ${i === 0 ? first : 1}`)).join('');
    const result = read(block(own('1', SQUARE, 2) + own('14', sewn, 1)));
    const piece = result.range.sizes[2]?.pieces[0];
    const at = (name: string) => piece?.points[piece.plan.index.get(name) ?? -1];
    expect(at('corner_1')).toEqual({ x: 0, y: 0 });
    expect(at('cut_corner_1')).toEqual({ x: 4, y: -1 });
    expect(told(result, 'left-out')).toEqual([]);
  });
});

describe('words in other alphabets', () => {
  const nameOf = (dxf: string): string | undefined => read(dxf).pattern.pieces[0]?.base.plan.name;
  const named = (title: string, page = 'ANSI_1252', sheet = ''): string =>
    drawing({
      header: { $DWGCODEPAGE: [3, page], ...MILLIMETERS },
      blocks: { FRONT: RECTANGLE + words('15', [5, 5], `PIECE NAME: ${title}`) },
      sheet: insert('FRONT') + sheet,
    });
  const bytes = (text: string, to: Readonly<Record<string, number>>): Uint8Array =>
    Uint8Array.from([...text].map((own) => to[own] ?? own.charCodeAt(0)));

  it.each([
    ['UTF-8', new TextEncoder().encode(named('R\u00fccken \u20ac')), 'R\u00fccken \u20ac'],
    // Windows-1252 has u with diaeresis at FC and the euro at 80, Windows-1250 r with acute at E0.
    ['Windows-1252', bytes(named('R\u00fccken \u20ac'), { '\u20ac': 0x80 }), 'R\u00fccken \u20ac'],
    ['Windows-1250', bytes(named('d\u0155ape', 'ANSI_1250'), { '\u0155': 0xe0 }), 'd\u0155ape'],
  ])('are read in %s', (_, file, title) => {
    expect(nameOf(decodedDrawing(file, 'a.dxf'))).toBe(title);
  });

  it('are read by their codes', () => {
    expect(nameOf(named('d\\U+0155ape'))).toBe('d\u0155ape');
  });

  it('are refused where their characters were lost', () => {
    const lost = new TextDecoder().decode(bytes(named('R\u00fccken'), {}));
    expect(() => read(lost)).toThrow(/characters were lost/u);
  });

  it('are refused in a code page that is not known', () => {
    const call = (): unknown => decodedDrawing(bytes(named('R\u00fccken', 'ANSI_77'), {}), 'a.dxf');
    expectRefusal(call, 'dxf-malformed', { file: 'a.dxf' });
  });
});

describe('what is not read', () => {
  it('is named by kind, layer, number and row, and fails where a shape is lost', () => {
    const hatch = tags([0, 'HATCH'], [8, '11']);
    const inside =
      RECTANGLE +
      polyline('11', [
        [20, 20],
        [60, 20],
        [60, 60],
      ]) +
      hatch +
      hatch +
      line('4', [200, 50], [190, 50]) +
      line('99', [0, 0], [9, 9]) +
      words('99', [5, 5], 'made by hand');
    const dxf = block(inside, line('1', [0, 0], [50, 0]) + tags([0, '3DFACE'], [8, 'X']));
    const rowOf = (text: string): number => dxf.slice(0, dxf.indexOf(text)).split('\n').length;
    const result = read(dxf);
    expect(told(result, 'left-out').toSorted()).toEqual(
      [
        `fail: 1 POLYLINE on layer 11, internal cut out, in row ${rowOf('0\nPOLYLINE\n8\n11\n')}`,
        `fail: 2 HATCH on layer 11, internal cut out, the first in row ${rowOf('0\nHATCH')}`,
        `warning: 1 LINE on layer 4, notch, in row ${rowOf('0\nLINE\n8\n4\n')}`,
        `note: 1 LINE on layer 99, in row ${rowOf('0\nLINE\n8\n99\n')}`,
        `note: 1 TEXT on layer 99, in row ${rowOf('0\nTEXT\n8\n99\n')} (made by hand)`,
        `fail: 1 LINE on layer 1, boundary, in row ${rowOf('0\nLINE\n8\n1\n')}`,
        `note: 1 3DFACE on layer X, in row ${rowOf('0\n3DFACE')}`,
      ]
        .map((own) => own.replace(': ', ': not taken over from the drawing: '))
        .toSorted(),
    );
  });

  it('fails where a sew line has no rules, or a fold is on no edge', () => {
    const sewn = polyline('14', [
      [10, 10],
      [190, 10],
      [190, 90],
      [10, 90],
    ]);
    expect(told(read(block(RECTANGLE + sewn)), 'left-out')[0]).toMatch(
      /^fail: .*layer 14, sew line/u,
    );
    const fold = line('6', [100, 0], [100, 100]);
    expect(told(read(block(RECTANGLE + fold)), 'left-out')[0]).toMatch(/^fail: .*layer 6, mirror/u);
  });
});
