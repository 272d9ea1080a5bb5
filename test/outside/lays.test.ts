/** Lays painted by librsvg: what two pieces share is darker, and what lies off the cloth is seen. */
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { PAIRED_WIDTHS } from '../../src/fabric/cloth';
import { fabricNeeds } from '../../src/fabric/fabric-needs';
import type { Lay } from '../../src/fabric/lay';
import { isLay } from '../../src/fabric/lay';
import type { Point } from '../../src/geometry/point';
import { cutSize } from '../../src/files/fabric-files';
import { wholeDemo } from '../print/printing';
import { describeOutside, folder, svgRaster } from './tools';

/** mm of cloth a dot. */
const DOT = 2;
/** Gray of one layer, and of two, with room for what a dot at an edge has of both. */
const ONE = 128;
const TWO = 90;

type Pieces = readonly (readonly Point[])[];

/** Dots with more than one piece, and dots of pieces off the cloth; a millimeter of paper is a dot. */
function painted(path: string, pieces: Pieces, left: number, right: number, end: number) {
  const margin = 20;
  const [width, height] = [(right - left) / DOT + 2 * margin, end / DOT + 2 * margin];
  const dot = ({ x, y }: Point): string => `${(x - left) / DOT + margin},${y / DOT + margin}`;
  const shapes = pieces.map(
    (corners) =>
      `<polygon points="${corners.map(dot).join(' ')}" fill="rgb(${ONE},${ONE},${ONE})" ` +
      'style="mix-blend-mode:multiply"/>',
  );
  const { samples, channels, ...raster } = svgRaster(
    path,
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" ` +
      `viewBox="0 0 ${width} ${height}"><rect width="100%" height="100%" fill="white"/>${shapes.join('')}</svg>`,
    25.4,
  );
  let [shared, off, inked] = [0, 0, 0];
  for (let y = 0; y < raster.height; y++) {
    for (let x = 0; x < raster.width; x++) {
      const gray = samples[(y * raster.width + x) * channels] ?? 255;
      if (gray < TWO) shared++;
      if (gray > (255 + ONE) / 2) continue;
      inked++;
      const isOn =
        x >= margin - 1 && y >= margin - 1 && x <= width - margin + 1 && y <= height - margin + 1;
      if (!isOn) off++;
    }
  }
  return { shared, off, inked };
}

/** Across the cloth as it lies on the table: below 0 is the opened end of folded cloth. */
function sidesOf({ cloth, folding, placements }: Lay): readonly [number, number] {
  if (cloth.fold === 'open') return [0, cloth.width];
  const across = (cloth.width + folding.strip) / 2;
  if (!placements.some(({ zone }) => zone === 'opened-end')) return [0, across];
  // Opened out, what was folded in lies beyond each fold.
  const beyond = (cloth.width - across) / (cloth.fold === 'middle' ? 2 : 1);
  return [-beyond, cloth.width - beyond];
}

describeOutside('the lays', () => {
  const place = folder();
  const result = wholeDemo({ style: 'shared-pencil' });
  const sizes = [result.shown[0], result.shown.at(-1)].flatMap((size) =>
    size === undefined ? [] : [cutSize(size)],
  );
  const lays = fabricNeeds(sizes, { widths: PAIRED_WIDTHS, naps: ['with'] }).flatMap(
    ({ cloth, width, fold, sizes: needs }) =>
      needs.flatMap(({ label, lay }) =>
        isLay(lay)
          ? [[`${cloth} ${width.value} ${width.unit} ${fold} ${label}`, lay] as const]
          : [],
      ),
  );

  it('of every cloth, width and fold have no dot of two pieces, and none off the cloth', () => {
    expect(lays.length).toBeGreaterThan(20);
    const folds = new Set(
      lays.map(
        ([
          ,
          {
            cloth: { fold },
          },
        ]) => fold,
      ),
    );
    expect(folds).toEqual(new Set(['folded', 'middle', 'open']));
    for (const [name, lay] of lays) {
      const [left, right] = sidesOf(lay);
      const pieces = lay.placements.map(({ corners }) => corners);
      const { shared, off, inked } = painted(join(place, 'a.svg'), pieces, left, right, lay.length);
      expect([name, shared, off]).toEqual([name, 0, 0]);
      // As much as the pieces have, each once.
      const area = lay.placements.reduce((sum, placement) => sum + placement.area, 0) / DOT ** 2;
      expect(Math.abs(inked / area - 1), name).toBeLessThan(0.02);
    }
  });

  it('would show a piece that is 5 mm off its place', () => {
    const [, lay] = lays.find(([, { placements }]) => placements.length > 2) ?? [];
    if (lay === undefined) throw new Error('no lay of three pieces');
    const [left, right] = sidesOf(lay);
    const moved = (by: number): Pieces =>
      lay.placements.map(({ corners }, i) =>
        i === 0 ? corners.map(({ x, y }) => ({ x: x + by, y: y + by })) : corners,
      );
    const seen = [-5, 5].map((by) =>
      painted(join(place, 'b.svg'), moved(by), left, right, lay.length),
    );
    expect(Math.max(...seen.map(({ shared, off }) => shared + off))).toBeGreaterThan(50);
  });
});
