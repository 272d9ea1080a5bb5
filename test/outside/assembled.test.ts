/** Sheets put together again, beside the whole drawing from another rasterizer. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { joinBoxes } from '../../src/geometry/bounds';
import { readPaper } from '../../src/print/paper';
import { drawnSizes, part, pieceParts } from '../../src/print/plane';
import { readPrintOptions } from '../../src/print/print-options';
import { SHEET_MARKS } from '../../src/print/tile-page';
import type { TiledPlane } from '../../src/print/tile-page';
import { tilePages, tiled } from '../../src/print/tiled';
import { pdf } from '../../src/render/pdf';
import type { Shape } from '../../src/render/scene';
import { svg } from '../../src/render/svg';
import { drawingOf } from '../../src/files/drawing-files';
import { showing, wholeDemo } from '../print/printing';
import type { Raster } from './raster';
import { gray } from './raster';
import { describeOutside, folder, grayPages, svgRaster } from './tools';

const PIECES = ['back', 'band'];
const DPI = 100;
const DOT = 25.4 / DPI;
/** A dot this dark is part of a line; a line that passes near a dot leaves at least a shade. */
const LINE = 110;
const SHADE = 245;

/**
 * Fonts are a reader's own, and so is how a curve's length is measured, by which dashes drift over
 * a long outline. Only unbroken lines can be compared dot by dot.
 */
function linesOf(shapes: readonly Shape[]): readonly Shape[] {
  return shapes.flatMap((shape): readonly Shape[] => {
    if (shape.kind === 'text') return [];
    if (shape.kind === 'group') return [{ ...shape, children: linesOf(shape.children) }];
    if (shape.stroke === undefined) return [shape];
    const { color, width } = shape.stroke;
    return [{ ...shape, stroke: { color, width } }];
  });
}

describeOutside('sheets put together', () => {
  const place = folder();
  const drawing = { ...drawingOf(wholeDemo({ sizes: ['2', '12', '24'] })), labelType: 4 };
  const sizes = drawnSizes(drawing);
  // The panels, with their curves, and narrow pieces beside them; more of them would show no more.
  const chosen = pieceParts(drawing, sizes).filter(({ name }) => PIECES.includes(name));
  const parts = chosen.map(({ name, sizes: shapes, common }) =>
    part(name, shapes.map(linesOf), linesOf(common)),
  );

  it.each([
    ['a4', 'overlap', '10mm'],
    ['a4', 'butt', '6mm'],
    ['letter', 'overlap', '1/2in'],
    ['letter', 'butt', '10mm'],
  ] as const)('of %s by %s with a margin of %s are the drawing', async (name, join_, margin) => {
    const paper = readPaper(name);
    if (paper.kind !== 'sheet') throw new Error('a sheet');
    const options = readPrintOptions({ paper: [name], join: join_, margin });
    const { plane } = tiled('Lines', [parts], sizes, paper, options);
    const layers = [...plane.shapes.map(({ layer = '' }) => layer), SHEET_MARKS];
    const bytes = await pdf(
      'Lines',
      layers.map((layer) => ({ name: layer, locked: false })),
      tilePages(plane),
    );
    const path = join(place, `${name}-${join_}.pdf`);
    writeFileSync(path, await showing(bytes, layers.slice(0, -1)));
    const pages = grayPages(path, DPI);
    expect(pages).toHaveLength(plane.tiles.length);
    const whole = wholeDrawing(join(place, `${name}-${join_}.svg`), plane);
    const sheet = assembled(plane, pages, whole);
    expect(dotsLost(whole, sheet)).toEqual([]);
    expect(dotsLost(sheet, whole)).toEqual([]);
  });
});

/** The plane untiled, its corner that of the first row and column of tiles. */
function wholeDrawing(path: string, plane: TiledPlane): Raster {
  const { left, top, right, bottom } = joinBoxes(plane.tiles.map(({ box }) => box));
  const scene = {
    title: 'Lines',
    width: right - left,
    height: bottom - top,
    shapes: [{ kind: 'group' as const, offset: { x: -left, y: -top }, children: plane.shapes }],
  };
  return gray(svgRaster(path, svg(scene), DPI));
}

/** For each dot of the whole drawing the dot of the sheet whose tile it lies in. */
function assembled({ tiles, format }: TiledPlane, pages: readonly Raster[], like: Raster): Raster {
  const { left, top } = joinBoxes(tiles.map(({ box }) => box));
  const { width, height } = like;
  const samples = new Uint8Array(width * height).fill(255);
  // The first dot whose middle is not left of or above a length.
  const dot = (mm: number): number => Math.ceil(mm / DOT - 0.5);
  for (const [i, { box }] of tiles.entries()) {
    const page = pages[i];
    if (page === undefined) throw new Error('a page a tile');
    const toPage = (offset: number) => (dots: number) => Math.floor(dots + 0.5 + offset / DOT);
    const columnOf = toPage(left - box.left + format.corner.x);
    const rowOf = toPage(top - box.top + format.corner.y);
    for (let row = dot(box.top - top); row < Math.min(height, dot(box.bottom - top)); row++) {
      const start = rowOf(row) * page.width;
      const end = Math.min(width, dot(box.right - left));
      for (let column = dot(box.left - left); column < end; column++) {
        samples[row * width + column] = page.samples[start + columnOf(column)] ?? 0;
      }
    }
  }
  return { width, height, channels: 1, samples };
}

/** Dots of lines in one picture that have not even a shade within a dot of them in the other. */
function dotsLost(from: Raster, to: Raster): readonly (readonly [number, number])[] {
  const { width, height } = from;
  const lost: [number, number][] = [];
  const shaded = (x: number, y: number): boolean => {
    for (let row = Math.max(0, y - 1); row <= Math.min(height - 1, y + 1); row++) {
      for (let column = Math.max(0, x - 1); column <= Math.min(width - 1, x + 1); column++) {
        if ((to.samples[row * width + column] ?? 0) < SHADE) return true;
      }
    }
    return false;
  };
  from.samples.forEach((light, i) => {
    if (light >= LINE) return;
    const [x, y] = [i % width, Math.floor(i / width)];
    if (!shaded(x, y)) lost.push([x, y]);
  });
  return lost;
}
