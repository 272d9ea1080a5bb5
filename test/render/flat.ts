/** A scene without its groups, everything at its place on the sheet. */
import type { Box } from '../../src/geometry/bounds';
import type { Point } from '../../src/geometry/point';
import { add, point } from '../../src/geometry/point';
import { flattened } from '../../src/render/chords';
import type { Scene, Shape, TextShape } from '../../src/render/scene';
import { textBox } from '../../src/render/type';

export interface FlatText {
  readonly text: TextShape;
  readonly box: Box;
  /** Names of the groups around it: sizes and pieces. */
  readonly within: readonly string[];
}

export interface FlatPath {
  readonly part: string;
  readonly points: readonly Point[];
  readonly within: readonly string[];
}

export function flatTexts(scene: Scene): readonly FlatText[] {
  return leaves(scene).flatMap(({ shape, offset, within }) => {
    if (shape.kind !== 'text') return [];
    const text = { ...shape, at: add(shape.at, offset) };
    return [{ text, box: textBox(text), within }];
  });
}

/** Paths as chains of points, one for each time the pen comes down. */
export function flatPaths(scene: Scene): readonly FlatPath[] {
  return leaves(scene).flatMap(({ shape, offset, within }) => {
    if (shape.kind !== 'path') return [];
    return shape.segments.map((segment) => ({
      part: shape.part,
      points: flattened([segment]).map((p) => add(p, offset)),
      within,
    }));
  });
}

interface Leaf {
  readonly shape: Shape;
  readonly offset: Point;
  readonly within: readonly string[];
}

function leaves({ shapes }: Scene): readonly Leaf[] {
  const walk = (shape: Shape, offset: Point, within: readonly string[]): readonly Leaf[] => {
    if (shape.kind !== 'group') return [{ shape, offset, within }];
    const inner = add(offset, shape.offset ?? point(0, 0));
    const names = [...within, ...(shape.id === undefined ? [] : [shape.id])];
    const all = [...names, ...Object.values(shape.data ?? {})];
    return shape.children.flatMap((child) => walk(child, inner, all));
  };
  return shapes.flatMap((shape) => walk(shape, point(0, 0), []));
}
