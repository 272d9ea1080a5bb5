/** Each size with a sample of its line. */
import { point } from '../geometry/point';
import type { Group, Shape } from '../render/scene';
import { polyline } from '../render/scene';
import type { SheetSize } from '../render/sheet';
import { CAP_MIDDLE, fitted, text } from '../render/type';

/** Line beside each label, and from one row to the next, in type sizes; rows in a column. */
const SAMPLE = 9;
const ROW = 1.6;
const MOST_ROWS = 12;

/**
 * In columns, smallest first, `type` mm large, with the top left corner at (`left`, `top`); and the
 * level below it.
 */
export function sizeLegend(
  sizes: readonly SheetSize[],
  left: number,
  top: number,
  width: number,
  type: number,
): { readonly group: Group; readonly bottom: number } {
  const columns = Math.max(sizes.length > 6 ? 2 : 1, Math.ceil(sizes.length / MOST_ROWS));
  const rows = Math.ceil(sizes.length / columns);
  const sample = Math.min(SAMPLE * type, (width / columns) * 0.6);
  const children = sizes.flatMap(({ label, style: { outline, base } }, i): Shape[] => {
    const x = (Math.floor(i / rows) * width) / columns;
    const y = ((i % rows) + 0.5) * ROW * type;
    const words = base && sizes.length > 1 ? `${label}, base` : label;
    const size = fitted(words, type, width / columns - sample - type);
    return [
      polyline('sample', [point(x, y), point(x + sample, y)], outline),
      text(words, point(x + sample + type / 2, y + CAP_MIDDLE * size), size, {
        weight: base ? 'bold' : 'normal',
      }),
    ];
  });
  return {
    group: { kind: 'group', offset: point(left, top), children },
    bottom: top + rows * ROW * type,
  };
}
