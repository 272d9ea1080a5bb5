/** A printed scale: the marks along an edge again beside it, the sizes one below another. */
import { isClear } from './chords';
import type { Kept, MarkRow, SideMarks } from './mark-comb';
import { toldSite } from './mark-comb';
import type { MarkSite, SizeMark } from './mark-sites';
import type { NestedPiece } from './nested-piece';
import { DOUBLE } from './piece-marks';
import type { RowFrame } from './row-frame';
import type { Shape } from './scene';
import { polyline } from './scene';
import { INK } from './size-style';
import { spreadLabels } from './spread-labels';
import { textBox, textWidth } from './type';

// Lengths in type sizes.
/** From one size to the next. */
const PITCH = 1.2;
/** Height of a mark: more than its row, so that the eye finds the next, but less than two. */
const TICK = 0.9;
/** From the outermost mark of a size to its label. */
const GAP = 0.8;
/** Width of a name across its direction. */
const NAME = 1.2;

/** The scale of sites whose marks would stand among each other. */
export function markScale(
  nested: NestedPiece,
  sites: readonly MarkSite[],
  { frame, startOf, type, levels = [] }: MarkRow,
  kept: readonly Kept[],
): SideMarks {
  const longest = Math.max(...nested.sizes.map(({ label }) => textWidth(label, type)));
  const room = GAP * type + longest;
  const all = sites.flatMap(({ marks }) => marks.flatMap((mark) => strokes(mark, frame)));
  const start = startOf(Math.min(...all) - room, Math.max(...all) + room);
  const rows = rowsFrom(start, PITCH * type, nested.sizes.length, levels);
  const own = nested.sizes.map(({ label, style: { outline, base } }, size) => {
    const out = rows[size] ?? start;
    const places = sites.flatMap(({ marks }) =>
      marks.filter((mark) => mark.size === size).flatMap((mark) => strokes(mark, frame)),
    );
    if (places.length === 0) return { size, shapes: [] };
    const ends = [Math.min(...places), Math.max(...places)] as const;
    const { color } = outline;
    const half = (TICK * type) / 2;
    const set = { size: type, color, weight: base ? 'bold' : 'normal' } as const;
    const labels = (['end', 'start'] as const).flatMap((anchor) => {
      const [way, from] = anchor === 'end' ? [-1, ends[0]] : [1, ends[1]];
      const at = from + way * GAP * type;
      const far = at + way * textWidth(label, type);
      // Leaders of a ladder pass here.
      const isKept = kept.some(
        (own) => own.stays && Math.min(at, far) < own.to && own.from < Math.max(at, far),
      );
      return isKept ? [] : [frame.beside(label, at, out, { ...set, anchor })];
    });
    // Within a piece lines of other sizes may cross one of the two.
    const isClearOfLines = labels.map((words) => isClear(textBox(words), nested.chords));
    const shapes: Shape[] = [
      polyline(
        'scale',
        ends.map((end) => frame.at(end, out)),
        { color, width: 0.15 },
      ),
      ...places.map((place) =>
        polyline('notch', [frame.at(place, out - half), frame.at(place, out + half)], {
          color,
          width: base ? 0.6 : 0.4,
        }),
      ),
      ...(isClearOfLines.some(Boolean) ? labels.filter((_, i) => isClearOfLines[i]) : labels),
    ];
    return { size, shapes };
  });
  return {
    own,
    common: names(nested, sites, frame, (rows.at(-1) ?? start) + 0.9 * PITCH * type, type),
  };
}

/** The middles of rows of a height from `start` on, none of which has a level in it. */
function rowsFrom(
  start: number,
  height: number,
  count: number,
  levels: readonly number[],
): readonly number[] {
  const sorted = levels.toSorted((a, b) => a - b);
  let top = start;
  return Array.from({ length: count }, () => {
    for (const level of sorted) if (level > top && level < top + height) top = level;
    top += height;
    return top - height / 2;
  });
}

/** The marks by name, each below its place in the base or in the largest size. */
function names(
  { sizes }: NestedPiece,
  of: readonly MarkSite[],
  frame: RowFrame,
  end: number,
  type: number,
): readonly Shape[] {
  const base = sizes.findIndex(({ style }) => style.base);
  const named = of
    .map((site) => {
      const mark = site.marks.find(({ size }) => size === base) ?? site.marks.at(-1);
      return { words: toldSite(site), at: mark === undefined ? 0 : frame.along(mark.at) };
    })
    .toSorted((a, b) => a.at - b.at);
  const half = (NAME * type) / 2;
  const slots = spreadLabels(named.map(({ at }) => ({ at, half, weight: 1 })));
  return named.flatMap(({ words, at }, i) => {
    const slot = slots[i] ?? at;
    const from = [frame.at(at, end), frame.at(slot, end + type)];
    return [
      polyline('mark-leader', from, { color: INK, width: 0.2 }),
      frame.words(words, slot, end + 1.3 * type, { size: type }),
    ];
  });
}

/** Where the strokes of a mark stand along the row. */
function strokes({ at, marks }: SizeMark, frame: RowFrame): readonly number[] {
  const along = frame.along(at);
  return marks === 1 ? [along] : [along - DOUBLE / 2, along + DOUBLE / 2];
}
