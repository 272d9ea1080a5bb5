/** The map of a tiled plane: which sheet lies where, over the outlines of the largest size. */
import type { Box } from '../geometry/bounds';
import { joinBoxes } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import { sizeWords } from '../render/captions';
import { flattened } from '../render/chords';
import type { PathShape, Shape } from '../render/scene';
import type { CalledSize } from '../render/nest-drawing';
import { polyline, rectangle } from '../render/scene';
import { SOFT_INK } from '../render/size-style';
import type { Sketch } from '../render/sketch';
import { sketchOf } from '../render/sketch';
import { CAP_MIDDLE, fitted, text } from '../render/type';
import type { TiledPlane } from './tile-page';

const OUTLINE = { color: '#9aa6b4', width: 0.35 };
const TILE = { color: SOFT_INK, width: 0.25 };
/** What of a piece is drawn on the map. */
const OUTLINES: ReadonlySet<string> = new Set(['outline', 'cut-line']);
/** Type size of the names, mm, at most. */
const NAME = 4;

/** The map in a frame of `width` x `height` mm; `largest` is the size that is shown. */
export function tileMap(
  { shapes, tiles }: TiledPlane,
  largest: CalledSize,
  width: number,
  height: number,
): Sketch {
  const all: Box = joinBoxes(tiles.map(({ box }) => box));
  const scale = Math.min(width / (all.right - all.left), height / (all.bottom - all.top));
  const small = ({ x, y }: Point): Point => point((x - all.left) * scale, (y - all.top) * scale);
  const size = Math.min(
    NAME,
    ...tiles.map(({ name, box }) => fitted(name, NAME, 0.7 * (box.right - box.left) * scale)),
  );
  const outlines = outlinePaths(
    shapes.filter(({ layer }) => layer === sizeWords(largest)),
    point(0, 0),
  );
  return sketchOf([
    ...outlines.map((path) =>
      polyline(
        'map-outline',
        flattened(path.shape.segments).map((p) => small(moved(p, path.zero))),
        OUTLINE,
      ),
    ),
    ...tiles.flatMap(({ name, box }): Shape[] => {
      const [a, b] = [small(point(box.left, box.top)), small(point(box.right, box.bottom))];
      const middle = point((a.x + b.x) / 2, (a.y + b.y) / 2 + CAP_MIDDLE * size);
      return [
        rectangle('map-tile', { left: a.x, top: a.y, right: b.x, bottom: b.y }, TILE),
        text(name, middle, size, { anchor: 'middle' }),
      ];
    }),
  ]);
}

interface PlacedPath {
  readonly shape: PathShape;
  readonly zero: Point;
}

function outlinePaths(shapes: readonly Shape[], zero: Point): readonly PlacedPath[] {
  return shapes.flatMap((shape): readonly PlacedPath[] => {
    if (shape.kind === 'group') {
      return outlinePaths(shape.children, moved(zero, shape.offset ?? point(0, 0)));
    }
    return shape.kind === 'path' && OUTLINES.has(shape.part) ? [{ shape, zero }] : [];
  });
}

function moved(p: Point, by: Point): Point {
  return point(p.x + by.x, p.y + by.y);
}
