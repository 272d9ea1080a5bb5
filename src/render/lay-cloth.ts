/** The cloth of a drawn lay: its layers, selvages and folds, at any scale. */
import type { Box } from '../geometry/bounds';
import { joinBoxes } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import type { Lay } from '../fabric/lay';
import { SAME_PLACE } from '../tolerance';
import type { Shape } from './scene';
import { filled, polyline, rectangle } from './scene';
import { INK, SOFT_INK } from './size-style';
import { CAP_MIDDLE, text } from './type';

const ONE_LAYER = '#f3f5f7';
const TWO_LAYERS = '#dfe5ec';
const SELVAGE = '#c9d1da';
const EDGE = { color: SOFT_INK, width: 0.3 };
const FLAP = { color: SOFT_INK, width: 0.3, dash: [1.2, 0.8] };
const FOLD = { color: INK, width: 0.6, dash: [6, 1.2, 1.2, 1.2] };

/** A lay on cloth of which `bought` mm lie on the table. */
export interface OnTable {
  readonly lay: Lay;
  readonly bought: number;
}

/** The parts of the cloth on the table, in mm on the cloth. */
interface Parts {
  /** What lies folded, and what lies open; one of them may be missing. */
  readonly folded: Box | undefined;
  readonly open: Box | undefined;
}

function partsOf({ lay, bought }: OnTable): Parts {
  const { cloth, folding, folded, placements } = lay;
  const isOpened = placements.some(({ zone }) => zone === 'opened-end');
  const end = isOpened ? folded : bought;
  const flat = (top: number): Box => ({
    left: -folding.flap,
    right: cloth.width - folding.flap,
    top,
    bottom: bought,
  });
  if (cloth.fold === 'open') return { folded: undefined, open: flat(0) };
  return {
    folded: end > SAME_PLACE ? { left: 0, right: folding.across, top: 0, bottom: end } : undefined,
    open: isOpened ? flat(end) : undefined,
  };
}

/** mm on the cloth: the box that holds all of it. */
export function clothBox(table: OnTable): Box {
  const { folded, open } = partsOf(table);
  return joinBoxes([folded, open].filter((box) => box !== undefined));
}

/** What lies under the pieces; `toPaper` takes a point of the cloth to the sheet. */
export function clothShapes(table: OnTable, toPaper: (p: Point) => Point): readonly Shape[] {
  const { folded, open } = partsOf(table);
  const { selvage } = table.lay.cloth;
  const onPaper = ({ left, right, top, bottom }: Box): Box => {
    const [from, to] = [toPaper(point(left, top)), toPaper(point(right, bottom))];
    return { left: from.x, top: from.y, right: to.x, bottom: to.y };
  };
  const band = (part: string, box: Box, color: string): Shape => {
    const { left, right, top, bottom } = onPaper(box);
    return filled(
      part,
      [point(left, top), point(right, top), point(right, bottom), point(left, bottom)],
      color,
    );
  };
  const strips = (
    part: string,
    box: Box,
    sides: readonly (readonly [number, number])[],
    color: string,
  ): readonly Shape[] =>
    sides
      .filter(([left, right]) => right - left > SAME_PLACE)
      .map(([left, right]) => band(part, { ...box, left, right }, color));
  const shapes: Shape[] = [];
  if (folded !== undefined) {
    const { upper, selvages } = layers(table.lay);
    shapes.push(
      band('cloth', folded, ONE_LAYER),
      ...strips('two-layers', folded, upper, TWO_LAYERS),
    );
    shapes.push(...strips('selvage', folded, selvages, SELVAGE));
    shapes.push(rectangle('cloth-edge', onPaper(folded), EDGE));
    for (const [left, right] of upper)
      for (const x of [left, right])
        if (x > SAME_PLACE && x < folded.right - SAME_PLACE)
          shapes.push(
            polyline(
              'flap',
              [toPaper(point(x, folded.top)), toPaper(point(x, folded.bottom))],
              FLAP,
            ),
          );
  }
  if (open !== undefined) {
    const { left, right } = open;
    const edges = [
      [left, left + selvage],
      [right - selvage, right],
    ] as const;
    shapes.push(band('cloth', open, ONE_LAYER), ...strips('selvage', open, edges, SELVAGE));
    shapes.push(rectangle('cloth-edge', onPaper(open), EDGE));
  }
  return shapes;
}

type Side = readonly [left: number, right: number];

/** Across folded cloth: where an upper layer lies, and the selvages that can be seen. */
function layers({ cloth, folding }: Lay): {
  readonly upper: readonly Side[];
  readonly selvages: readonly Side[];
} {
  const { selvage, fold } = cloth;
  const { flap, across } = folding;
  const first: Side = [0, flap];
  const onFirst: Side = [flap - selvage, flap];
  if (fold === 'folded') return { upper: [first], selvages: [onFirst, [across - selvage, across]] };
  return {
    upper: [first, [across - flap, across]],
    selvages: [onFirst, [across - flap, across - flap + selvage]],
  };
}

/** The folds, on top of the pieces that lie on them. */
export function foldShapes(table: OnTable, toPaper: (p: Point) => Point): readonly Shape[] {
  const { folded } = partsOf(table);
  if (folded === undefined) return [];
  const folds = table.lay.cloth.fold === 'middle' ? [0, folded.right] : [0];
  return folds.map((x) =>
    polyline('fold', [toPaper(point(x, folded.top)), toPaper(point(x, folded.bottom))], FOLD),
  );
}

/** What the left and the right edge are, in words along them, `away` mm outside, in type of `size` mm. */
export function edgeWords(
  table: OnTable,
  toPaper: (p: Point) => Point,
  away: number,
  size: number,
): readonly Shape[] {
  const { folded, open } = partsOf(table);
  const { fold } = table.lay.cloth;
  const { strip } = table.lay.folding;
  const beside = (
    { left, right, top, bottom }: Box,
    words: readonly [string, string],
  ): readonly Shape[] =>
    [left, right].map((x, i) => {
      const at = toPaper(point(x, (top + bottom) / 2));
      const off = (i === 0 ? -away : away) + CAP_MIDDLE * size;
      return text(words[i] ?? '', point(at.x + off, at.y), size, {
        anchor: 'middle',
        rotation: -90,
        weight: 'bold',
      });
    });
  const right = fold === 'middle' ? 'FOLD' : strip > SAME_PLACE ? 'SELVAGE' : 'SELVAGES';
  return [
    ...(folded === undefined ? [] : beside(folded, ['FOLD', right])),
    ...(open === undefined ? [] : beside(open, ['SELVAGE', 'SELVAGE'])),
  ];
}
