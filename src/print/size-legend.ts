/** Each line with a sample of it. */
import { point } from '../geometry/point';
import type { Group, Shape } from '../render/scene';
import { polyline } from '../render/scene';
import type { KeyEntry } from '../render/size-style';
import { CAP_MIDDLE, fitted, text } from '../render/type';

/** From one row to the next, and room for a label beside its sample, in type sizes. */
const ROW = 1.6;
const LABEL = 5;
/** Times that the pattern of a dashed line is shown, so that it can be told from a solid one. */
const PERIODS = 2;
/** Share of a column that a sample takes at most. No tolerance: a look. */
const MOST_SAMPLE = 0.75;
/** Rows before a further column is begun if there is room, rows as wide apart as they may be, and the most. */
const GOOD_ROWS = 6;
const LOOSE_ROWS = 16;
const MOST_ROWS = 22;

/** What is told about the lines: what they stand for in a sentence, and the key to them. */
export interface LinesTold {
  readonly note: string;
  readonly key: readonly KeyEntry[];
}

/** Where the key lies and how large it is, in mm. */
export interface LegendPlace {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly type: number;
  /** Factor by which the dashes of all lines are drawn longer than a size's style says; 1 if absent. */
  readonly longer?: number;
}

/** In columns, with the top left corner at the place; and the level below it. */
export function sizeLegend(
  entries: readonly KeyEntry[],
  { left, top, width, type, longer = 1 }: LegendPlace,
): { readonly group: Group; readonly bottom: number } {
  const periods = entries.map(({ stroke }) =>
    (stroke.dash ?? []).reduce((sum, part) => sum + part, 0),
  );
  const enough = Math.max(PERIODS * longer * Math.max(...periods), LABEL * type);
  const fitting = Math.max(1, Math.floor(width / (enough + LABEL * type)));
  const columns = Math.max(
    Math.min(fitting, Math.ceil(entries.length / GOOD_ROWS)),
    Math.ceil(entries.length / MOST_ROWS),
  );
  const rows = Math.ceil(entries.length / columns);
  const pitch = (ROW * type * Math.min(rows, LOOSE_ROWS)) / rows;
  const sample = Math.min(enough, (width / columns) * MOST_SAMPLE);
  // All labels as large: the base is not the least of them.
  const size = Math.min(
    ...entries.map(({ words }) => fitted(words, type, width / columns - sample - type)),
  );
  const children = entries.flatMap(({ words, stroke, base }, i): Shape[] => {
    const x = (Math.floor(i / rows) * width) / columns;
    const y = ((i % rows) + 0.5) * pitch;
    return [
      polyline('sample', [point(x, y), point(x + sample, y)], stroke),
      text(words, point(x + sample + type / 2, y + CAP_MIDDLE * size), size, {
        weight: base ? 'bold' : 'normal',
      }),
    ];
  });
  return {
    group: { kind: 'group', offset: point(left, top), children },
    bottom: top + rows * pitch,
  };
}
