import { describe, expect, it } from 'vitest';
import { mirroredIn, point, unit } from '../../src/geometry/point';

describe('the image of a point in a line', () => {
  it.each([
    ['the axis of y', point(3, 4), point(0, 0), point(0, 1), point(-3, 4)],
    ['a level', point(3, 4), point(7, 10), point(-1, 0), point(3, 16)],
    [
      'the diagonal, where the coordinates change places',
      point(3, 4),
      point(5, 5),
      point(1, 1),
      point(4, 3),
    ],
    // Through the origin at a slope of 1/2: (2, 1) is on it, (-1, 2) square to it.
    ['a line of slope 1/2', point(2 - 1, 1 + 2), point(0, 0), point(2, 1), point(2 + 1, 1 - 2)],
  ])('%s', (_, p, at, along, image) => {
    const found = mirroredIn(p, at, unit(along));
    expect(found.x).toBeCloseTo(image.x, 12);
    expect(found.y).toBeCloseTo(image.y, 12);
  });
});
