/**
 * A comb: marks of several sizes along an edge, each led out of the piece to the name of its size, and those
 * on one level by one leader to the names of all of them.
 */
import { runsOf } from '../lists/runs';
import { point } from '../geometry/point';
import { LEADERS_TOGETHER } from '../tolerance';
import type { MarkSite, SizeMark } from './mark-sites';
import type { NestedPiece } from './nested-piece';
import type { RowFrame } from './row-frame';
import type { Shape } from './scene';
import { polyline } from './scene';
import { INK } from './size-style';
import { sizesTold } from './sizes-told';
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

/** The row in which marks are told; `type` is in mm. */
export interface MarkRow {
  readonly frame: RowFrame;
  /** How far out a row may begin that takes a stretch of the side: so far its leaders run straight. */
  readonly startOf: (from: number, to: number) => number;
  readonly type: number;
  /** How far out lines run along the row, which the sizes of a scale step over; none outside a piece. */
  readonly levels?: readonly number[];
}

// Lengths in type sizes.
/** From the middle of one label to the next. */
const PITCH = 1.15;
/** More of it between two marks. */
const BETWEEN = 0.5;
/** From a mark to its leader. */
const OFF = 0.3;
/** Least length over which leaders spread out. No tolerance: a look. */
const FAN = 1.5;
/** From a leader or a label to the words behind it. */
const GAP = 0.3;
/** A leader spreads no flatter than this: mm out for each mm aside. No tolerance: a look. */
const SLOPE = 0.5;
/** How firmly a stretch that is kept stands against labels. No tolerance: a weight. */
const FIRM = 1e6;

interface CombLabel extends RowLabel {
  /** On one level, the innermost first; none for a stretch that is kept. */
  readonly marks: readonly SizeMark[];
  readonly site?: MarkSite;
}

/** A label with the place it is given in the row. */
interface Slotted extends CombLabel {
  readonly slot: number;
}

/** The combs of sites in a row. */
export function markComb(
  { sizes }: NestedPiece,
  sites: readonly MarkSite[],
  row: MarkRow,
  kept: readonly Kept[],
): SideMarks {
  const labels = rowLabels(sites, row.frame, row.type, kept);
  const slots = spreadLabels(labels);
  const slotted = labels.map((label, i): Slotted => ({ ...label, slot: slots[i] ?? label.at }));
  const blocks = sites.map((site) => slotted.filter((label) => label.site === site));
  const combs = apart(blocks).map((comb) => drawnComb(sizes, comb, row));
  return {
    own: combs.flatMap(({ own }) => own),
    common: combs.flatMap(({ common }) => common),
  };
}

/** The labels of sites, those together whose leaders may meet. */
function apart(sites: readonly (readonly Slotted[])[]): readonly (readonly Slotted[])[] {
  const combs: { from: number; to: number; labels: readonly Slotted[] }[] = [];
  const reaches = sites.map((labels) => ({ ...reachOf(labels), labels }));
  for (const next of reaches.toSorted((a, b) => a.from - b.from)) {
    const last = combs.at(-1);
    if (last === undefined || last.to < next.from) combs.push(next);
    else {
      last.to = Math.max(last.to, next.to);
      last.labels = [...last.labels, ...next.labels];
    }
  }
  return combs.map(({ labels }) => labels);
}

/** The stretch of a row that labels and their leaders take. */
function reachOf(labels: readonly Slotted[]): { readonly from: number; readonly to: number } {
  const places = labels.flatMap(({ at, slot, half }) => [at, slot - half, slot + half]);
  return { from: Math.min(...places), to: Math.max(...places) };
}

/** Labels and leaders that begin and end on one level, and the names of their sites. */
function drawnComb(
  sizes: NestedPiece['sizes'],
  labels: readonly Slotted[],
  { frame, startOf, type }: MarkRow,
): SideMarks {
  const { from, to } = reachOf(labels);
  const start = startOf(from, to);
  const aside = Math.max(0, ...labels.map(({ at, slot }) => Math.abs(slot - at)));
  const end = start + Math.max(FAN * type, SLOPE * aside);
  const words = end + GAP * type;
  const names = sizes.map(({ label }) => label);
  const led = labels.flatMap(({ marks, at, slot }) => {
    const [first] = marks;
    if (first === undefined) return [];
    const style = (marks.length === 1 ? sizes[first.size]?.style : undefined) ?? OF_SOME;
    const { color } = style.outline;
    const ranks = marks.map(({ size }) => size).toSorted((a, b) => a - b);
    const label = sizesTold(names, ranks);
    const way = [
      frame.at(at, frame.out(first.at) + OFF * type),
      frame.at(at, start),
      frame.at(slot, end),
    ];
    const weight = style.base ? 'bold' : 'normal';
    const shapes = [
      polyline('mark-leader', way, { color, width: 0.2 }),
      frame.words(label, slot, words, { size: type, color, weight }),
    ];
    return [{ label, ranks, shapes }];
  });
  const longest = Math.max(0, ...led.map(({ label }) => textWidth(label, type)));
  const told = [...new Set(labels.map(({ site }) => site))].flatMap((site) => {
    if (site === undefined) return [];
    const slots = labels.filter((label) => label.site === site).map(({ slot }) => slot);
    const middle = slots.reduce((sum, slot) => sum + slot, 0) / slots.length;
    return [frame.words(toldSite(site), middle, words + longest + 2 * GAP * type, { size: type })];
  });
  return {
    own: led.flatMap(({ ranks: [size = 0, ...others], shapes }) =>
      others.length === 0 ? [{ size, shapes }] : [],
    ),
    common: [...led.flatMap(({ ranks, shapes }) => (ranks.length > 1 ? shapes : [])), ...told],
  };
}

/** How what belongs to several sizes is drawn. */
const OF_SOME = { base: false, outline: { color: INK } };

/** What a mark is, and how it is notched: between those of other sizes it is drawn as one stroke. */
export function toldSite({ name, marks: [first] }: MarkSite): string {
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
    const levels = onLevels(site, frame);
    return levels.map((marks, i) => {
      const isEnd = i === 0 || i === levels.length - 1;
      const half = (PITCH / 2 + (isEnd ? BETWEEN : 0)) * type;
      return { at: frame.along(marks[0]?.at ?? point(0, 0)), half, weight: 1, marks, site };
    });
  });
  const firm = kept.map(({ from, to }): readonly CombLabel[] => [
    { at: (from + to) / 2, half: (to - from) / 2, weight: FIRM, marks: [] },
  ]);
  const middle = (block: readonly CombLabel[]): number =>
    block.reduce((sum, { at }) => sum + at, 0) / block.length;
  return [...blocks, ...firm].toSorted((a, b) => middle(a) - middle(b)).flat();
}

/** The marks of a site by their levels along the row, each with the innermost first. */
function onLevels({ marks }: MarkSite, frame: RowFrame): readonly (readonly SizeMark[])[] {
  const sorted = marks.toSorted((a, b) => frame.along(a.at) - frame.along(b.at));
  return runsOf(
    sorted,
    (mark, last) => frame.along(mark.at) - frame.along(last.at) <= LEADERS_TOGETHER,
  ).map((level) => level.toSorted((a, b) => frame.out(a.at) - frame.out(b.at) || a.size - b.size));
}
