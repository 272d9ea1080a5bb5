/** The folded vent cut through: which layer lies on which, seen from above with the outside below. */
import type { Point } from '../../geometry/point';
import { point } from '../../geometry/point';
import type { Shape, Stroke } from '../../render/scene';
import { polyline } from '../../render/scene';
import { INK, SOFT_INK } from '../../render/size-style';
import type { Sketch } from '../../render/sketch';
import { sketchOf } from '../../render/sketch';
import { text } from '../../render/type';

const SHELL: Stroke = { color: INK, width: 0.6 };
const LINING: Stroke = { color: SOFT_INK, width: 0.5, dash: [1.6, 1] };
/** mm. */
const TYPE = 2.1;
const WIDTH = 52;
/** mm: where the center line lies, how wide the extensions are drawn, and how far layers lie apart. */
const CENTER = 27;
const EXTENSION = 12;
const APART = 2.4;
/** Levels from the inside to the outside, in layers. */
const LEVELS = { lining: 1, under: 2, folded: 3, shell: 4 } as const;

/**
 * The left back is folded in at the center line and its extension lies over that of the right back; the
 * lining, if there is one, goes to the long edge of each. The same for every size.
 */
export function ventSection(isLined: boolean): Sketch {
  // Without a lining there is nothing above the extensions, and so no room for it.
  const lower = isLined ? 3 : 3 - LEVELS.under * APART;
  const at = (x: number, level: number): Point => point(x, TYPE + lower + level * APART);
  const edge = CENTER - EXTENSION;
  const { lining, under, folded, shell } = LEVELS;
  const left = [at(0, shell), at(CENTER, shell), at(CENTER, folded), at(edge, folded)];
  const right = [at(WIDTH, shell), at(CENTER + 2, shell), at(CENTER + 1, under), at(edge, under)];
  const lined: readonly Shape[] = [
    polyline('lining', [at(0, lining), at(edge - 5, lining), at(edge - 1, folded)], LINING),
    polyline('lining', [at(WIDTH, lining), at(edge, lining), at(edge, under)], LINING),
    words('left lining', at(0, lining - 0.4), 'start'),
    words('right lining', at(WIDTH, lining - 0.4), 'end'),
  ];
  return sketchOf([
    words('Cut through the vent, seen from above', point(0, TYPE), 'start'),
    polyline('shell', left, SHELL),
    polyline('shell', right, SHELL),
    words('left back', at(0, shell + 1.1), 'start'),
    words('fold at center', at(CENTER, shell + 1.1), 'middle'),
    words('right back', at(WIDTH, shell + 1.1), 'end'),
    ...(isLined ? lined : []),
  ]);
}

function words(said: string, at: Point, anchor: 'start' | 'middle' | 'end'): Shape {
  return text(said, at, TYPE, { anchor, color: SOFT_INK });
}
