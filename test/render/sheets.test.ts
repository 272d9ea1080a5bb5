import { describe, expect, it } from 'vitest';
import { boxHolds, boxesOverlap } from '../../src/geometry/bounds';
import { chordsOf, isClear } from '../../src/render/chords';
import type { NestDrawing } from '../../src/render/nest-drawing';
import { nestSheet } from '../../src/render/nest-sheet';
import { sizeSheet } from '../../src/render/size-sheet';
import { svg } from '../../src/render/svg';
import { UNEVEN, drawingOf, even } from './fixture';
import { flatPaths, flatTexts } from './flat';
import { all, get, having, pathPoints, readSvg } from './read-svg';
import type { Element } from './read-svg';
import { expectRefusal } from '../expect-refusal';

const UNEVEN_NEST = drawingOf(UNEVEN, { base: '10' });

/** Nests that have been trouble: many sizes, no steps, long labels, other stack points. */
const NESTS: Readonly<Record<string, NestDrawing>> = {
  '12 uneven sizes': UNEVEN_NEST,
  '1 size': drawingOf(UNEVEN.slice(0, 1)),
  '2 sizes': drawingOf(UNEVEN.slice(4, 6)),
  '20 sizes': drawingOf(even(20, 1, String)),
  '20 sizes, tiny steps, long labels': drawingOf(even(20, 0.25, (i) => `${i}W (US)`)),
  '20 sizes of one shape': drawingOf(even(20, 0, (i) => `${i}W (US)`)),
  '31 sizes': drawingOf(even(31, 0.5, (i) => `Size ${i}`)),
  'short skirts': drawingOf(UNEVEN, { length: 9 }),
  'wide steps': drawingOf(even(6, 6, String)),
  'waist larger than hip': drawingOf(UNEVEN.map((size, i) => ({ ...size, waist: size.hip + i }))),
  'stacked at the hip': drawingOf(UNEVEN, { stackPoint: 'side_hip' }),
  'stacked at the hem, growing': drawingOf(UNEVEN, { stackPoint: 'side_hem', lengthStep: 0.25 }),
  'only the length grows': drawingOf(
    even(8, 0, (i) => `L${i}`),
    { lengthStep: 0.5 },
  ),
  'base not shown': drawingOf(UNEVEN, { base: '99', lengthStep: 0.25 }),
  'long title': drawingOf(UNEVEN, { title: 'A skirt of many words '.repeat(12) }),
};

const PANELS = ['front', 'back'] as const;

describe.each(Object.entries(NESTS))('nest of %s', (_, drawing) => {
  const scene = nestSheet(drawing);
  const texts = flatTexts(scene);
  const paths = flatPaths(scene);

  it('keeps all words apart', () => {
    const clashes = texts.flatMap((a, i) =>
      texts
        .slice(i + 1)
        .filter((b) => boxesOverlap(a.box, b.box))
        .map((b) => `${a.text.words} / ${b.text.words}`),
    );
    expect(clashes).toEqual([]);
  });

  it('hides no line under words', () => {
    const hidden = texts.flatMap(({ text, box }) =>
      paths
        .filter(({ points }) => !isClear(box, chordsOf([points])))
        .map(({ part }) => `${text.words} on ${part}`),
    );
    expect(hidden).toEqual([]);
  });

  it('keeps everything on the sheet, with a margin', () => {
    const inner = { left: 30, top: 30, right: scene.width - 30, bottom: scene.height - 30 };
    expect(texts.filter(({ box }) => !boxHolds(inner, box))).toEqual([]);
    const beyond = paths.filter(({ points }) =>
      points.some(
        ({ x, y }) => !(x >= 30 && x <= scene.width - 30 && y >= 30 && y <= scene.height - 30),
      ),
    );
    expect(beyond).toEqual([]);
  });

  it('labels every size at every piece, and leads each label to a corner of its size', () => {
    if (drawing.sizes.length === 1) return;
    const root = readSvg(svg(scene));
    for (const { label } of drawing.sizes) {
      const [size] = having(root, 'data-size', label);
      for (const panel of PANELS) {
        const [piece] = having(size, 'data-piece', panel);
        const labels = all(piece).filter(({ name }) => name === 'text');
        expect(labels.length).toBeGreaterThan(0);
        expect(labels.every(({ text }) => text === label)).toBe(true);
        const corners = pathPoints(having(piece, 'data-part', 'outline')[0]);
        for (const leader of having(piece, 'data-part', 'leader')) {
          const [[x, y] = [NaN, NaN]] = pathPoints(leader);
          expect(corners.some(([cx, cy]) => Math.hypot(cx - x, cy - y) < 2.6)).toBe(true);
        }
      }
    }
  });

  it('is well-formed XML with no identifier twice', () => {
    const root = readSvg(svg(scene));
    const ids = all(root)
      .map((element) => get(element, 'id'))
      .filter((id) => id !== '');
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toContain('common');
    expect(ids).toHaveLength(drawing.sizes.length + 1);
  });
});

describe('true scale', () => {
  const root = readSvg(svg(nestSheet(UNEVEN_NEST)));

  it('makes one user unit one millimeter', () => {
    const width = get(root, 'width');
    const height = get(root, 'height');
    expect(width).toMatch(/^[\d.]+mm$/);
    expect(get(root, 'viewBox')).toBe(`0 0 ${width.slice(0, -2)} ${height.slice(0, -2)}`);
    const scaled = all(root).filter((element) => /scale|matrix/.test(get(element, 'transform')));
    expect(scaled).toEqual([]);
  });

  it('draws test squares of 100 mm and 4 in', () => {
    const sides = having(root, 'data-part', 'test-square').map((square) => {
      const corners = pathPoints(square);
      expect(corners).toHaveLength(4);
      return corners.map(([x, y], i) => {
        const [nextX, nextY] = corners[(i + 1) % 4] ?? [NaN, NaN];
        return Math.hypot(nextX - x, nextY - y);
      });
    });
    expect(sides).toHaveLength(2);
    sides[0]?.forEach((side) => expect(side).toBeCloseTo(100, 6));
    sides[1]?.forEach((side) => expect(side).toBeCloseTo(101.6, 6));
    const words = all(root).map(({ text }) => text);
    expect(words.filter((text) => text === '100 mm')).toHaveLength(2);
    expect(words.filter((text) => text === '4 in')).toHaveLength(2);
  });

  it.each(['center_waist', 'side_hip'])('repeats the points of the pieces, %s at zero', (name) => {
    const drawing = drawingOf(UNEVEN, { stackPoint: name });
    const nest = readSvg(svg(nestSheet(drawing)));
    for (const { label, pieces } of drawing.sizes) {
      const alone = readSvg(svg(sizeSheet(drawing, label)));
      for (const sheet of [nest, alone]) {
        const [size] = having(sheet, 'data-size', label);
        for (const { plan, points } of pieces) {
          const [group] = having(size, 'data-piece', plan.name);
          const drawn = pathPoints(having(group, 'data-part', 'outline')[0]);
          const wanted = plan.outline.flatMap((edge) => {
            if (edge.kind === 'cubic') return [edge.from, edge.leave, edge.arrive];
            return edge.kind === 'dart' ? [edge.from, edge.tip] : [edge.from];
          });
          expect(drawn).toHaveLength(wanted.length);
          drawn.forEach(([x, y], i) => {
            const place = points[plan.pointNames.indexOf(wanted[i] ?? '')];
            expect(Math.abs(x - (place?.x ?? NaN))).toBeLessThan(0.001);
            expect(Math.abs(y - (place?.y ?? NaN))).toBeLessThan(0.001);
          });
          expect(get(group, 'transform')).toMatch(/^translate\(\d+ \d+\)$/);
        }
      }
    }
  });
});

describe('what a sheet says', () => {
  const wordsOf = (root: Element): readonly string[] => all(root).map(({ text }) => text);

  it('names the pieces, the folds, the sizes and the base', () => {
    const words = wordsOf(readSvg(svg(nestSheet(UNEVEN_NEST))));
    for (const expected of [
      'Pencil skirt',
      'FRONT',
      'Cut 1 on fold',
      'CENTER FRONT, PLACE ON FOLD',
      'BACK',
      'Cut 2',
      'CENTER BACK',
      'HIP LINE',
      'GRAIN',
      'ZIP ALLOWANCE 1 in (2.5 cm)',
      '10, base',
      'inches',
      'center waist, ringed',
      'Net lines: seam allowances are not included, except the zip allowance.',
      'Sew a toile before cutting cloth.',
    ]) {
      expect(words).toContain(expected);
    }
    // In the legend, and on both panels at two corners, at the drill hole and on lines.
    for (const { label } of UNEVEN) {
      if (label === '10') continue;
      expect(words.filter((text) => text === label).length).toBeGreaterThanOrEqual(7);
    }
  });

  it('shows one size alone with the same furniture', () => {
    const root = readSvg(svg(sizeSheet(UNEVEN_NEST, '8')));
    const sizes = all(root).filter((element) => element.attributes.has('data-size'));
    expect(sizes.map((element) => get(element, 'id'))).toEqual(['size-8']);
    const words = wordsOf(root);
    expect(words.filter((text) => text === 'Size 8')).toHaveLength(2);
    expect(words).toContain('CENTER FRONT, PLACE ON FOLD');
    expect(words).toContain('Sew a toile before cutting cloth.');
    expect(having(root, 'data-part', 'test-square')).toHaveLength(2);
    const [outline] = having(root, 'data-part', 'outline');
    expect(get(outline, 'stroke-dasharray')).toBe('');
  });

  it('refuses a size that is not there', () => {
    expectRefusal(() => sizeSheet(UNEVEN_NEST, '99'), 'size-unknown', {}, 'Got: 99');
  });

  it('leaves out the words of a zip allowance that is nothing', () => {
    const drawing: NestDrawing = {
      ...UNEVEN_NEST,
      sizes: UNEVEN_NEST.sizes.map(({ label, pieces }) => ({
        label,
        pieces: pieces.map((piece) => ({
          ...piece,
          points: piece.points.map(({ x, y }) => ({ x: Math.max(0, x), y })),
        })),
      })),
    };
    const words = wordsOf(readSvg(svg(nestSheet(drawing))));
    expect(words.filter((text) => text.startsWith('ZIP'))).toEqual([]);
  });

  it('gives the same bytes every time', () => {
    expect(svg(nestSheet(UNEVEN_NEST))).toBe(svg(nestSheet(drawingOf(UNEVEN, { base: '10' }))));
    expect(svg(sizeSheet(UNEVEN_NEST, '22'))).toBe(svg(sizeSheet(UNEVEN_NEST, '22')));
  });
});

describe('sizes told apart', () => {
  const nest = drawingOf(even(20, 1, String), { base: '99' });

  it('gives each of 20 sizes its own pair of color and dash, neighbors differing in both', () => {
    const root = readSvg(svg(nestSheet(nest)));
    const styles = nest.sizes.map(({ label }) => {
      const [size] = having(root, 'data-size', label);
      const [outline] = having(size, 'data-part', 'outline');
      return { color: get(outline, 'stroke'), dash: get(outline, 'stroke-dasharray') };
    });
    expect(new Set(styles.map(({ color, dash }) => `${color} ${dash}`)).size).toBe(20);
    styles.slice(1).forEach(({ color, dash }, i) => {
      expect(color).not.toBe(styles[i]?.color);
      expect(dash).not.toBe(styles[i]?.dash);
    });
    // Dark enough to read on white: a contrast of 4.5 and more.
    for (const { color } of styles) expect(contrastWithWhite(color)).toBeGreaterThan(4.5);
  });

  it('draws the base heavier, unbroken and last', () => {
    const root = readSvg(svg(nestSheet(UNEVEN_NEST)));
    const sizes = all(root).filter((element) => element.attributes.has('data-size'));
    expect(get(sizes.at(-1), 'data-size')).toBe('10');
    const outlines = sizes.map((size) => having(size, 'data-part', 'outline')[0]);
    const widths = outlines.map((outline) => Number(get(outline, 'stroke-width')));
    expect(Math.max(...widths.slice(0, -1))).toBeLessThan(widths.at(-1) ?? NaN);
    expect(outlines.map((outline) => get(outline, 'stroke-dasharray') === '')).toEqual([
      ...Array<boolean>(11).fill(false),
      true,
    ]);
  });
});

function contrastWithWhite(color: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((i) => {
    const share = parseInt(color.slice(i, i + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 1.05 / (0.2126 * r + 0.7152 * g + 0.0722 * b + 0.05);
}
