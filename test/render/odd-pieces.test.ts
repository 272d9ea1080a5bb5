/** Pieces that are no skirt panels: whatever has an outline must come out drawn and named. */
import { describe, expect, it } from 'vitest';
import { boxHolds, boxesOverlap } from '../../src/geometry/bounds';
import type { Edge, Part, Piece } from '../../src/pattern/piece';
import { piecePlan } from '../../src/pattern/piece';
import { chordsOf, isClear } from '../../src/render/chords';
import type { NestDrawing } from '../../src/render/nest-drawing';
import { nestSheet } from '../../src/render/nest-sheet';
import { sizeSheet } from '../../src/render/size-sheet';
import type { Scene } from '../../src/render/scene';
import { flatPaths, flatTexts } from './flat';

type Places = Readonly<Record<string, readonly [number, number]>>;

function pieceOf(name: string, part: Part, places: Places, outline: readonly Edge[]): Piece {
  const plan = piecePlan({
    name,
    part,
    cuttings: [
      { cloth: 'shell', count: 1, onFold: true },
      { cloth: 'interfacing', count: 2, onFold: false },
    ],
    pointNames: Object.keys(places),
    handles: new Set(),
    outline,
    marks: [],
  });
  return { plan, points: Object.values(places).map(([x, y]) => ({ x, y })) };
}

function rectangle(name: string, part: Part, width: number, height: number): Piece {
  const line = (from: string, to: string): Edge => ({ kind: 'line', from, to, seam: 'edge' });
  return pieceOf(name, part, { a: [0, 0], b: [width, 0], c: [width, height], d: [0, height] }, [
    line('a', 'b'),
    line('b', 'c'),
    line('c', 'd'),
    line('d', 'a'),
  ]);
}

function facing(width: number): Piece {
  const places = {
    center_waist: [0, 0],
    p: [width / 3, 0],
    q: [(2 * width) / 3, -8],
    side_waist: [width, -20],
    side_low: [width + 10, 30],
    r: [(2 * width) / 3, 48],
    s: [width / 3, 60],
    center_low: [0, 60],
  } as const;
  return pieceOf('front_facing', 'facing', places, [
    {
      kind: 'cubic',
      from: 'center_waist',
      leave: 'p',
      arrive: 'q',
      to: 'side_waist',
      seam: 'waist',
    },
    { kind: 'line', from: 'side_waist', to: 'side_low', seam: 'side' },
    { kind: 'cubic', from: 'side_low', leave: 'r', arrive: 's', to: 'center_low', seam: 'low' },
    { kind: 'fold', from: 'center_low', to: 'center_waist', seam: 'center_front' },
  ]);
}

const DRAWING: NestDrawing = {
  title: 'Odd pieces',
  baseSize: '3',
  stackPoint: 'center_waist',
  display: { unit: 'cm', fractions: false },
  sizes: Array.from({ length: 8 }, (_, i) => ({
    label: String(i),
    pieces: [
      rectangle('waistband', 'waistband', 640 + 25 * i, 60),
      facing(160 + 7 * i),
      rectangle('carrier', 'facing', 12, 70 + i),
      rectangle('label', 'facing', 8, 8),
    ],
  })),
};

const SHEETS: Readonly<Record<string, Scene>> = {
  nest: nestSheet(DRAWING),
  'one size': sizeSheet(DRAWING, '7'),
};

describe.each(Object.entries(SHEETS))('odd pieces, %s', (_, scene) => {
  const texts = flatTexts(scene);
  const paths = flatPaths(scene);

  it('are all named', () => {
    const words = texts.map(({ text }) => text.words);
    for (const name of ['WAISTBAND', 'FRONT FACING', 'CARRIER', 'LABEL']) {
      expect(words.filter((word) => word === name)).toHaveLength(1);
    }
    // Where room is short the lines of a name run on in one.
    const all = words.join('\n');
    expect(all.match(/Cut 1 on fold/g)).toHaveLength(4);
    expect(all.match(/Cut 2 of interfacing/g)).toHaveLength(4);
  });

  it('have a grainline, along the band and down the others', () => {
    const runs = paths
      .filter(({ part }) => part === 'grainline')
      .map(({ points: [from, to], within }) => {
        const dx = Math.abs((to?.x ?? NaN) - (from?.x ?? NaN));
        return [within.at(-1), dx > 1 ? 'across' : 'down'];
      });
    expect(runs).toEqual([
      ['waistband', 'across'],
      ['front_facing', 'down'],
      ['carrier', 'down'],
    ]);
  });

  it('keep words apart, off the lines and on the sheet', () => {
    const sheet = { left: 30, top: 30, right: scene.width - 30, bottom: scene.height - 30 };
    texts.forEach(({ box }, i) => {
      expect(texts.slice(i + 1).filter((other) => boxesOverlap(box, other.box))).toEqual([]);
      expect(paths.filter(({ points }) => !isClear(box, chordsOf([points])))).toEqual([]);
      expect(boxHolds(sheet, box)).toBe(true);
    });
  });
});
