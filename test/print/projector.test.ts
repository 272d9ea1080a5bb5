/** The picture for a projector: what its edge scale shows a ruler, and what its words say of that. */
import { describe, expect, it } from 'vitest';
import { projectorPage } from '../../src/print/projector';
import type { Group, PathShape, Shape, TextShape } from '../../src/render/scene';
import { rectangle } from '../../src/render/scene';
import { shapeBox } from '../../src/render/shape-box';

// 1 in = 25.4 mm exactly (international yard and pound agreement of 1959).
const STEP = { cm: 10, in: 25.4 };

/** A pattern of this size, far from (0, 0). */
function pictureOf(width: number, height: number, unit: 'cm' | 'in') {
  const box = { left: 300, top: -200, right: 300 + width, bottom: -200 + height };
  const piece: Group = {
    kind: 'group',
    children: [rectangle('piece', box, { color: '#000000', width: 0.5 })],
  };
  const { scene } = projectorPage('Skirt', [piece], box, unit);
  const [scale, pattern] = scene.shapes as readonly [Group, Group];
  return { scene, scale, pattern: shapeBox(pattern) };
}

const isPath = (shape: Shape): shape is PathShape => shape.kind === 'path';
const isText = (shape: Shape): shape is TextShape => shape.kind === 'text';

/** The middle of each line of a cross, along x and y. */
function middles(scale: Group, part: string): readonly string[] {
  const found = scale.children.filter(isPath).filter((shape) => shape.part === part);
  return found.map((shape) => {
    const { left, right, top, bottom } = shapeBox(shape);
    return `${((left + right) / 2).toFixed(6)} ${((top + bottom) / 2).toFixed(6)}`;
  });
}

/** `90 1/2` as a number. */
function inches(text: string): number {
  return text
    .split(' ')
    .map((part) => part.split('/').map(Number))
    .reduce((sum, [a = NaN, b = 1]) => sum + a / b, 0);
}

describe.each([
  ['cm', 1500, 900],
  ['in', 1500, 900],
  ['in', 420, 1300],
  ['cm', 233.7, 71.2],
] as const)('the picture in %s of a pattern of %f x %f mm', (unit, width, height) => {
  const { scene, scale, pattern } = pictureOf(width, height, unit);
  const { x: outside } = scale.offset ?? { x: NaN };
  const [across, down] = [scene.width - 2 * outside, scene.height - 2 * outside];
  const words = scale.children.filter(isText);

  it('is whole from corner cross to corner cross, and has a cross in its middle', () => {
    for (const mm of [across, down])
      expect(Math.abs(mm / STEP[unit] - Math.round(mm / STEP[unit]))).toBeLessThan(1e-9);
    const corners = [0, across].flatMap((x) =>
      [0, down].map((y) => `${x.toFixed(6)} ${y.toFixed(6)}`),
    );
    expect([...new Set(middles(scale, 'corner-cross'))].sort()).toEqual(corners.sort());
    const center = `${(across / 2).toFixed(6)} ${(down / 2).toFixed(6)}`;
    expect(middles(scale, 'center-cross')).toEqual([center, center]);
  });

  it('says in both units what a ruler shows both ways, from corner to corner and in the middle', () => {
    const told = words.flatMap(({ words: line }) => {
      const [, name = '', cm = '', inch = ''] =
        /^(.*): ([\d.]+) cm, ([\d /]+) in$/u.exec(line) ?? [];
      return name === '' ? [] : [{ name, cm: Number(cm), inch: inches(inch) }];
    });
    const lengths = [across, down, Math.hypot(across, down), 200];
    expect(told).toHaveLength(lengths.length);
    for (const [i, { cm, inch }] of told.entries()) {
      expect(Math.abs(10 * cm - (lengths[i] ?? NaN))).toBeLessThanOrEqual(0.5);
      expect(Math.abs(25.4 * inch - (lengths[i] ?? NaN))).toBeLessThanOrEqual(25.4 / 32 + 1e-9);
    }
  });

  it('has a mark at every centimeter and inch of its edges, and the number of it beside it', () => {
    for (const name of ['cm', 'in'] as const) {
      const step = STEP[name];
      const marks = scale.children.filter(isPath).filter(({ part }) => part === `scale-${name}`);
      const starts = marks.map(({ segments }) => segments[0]?.from ?? { x: NaN, y: NaN });
      const wanted = ([length, at]: readonly [number, (mm: number) => string]) =>
        Array.from({ length: Math.floor(length / step + 1e-9) + 1 }, (_, i) => at(i * step));
      const edge = name === 'cm' ? { x: 0, y: 0 } : { x: across, y: down };
      const place = (x: number, y: number): string => `${x.toFixed(3)} ${y.toFixed(3)}`;
      expect(starts.map(({ x, y }) => place(x, y))).toEqual([
        ...wanted([across, (mm) => place(mm, edge.y)]),
        ...wanted([down, (mm) => place(edge.x, mm)]),
      ]);
    }
    const numbers = words.filter(({ words: one }) => /^\d+(?: cm| in)?$/u.test(one));
    expect(numbers.length).toBeGreaterThan(4);
    for (const { words: one, at } of numbers) {
      const count = Number.parseInt(one, 10);
      const near = (mm: number, step: number): boolean => Math.abs(mm - count * step) < 0.01;
      const middle = at.y - 0.36 * 7;
      expect([near(at.x, 10), near(middle, 10), near(at.x, 25.4), near(middle, 25.4)]).toContain(
        true,
      );
    }
  });

  it('has no line across the picture, and keeps scale and words clear of the pattern', () => {
    for (const shape of scale.children) {
      const box = shapeBox(shape);
      const isCenter = isPath(shape) && shape.part === 'center-cross';
      if (isPath(shape))
        expect(Math.hypot(box.right - box.left, box.bottom - box.top)).toBeLessThan(205);
      const [left, top] = [box.left + outside, box.top + outside];
      const [right, bottom] = [box.right + outside, box.bottom + outside];
      expect([left >= 0, top >= 0, right <= scene.width, bottom <= scene.height]).not.toContain(
        false,
      );
      if (isCenter) continue;
      const isClear =
        right < pattern.left ||
        left > pattern.right ||
        bottom < pattern.top ||
        top > pattern.bottom;
      expect(isClear).toBe(true);
    }
  });
});
