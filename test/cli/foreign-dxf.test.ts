/** Drawings of others at the command line: read with the figures named, or refused with nothing written. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { rowsOf } from '../csv-tables';
import {
  MILLIMETERS,
  RECTANGLE,
  SQUARE,
  drawing,
  insert,
  line,
  polyline,
  rules,
  ruled,
  words,
} from '../dxf/foreign';
import { someSizes } from '../samples';
import { workplace, typed } from './workplace';

const place = workplace();

function grade(name: string, dxf: string | Uint8Array, table = rules()) {
  writeFileSync(join(place.path, `${name}.dxf`), dxf);
  place.write(`${name}.rul`, table);
  return place.run(
    ...[
      'grade',
      '--pattern',
      `${name}.dxf`,
      '--rules',
      `${name}.rul`,
      '--out',
      name,
      '--unit',
      'mm',
    ],
  );
}
const block = (inside: string, sheet = insert('FRONT')): string =>
  drawing({ header: MILLIMETERS, blocks: { FRONT: inside }, sheet });

/** x and y of a point in mm, y down. */
function graded(name: string, size: string, point: string): readonly number[] {
  const rows = rowsOf(place.read(`${name}/graded-points.csv`));
  const row = rows.find((own) => own.size === size && own.point === point);
  return [Number(row?.x_mm), Number(row?.y_mm)];
}

describe('grade --pattern with a drawing of others', () => {
  it('refuses cm on a sheet whose table says METRIC, and shows both', async () => {
    const dxf = drawing({ header: { $INSUNITS: [70, 5] }, blocks: { FRONT: RECTANGLE } });
    const { status, stderr } = await grade('units', dxf);
    expect(status).toBe(2);
    expect(stderr).toMatch(/\$INSUNITS 5 says cm.*rule table says mm/u);
    expect(existsSync(join(place.path, 'units'))).toBe(false);
  });

  it('refuses a piece of 2.9 cm', async () => {
    const tab = polyline('1', [
      [0, 0],
      [29, 0],
      [29, 20],
    ]);
    const { status, stderr } = await grade('tab', block(tab));
    expect(status).toBe(2);
    expect(stderr).toContain('Got: read in millimeters 2.9 cm long, in inches 73.66 cm');
  });

  it('reads a block that is mirrored and turned', async () => {
    const { status } = await grade(
      'turned',
      block(RECTANGLE, insert('FRONT', { scale: [-1, 1], turn: 90 })),
    );
    expect(status).toBe(0);
    // (200, 100) goes to (-200, 100), then to (-100, -200); its moves of (4, 1) to (-1, -4).
    expect(graded('turned', 'M', 'corner_3')).toEqual([-100, 200]);
    expect(graded('turned', 'L', 'corner_3')).toEqual([-101, 204]);
  });

  it('reads a bulge as an arc', async () => {
    const bent = SQUARE.map(([x, y], i) => [x, y, i === 1 ? 1 : 0] as const);
    expect((await grade('bulge', block(polyline('1', bent) + ruled(SQUARE)))).status).toBe(0);
    // The middle of a half circle about (200, 50) with a radius of 50.
    const rows = rowsOf(place.read('bulge/graded-points.csv'));
    const right = rows.filter((own) => own.size === 'M' && own.x_mm === '250');
    expect(right.map(({ y_mm }) => y_mm)).toContain('-50');
  });

  it('refuses an outline with a gap of 0.5 mm and names the place', async () => {
    const parts =
      polyline(
        '1',
        [
          [200, 100],
          [200, 0],
          [0, 0],
          [0, 99.5],
        ],
        false,
      ) + line('1', [0, 100], [200, 100]);
    const { status, stderr } = await grade('gap', block(parts));
    expect(status).toBe(2);
    expect(stderr).toContain('a gap of 0.5 mm from (0, 99.5) to (0, 100) mm');
  });

  it('reads names in Windows-1252', async () => {
    const text = block(RECTANGLE + words('15', [5, 5], 'PIECE NAME: R\u00fccken'));
    expect((await grade('latin', Buffer.from(text, 'latin1'))).status).toBe(0);
    expect(place.read('latin/graded-points.csv')).toContain('R\u00fccken,corner_1');
  });

  it('reads rules 0.18 mm beside their points with a warning, and fails at 1.1 mm', async () => {
    const off = (mm: number): string =>
      block(polyline('1', SQUARE) + ruled(SQUARE.map(([x, y]) => [x, y + mm] as const)));
    const near = await grade('near', off(0.18));
    expect(near.status).toBe(0);
    expect(graded('near', 'L', 'corner_3')).toEqual([204, -101]);
    expect(place.read('near/findings.csv')).toMatch(/warning,rule-beside.*up to 0.18 mm/u);
    expect((await grade('far', off(1.1))).status).toBe(1);
    expect(place.read('far/findings.csv')).toMatch(/fail,left-out.*4 TEXT on layer 2, turn point/u);
  });

  it('never grades a nest again', async () => {
    const names = ['FRONT_S', 'FRONT_M', 'FRONT_L'];
    const blocks = Object.fromEntries(names.map((name) => [name, RECTANGLE]));
    const { status, stderr } = await grade('nest', drawing({ header: MILLIMETERS, blocks }));
    expect(status).toBe(2);
    expect(stderr).toContain('the drawing is a nest, graded already: FRONT is there in 3 sizes');
  });

  it('fails for a cut-out that is lost', async () => {
    const hole = polyline('11', [
      [20, 20],
      [60, 20],
      [60, 60],
    ]);
    const dxf = block(RECTANGLE + hole);
    const row = dxf.slice(0, dxf.indexOf('0\nPOLYLINE\n8\n11\n')).split('\n').length;
    expect((await grade('hole', dxf)).status).toBe(1);
    expect(place.read('hole/findings.csv')).toContain(
      `1 POLYLINE on layer 11, internal cut out, in row ${row}`,
    );
  });

  it('brings the notches of the demo back on sewing line and cut line', async () => {
    const demo = readFileSync('size-charts/demo.csv', 'utf8');
    place.write('demo.csv', someSizes(demo, ['2', '12', '24']));
    await place.run(
      ...typed('grade demo.csv --base 12 --style shared-pencil --dxf --out demo --unit mm'),
    );
    const dxf = place.read('demo/pattern.dxf');
    const back = await place.run(
      ...typed('grade --pattern demo/pattern.dxf --rules demo/pattern.rul'),
      ...['--out', 'back', '--unit', 'mm'],
    );
    expect(back.status).toBe(0);
    expect(place.read('back/findings.csv')).not.toContain('left-out');
    // As many places on the sewing line as notches of the cut line, in every size.
    const notches = dxf.split('0\nPOINT\n8\n4\n').length - 1;
    const rows = rowsOf(place.read('back/graded-points.csv'));
    const sizes = new Set(rows.map(({ size }) => size)).size;
    const count = (start: string): number =>
      rows.filter(({ point = '' }) => point.startsWith(start)).length;
    expect(notches).toBeGreaterThan(20);
    expect(count('cut_notch')).toBe(notches * sizes);
    expect(count('sewn_notch')).toBe(notches * sizes);
  });
});
