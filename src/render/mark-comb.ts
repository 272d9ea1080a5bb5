/** A comb: marks of several sizes along an edge, each led out of the piece to the name of its size. */
import type { MarkSite, SizeMark } from './mark-sites';
import type { NestedPiece } from './nested-piece';
import type { RowFrame } from './row-frame';
import type { Shape } from './scene';
import { polyline } from './scene';
import { INK } from './size-style';
import type { RowLabel } from './spread-labels';
import { spreadLabels } from './spread-labels';
import { textWidth } from './type';

/** What stands at a side of a nest for its sizes, and for all of them. */
export interface SideMarks {
  readonly own: readonly { readonly size: number; readonly shapes: readonly Shape[] }[];
  readonly common: readonly Shape[];
}

/** A stretch of a row that belongs to something else, in mm along it. */
export interface Kept {
  readonly from: number;
  readonly to: number;
  /** False for what gives way to a scale on the same side. */
  readonly stays: boolean;
}

/** The row in which marks are told, and how far its leaders run straight; `type` is in mm. */
export interface MarkRow {
  readonly frame: RowFrame;
  readonly start: number;
  readonly type: number;
}

// Lengths in type sizes.
/** From the middle of one label to the next. */
const PITCH = 1.15;
/** More of it between two marks. */
const BETWEEN = 0.5;
/** From a mark to its leader. */
const OFF = 0.3;
/** Least length over which leaders spread out. */
const FAN = 1.5;
/** From a leader or a label to the words behind it. */
const GAP = 0.3;
/** A leader spreads no flatter than this: mm out for each mm aside. */
const SLOPE = 0.5;
/** How firmly a stretch that is kept stands against labels. No tolerance: a weight. */
const FIRM = 1e6;

interface CombLabel extends RowLabel {
  /** Undefined for a stretch that is kept. */
  readonly mark?: SizeMark;
  readonly site?: MarkSite;
}

/** The comb of sites in a row. */
export function markComb(
  { sizes }: NestedPiece,
  sites: readonly MarkSite[],
  { frame, start, type }: MarkRow,
  kept: readonly Kept[],
): SideMarks {
  const labels = rowLabels(sites, frame, type, kept);
  const slots = spreadLabels(labels);
  const aside = labels.map(({ mark, at }, i) => (mark ? Math.abs((slots[i] ?? at) - at) : 0));
  const end = start + Math.max(FAN * type, SLOPE * Math.max(0, ...aside));
  const words = end + GAP * type;
  const style = { size: type };
  const leader = (own: SizeMark, slot: number, color: string): Shape => {
    const along = frame.along(own.at);
    const way = [
      frame.at(along, frame.out(own.at) + OFF * type),
      frame.at(along, start),
      frame.at(slot, end),
    ];
    return polyline('mark-leader', way, { color, width: 0.2 });
  };
  const own = labels.flatMap(({ mark, site, at }, i) => {
    const slot = slots[i] ?? at;
    if (mark === undefined || site === undefined) return [];
    const { label, style: drawn } = sizes[mark.size] ?? { label: '', style: undefined };
    const color = drawn?.outline.color ?? INK;
    const weight = drawn?.base === true ? 'bold' : 'normal';
    const size = frame.words(label, slot, words, { ...style, color, weight });
    return [{ size: mark.size, shapes: [leader(mark, slot, color), size] }];
  });
  const longest = Math.max(0, ...sizes.map(({ label }) => textWidth(label, type)));
  const common = sites.map((site) => {
    const middles = slots.filter((_, i) => labels[i]?.site === site);
    const middle = middles.reduce((sum, slot) => sum + slot, 0) / middles.length;
    return frame.words(told(site), middle, words + longest + 2 * GAP * type, style);
  });
  return { own, common };
}

/** What a mark is, and how it is notched: between those of other sizes it is drawn as one stroke. */
export function told({ name, marks: [first] }: MarkSite): string {
  return `${name.replace(/[_-]+/gu, ' ')}${first?.marks === 2 ? ', double' : ''}`;
}

/** The labels in the order of the row: site by site, and in each by place and then by size. */
function rowLabels(
  sites: readonly MarkSite[],
  frame: RowFrame,
  type: number,
  kept: readonly Kept[],
): readonly CombLabel[] {
  const blocks = sites.map((site): readonly CombLabel[] => {
    const sorted = site.marks.toSorted(
      (a, b) => frame.along(a.at) - frame.along(b.at) || a.size - b.size,
    );
    return sorted.map((mark, i) => {
      const isEnd = i === 0 || i === sorted.length - 1;
      const half = (PITCH / 2 + (isEnd ? BETWEEN : 0)) * type;
      return { at: frame.along(mark.at), half, weight: 1, mark, site };
    });
  });
  const firm = kept.map(({ from, to }): readonly CombLabel[] => [
    { at: (from + to) / 2, half: (to - from) / 2, weight: FIRM },
  ]);
  const middle = (block: readonly CombLabel[]): number =>
    block.reduce((sum, { at }) => sum + at, 0) / block.length;
  return [...blocks, ...firm].toSorted((a, b) => middle(a) - middle(b)).flat();
}
