/** Lengths by hand: 1 in is 25.4 mm by definition (international yard and pound agreement, 1959). */
import { describe, expect, it } from 'vitest';
import { expectRefusal } from '../expect-refusal';
import type { Sheet } from './foreign';
import {
  MILLIMETERS,
  RECTANGLE,
  drawing,
  insert,
  outline,
  polyline,
  read,
  rules,
  ruled,
  told,
  words,
} from './foreign';

const TEN_BY_TWENTY = [
  [0, 0],
  [20, 0],
  [20, 10],
  [0, 10],
] as const;
const SMALL = polyline('1', TEN_BY_TWENTY) + ruled(TEN_BY_TWENTY);
const sheet = (more: Partial<Sheet>, block = SMALL): string =>
  drawing({ blocks: { FRONT: block }, sheet: insert('FRONT'), ...more });
const said = (unit: string): string => insert('FRONT') + words('15', [0, -20], `UNITS: ${unit}`);

/** Place of the corner that was at (20, 10), in mm, in a size. */
const far = (dxf: string, table: string, size = 'M'): readonly [number, number] | undefined =>
  outline(read(dxf, table), size).corners[2];

describe('the unit of a drawing', () => {
  it.each([
    ['$INSUNITS 1', { header: { $INSUNITS: [70, 1] } }, 'ENGLISH', [508, 254], [609.6, 279.4]],
    ['$INSUNITS 5', { header: { $INSUNITS: [70, 5] } }, 'CM', [200, 100], [240, 110]],
    ['UNITS: ENGLISH', { sheet: said('ENGLISH') }, 'ENGLISH', [508, 254], [609.6, 279.4]],
    ['UNITS: INCH', { sheet: said('inch') }, 'INCHES', [508, 254], [609.6, 279.4]],
    [
      'Units INCH',
      { sheet: insert('FRONT') + words('15', [0, 0], 'Units INCH') },
      'INCH',
      [508, 254],
      [609.6, 279.4],
    ],
    ['UNITS: CM', { sheet: said('cm') }, 'cm', [200, 100], [240, 110]],
  ] as readonly (readonly [string, Partial<Sheet>, string, number[], number[]])[])(
    'is what %s says',
    (_, more, table, base, large) => {
      const close = (xy: readonly number[]) => xy.map((n) => expect.closeTo(n, 9) as number);
      expect(far(sheet(more), rules(table))).toEqual(close(base));
      expect(far(sheet(more), rules(table), 'L')).toEqual(close(large));
    },
  );

  it('may be told in a block', () => {
    const block = SMALL + words('15', [5, 5], 'UNITS: INCHES');
    expect(far(sheet({}, block), rules('ENGLISH'))?.[0]).toBeCloseTo(508, 9);
  });

  const inches = { $INSUNITS: [70, 1] } as const;
  it.each([
    [
      'header and sheet',
      { header: MILLIMETERS, sheet: said('ENGLISH') },
      'METRIC',
      /mm.*in\b/u,
      'dxf',
      187,
    ],
    [
      'header and measurement',
      { header: { ...inches, $MEASUREMENT: [70, 1] } },
      'ENGLISH',
      /metric/u,
      'dxf',
      12,
    ],
    [
      'header and table',
      { header: inches },
      'METRIC',
      /\$INSUNITS 1 says in.*table says mm/u,
      'rul',
      2,
    ],
    [
      'ten times: cm and METRIC',
      { header: { $INSUNITS: [70, 5] } },
      'METRIC',
      /says cm.*says mm/u,
      'rul',
      2,
    ],
  ] as readonly (readonly [string, Partial<Sheet>, string, RegExp, string, number])[])(
    'is refused where %s disagree, with both readings',
    (_, more, table, both, file, row) => {
      const call = (): unknown => read(sheet(more), rules(table));
      expect(call).toThrow(both);
      expectRefusal(call, 'unit-contradicted', { file: `foreign.${file}`, row });
    },
  );

  it('is refused with its row where two blocks disagree', () => {
    const block = (unit: string): string => RECTANGLE + words('15', [5, 5], `UNITS: ${unit}`);
    const dxf = drawing({
      blocks: { FRONT: block('METRIC'), BACK: block('INCH') },
      sheet: insert('FRONT') + insert('BACK'),
    });
    const row = dxf.split('\n').indexOf('UNITS: INCH') - 10;
    expectRefusal(() => read(dxf), 'unit-contradicted', { file: 'foreign.dxf', row });
  });

  it('is refused where it is none of a pattern', () => {
    expectRefusal(() => read(sheet({ header: { $INSUNITS: [70, 6] } })), 'unit-unknown', {
      file: 'foreign.dxf',
      row: 8,
    });
    expectRefusal(() => read(sheet({ sheet: said('ELLS') })), 'unit-unknown', {
      ...{ file: 'foreign.dxf', row: 183 },
    });
  });

  it('is refused where only the rule table says one and another would do as well', () => {
    // 200 units are 20 cm, 2 m in centimeters, 5.08 m in inches.
    const call = (): unknown => read(drawing({ blocks: { FRONT: RECTANGLE } }));
    expectRefusal(call, 'unit-missing', { file: 'foreign.dxf' });
    expect(call).toThrow('20 cm long, in inches 508 cm, in centimeters 200 cm');
  });

  it('is taken from the rule table where no other unit can be', () => {
    // 700 units in inches would be 17.8 m, in centimeters 7 m.
    const panel = [
      [0, 0],
      [250, 0],
      [250, 700],
      [0, 700],
    ] as const;
    const dxf = drawing({ blocks: { FRONT: polyline('1', panel) + ruled(panel) } });
    expect(outline(read(dxf), 'L').corners[2]).toEqual([254, 701]);
  });

  it('fails where METRIC would make a whole pattern shorter than 20 cm, and warns of it where mm does', () => {
    const centimeters = [
      [0, 0],
      [25, 0],
      [25, 70],
      [0, 70],
    ] as const;
    const block = polyline('1', centimeters) + ruled(centimeters);
    const [doubt] = told(read(sheet({ sheet: said('METRIC') }, block)), 'unit-doubt');
    expect(doubt).toMatch(/^fail: .*7 cm long, in inches 177.8 cm, in centimeters 70 cm/u);
    const named = sheet({ header: MILLIMETERS, sheet: said('METRIC') }, block);
    expect(told(read(named), 'unit-doubt')[0]).toMatch(/^warning: /u);
  });

  it.each([
    ['2.9 cm', 29, 20],
    ['5.1 m', 5100, 700],
  ])('is refused for a piece of %s', (_, width, height) => {
    const corners = [
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ] as const;
    const dxf = drawing({
      header: MILLIMETERS,
      blocks: { FRONT: RECTANGLE, TAB: polyline('1', corners) },
    });
    const row = dxf.split('\n').indexOf('TAB') - 4;
    expectRefusal(() => read(dxf), 'unit-contradicted', { file: 'foreign.dxf', row });
  });
});
