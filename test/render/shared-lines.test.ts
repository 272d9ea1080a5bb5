/** Lines of some sizes in one place: drawn once, in ink, with the sizes beside them. */
import { describe, expect, it } from 'vitest';
import { boxesOverlap } from '../../src/geometry/bounds';
import { drawnSizes } from '../../src/print/plane';
import type { DrawnPiece } from '../../src/render/drawn-piece';
import { drawnPieces } from '../../src/render/sheet-layout';
import type { PathShape, Shape, TextShape } from '../../src/render/scene';
import { shapeBox } from '../../src/render/shape-box';
import { INK } from '../../src/render/size-style';
import { sizesTold } from '../../src/render/sizes-told';
import { chartText } from '../skirts';
import { gradeLazily } from '../graded';

const SIZES = ['8', '10', '12'];

/** The pieces of three sizes, of which the first two are as long and have one hip depth; invented. */
function drawn(rows: Readonly<Record<string, readonly number[]>>, style: string) {
  const chart = chartText('cm', { waist_to_hip: [20, 20, 21], ...rows }, SIZES);
  const { title, display, range } = gradeLazily({ chart, base: '12', style });
  const drawing = {
    ...{ title, display, stackPoint: '', baseSize: '12' },
    sizes: range.sizes.map(({ label, pieces, cutPieces }) => ({ label, pieces, cutPieces })),
  };
  const pieces = drawnPieces(drawing, drawnSizes(drawing), { words: '', size: 9 });
  return (name: string): DrawnPiece => {
    const piece = pieces.find((one) => one.name === name);
    if (piece === undefined) throw new RangeError(`no ${name}`);
    return piece;
  };
}

const pathsOf = (shapes: readonly Shape[], part: string): readonly PathShape[] =>
  shapes.filter((one): one is PathShape => one.kind === 'path' && one.part === part);
const wordsIn = (shapes: readonly Shape[], words: string): readonly TextShape[] =>
  shapes.filter((one): one is TextShape => one.kind === 'text' && one.words === words);

/** The lowest level of a size's cut line: its hem. */
function hemOf({ sizes }: DrawnPiece, rank: number): number {
  const [cut] = pathsOf(sizes[rank] ?? [], 'cut-line');
  return Math.max(...(cut?.segments ?? []).map(({ to }) => to.y));
}

describe('a line that two of three sizes share', () => {
  const piece = drawn(
    { waist_girth: [66, 70, 74], hip_girth: [92, 96, 100], skirt_length: [60, 60, 63] },
    'pencil',
  )('front');
  const level = (y: number): readonly PathShape[] =>
    pathsOf(piece.common, 'shared-line').filter(({ segments }) =>
      segments.every(({ from, to }) => Math.abs(from.y - y) < 0.01 && Math.abs(to.y - y) < 0.01),
    );

  it('is in ink along the hem, with their names beside it', () => {
    const [hem, ...others] = level(hemOf(piece, 0));
    expect(hemOf(piece, 1)).toBeCloseTo(hemOf(piece, 0), 6);
    expect(others).toEqual([]);
    expect(hem?.stroke).toEqual({ color: INK, width: 0.8 });
    const beside = wordsIn(piece.common, '8, 10').filter(
      ({ at }) => Math.abs(at.y - hemOf(piece, 0)) < 10,
    );
    expect(beside.length).toBeGreaterThan(0);
    const [from, to] = [hem?.segments[0]?.from.x ?? NaN, hem?.segments[0]?.to.x ?? NaN];
    for (const { at } of beside) {
      expect(at.x).toBeGreaterThan(Math.min(from, to));
      expect(at.x).toBeLessThan(Math.max(from, to));
    }
  });

  it('is not drawn at the hem of the third', () => {
    expect(hemOf(piece, 2)).toBeCloseTo(hemOf(piece, 0) + 30, 6);
    expect(level(hemOf(piece, 2))).toEqual([]);
  });

  it('is one hip line for both, and that of the third in its own style', () => {
    expect(piece.sizes.map((shapes) => pathsOf(shapes, 'hip-line').length)).toEqual([0, 0, 1]);
    const [own, ...others] = pathsOf(piece.common, 'hip-line');
    expect(others).toEqual([]);
    expect(own?.stroke?.color).toBe(INK);
  });

  it('has words that stand on no others', () => {
    const texts = piece.common.filter(({ kind }) => kind === 'text');
    const boxes = texts.map(shapeBox);
    for (const [i, a] of boxes.entries())
      for (const b of boxes.slice(i + 1)) expect(boxesOverlap(a, b)).toBe(false);
  });
});

it('the darts and side seams of two lengths of one size are in ink, with both names', () => {
  const piece = drawn(
    {
      ...{ waist_girth: [66, 66, 74], hip_girth: [92, 92, 100], skirt_length: [60, 65, 65] },
      waist_to_hip: [20, 20, 20],
    },
    'shared-pencil',
  )('front');
  const shared = pathsOf(piece.common, 'shared-line');
  // Side seam from waist to hip, on the cut line and on the sewing line.
  const curves = shared.filter(({ segments }) =>
    segments.some(({ kind, from, to }) => kind === 'cubic' && Math.abs(to.y - from.y) > 150),
  );
  expect(curves.map(({ stroke }) => stroke?.width).sort()).toEqual([0.3, 0.8]);
  // Both legs of the dart, about 9 cm long.
  const legs = shared.filter(({ segments }) =>
    segments.some(
      ({ kind, from, to }) =>
        kind === 'line' && Math.abs(to.x - from.x) > 1 && Math.abs(to.y - from.y) > 60,
    ),
  );
  expect(legs.length).toBeGreaterThanOrEqual(2);
  expect(wordsIn(piece.common, '8, 10').length).toBeGreaterThanOrEqual(4);
});

describe('some sizes in few words', () => {
  const labels = ['6', '8', '10', '12', '14'];

  it.each([
    [[1, 2, 3], '8-12'],
    [[1, 2], '8, 10'],
    [[0, 2, 3, 4], '6, 10-14'],
    [[0, 4], '6, 14'],
  ])('%j are %s', (ranks, words) => {
    expect(sizesTold(labels, ranks)).toBe(words);
  });

  it('are told with `to` where a label has a hyphen', () => {
    expect(sizesTold(['4-6', '8-10', '12-14'], [0, 1, 2])).toBe('4-6 to 12-14');
  });
});
