/** A part turned a quarter clockwise, for paper that is too narrow for it. */
import type { Point } from '../geometry/point';
import { quarterTurn } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import type { Shape } from '../render/scene';
import type { PlanePart } from './plane';
import { part } from './plane';

/** The part a quarter turn clockwise about its zero; its words are turned with it. */
export function turned({ name, sizes, common }: PlanePart): PlanePart {
  return part(
    name,
    sizes.map((shapes) => shapes.map(turnedShape)),
    common.map(turnedShape),
  );
}

function turnedShape(shape: Shape): Shape {
  switch (shape.kind) {
    case 'path':
      return { ...shape, segments: shape.segments.map(turnedSegment) };
    case 'text':
      return { ...shape, at: quarterTurn(shape.at), rotation: shape.rotation + 90 };
    case 'group': {
      const children = shape.children.map(turnedShape);
      const { offset } = shape;
      return offset === undefined
        ? { ...shape, children }
        : { ...shape, children, offset: quarterTurn(offset) };
    }
  }
}

function turnedSegment(segment: Segment): Segment {
  const ends: { readonly from: Point; readonly to: Point } = {
    from: quarterTurn(segment.from),
    to: quarterTurn(segment.to),
  };
  return segment.kind === 'line'
    ? { kind: 'line', ...ends }
    : {
        kind: 'cubic',
        ...ends,
        leave: quarterTurn(segment.leave),
        arrive: quarterTurn(segment.arrive),
      };
}
