/** Blocks and pictures on pages: places worked out by hand on a page of 100 by 100 mm. */
import { describe, expect, it } from 'vitest';
import type { Flowing } from '../../src/print/flow';
import { flowed } from '../../src/print/flow';
import { rectangle } from '../../src/render/scene';
import { sketchOf } from '../../src/render/sketch';
import type { Sketch } from '../../src/render/sketch';
import { shapeBox } from '../../src/render/shape-box';

const ROOM = { left: 10, top: 20, right: 110, bottom: 120 };

/** A box of so many mm; its line is thin enough to count for nothing. */
function sketch(width: number, height: number): Sketch {
  const box = { left: 0, top: 0, right: width, bottom: height };
  return { ...sketchOf([rectangle('rule', box, { color: '#000000', width: 0.01 })]), box };
}

/** The corners of what lies on each page. */
function corners(all: readonly Flowing[]): readonly (readonly (readonly number[])[])[] {
  return flowed(all, ROOM).map((shapes) =>
    shapes.map((shape) => {
      const { left, top } = shapeBox(shape);
      return [Math.round(left), Math.round(top)];
    }),
  );
}

describe('what flows over pages', () => {
  it('begins a page where a block, or what has to follow it, has no room', () => {
    const block = sketch(100, 30);
    expect(
      corners([
        { block, above: 5 },
        { block, above: 5 },
        { block, above: 5, needed: 31 },
        { block, above: 5 },
      ]),
    ).toEqual([
      [
        [10, 20],
        [10, 55],
      ],
      [
        [10, 20],
        [10, 55],
      ],
    ]);
  });

  // 30 mm are taken above; the high picture has no room below them, the three low ones do.
  it('fills a page with low pictures where the high one between them has to wait', () => {
    const low = sketch(40, 25);
    expect(
      corners([
        { block: sketch(100, 30), above: 5 },
        { block: [low, sketch(30, 80), low, low], above: 4 },
        { block: sketch(100, 10), above: 5 },
      ]),
    ).toEqual([
      [
        [10, 20],
        [10, 54],
        [56, 54],
        [10, 85],
      ],
      [
        [10, 20],
        [10, 105],
      ],
    ]);
  });

  it('lays a picture that no page has room for alone', () => {
    const tall = sketch(40, 140);
    const small = sketch(40, 40);
    expect(corners([{ block: [tall, small, tall], above: 0 }])).toEqual([
      [[10, 20]],
      [[10, 20]],
      [[10, 20]],
    ]);
    expect(flowed([{ block: [], above: 5 }], ROOM)).toEqual([]);
  });
});
