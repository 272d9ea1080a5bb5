/** The pieces of an earlier version under those of a new one, in one size, at true size. */
import type { Box } from '../geometry/bounds';
import { joinBoxes, segmentsBounds } from '../geometry/bounds';
import { point } from '../geometry/point';
import { spelled } from './captions';
import { legend, notes, titleBlock } from './furniture';
import type { Group, Scene, Stroke } from './scene';
import { INK, SOFT_INK } from './size-style';
import type { Sketch } from './sketch';
import { text } from './type';
import type { WrittenOutline } from './written-outlines';

/** The version that was; dashed, so that it is told apart in grey and where it lies under the new. */
const BEFORE: Stroke = { color: SOFT_INK, width: 0.5, dash: [6, 3] };
const AFTER: Stroke = { color: INK, width: 0.7 };
/** mm around the pieces and between them. */
const GAP = 30;
const NAME = 9;

/** The two versions of a style in one size. */
export interface VersionDrawing {
  readonly title: string;
  /** In which size they are, such as `size 14`. */
  readonly size: string;
  /** Outlines of this size. */
  readonly before: readonly WrittenOutline[];
  readonly after: readonly WrittenOutline[];
  /** What is said below the pieces. */
  readonly notes: readonly string[];
}

/** The sheet, its pieces in a row; a piece that one version lacks is drawn of the other alone. */
export function versionSheet(drawing: VersionDrawing): Scene {
  const { title, size, before, after } = drawing;
  const names = [...new Set([...after, ...before].map(({ piece }) => piece))];
  const placed: Group[] = [];
  let left = GAP;
  const pieces = names.map((name) => {
    const of = (all: readonly WrittenOutline[]): readonly WrittenOutline[] =>
      all.filter(({ piece }) => piece === name);
    const [old, present] = [of(before), of(after)];
    const box = joinBoxes([...old, ...present].map(({ segments }) => segmentsBounds(segments)));
    return { name, old, present, box };
  });
  const width = pieces.reduce((sum, { box }) => sum + box.right - box.left + GAP, GAP);
  const inner = Math.max(width, LEAST) - 2 * GAP;
  const head = titleBlock(
    title,
    `${size.charAt(0).toUpperCase()}${size.slice(1)}: two versions`,
    inner,
  );
  const top = GAP + height(head) + GAP;
  for (const { name, old, present, box } of pieces) {
    const paths = (all: readonly WrittenOutline[], part: string, stroke: Stroke) =>
      all.map(({ segments }) => ({ kind: 'path', part, segments, closed: true, stroke }) as const);
    placed.push({
      kind: 'group',
      offset: point(left - box.left, top + 2 * NAME - box.top),
      data: { piece: name },
      children: [
        text(spelled(name), point(box.left, box.top - NAME), NAME, { weight: 'bold' }),
        ...paths(old, 'before', BEFORE),
        ...paths(present, 'after', AFTER),
      ],
    });
    left += box.right - box.left + GAP;
  }
  const deep = Math.max(0, ...pieces.map(({ box }) => box.bottom - box.top)) + 2 * NAME;
  const key = legend([
    { words: 'as it was', stroke: BEFORE, base: false },
    { words: 'as it is now', stroke: AFTER, base: true },
  ]);
  const below = notes(drawing.notes, inner);
  const keyTop = top + deep + GAP;
  const notesTop = keyTop + height(key) + GAP / 2;
  return {
    title: `${title}: two versions of ${size}`,
    width: inner + 2 * GAP,
    height: notesTop + height(below) + GAP,
    shapes: [at(head, GAP), ...placed, at(key, keyTop), at(below, notesTop)],
  };
}

/** mm across the least sheet, so that its words have room. */
const LEAST = 420;

function height({ box }: Sketch): number {
  return box.bottom - box.top;
}

/** A sketch with its upper edge at this level. */
function at({ shapes, box }: Sketch & { readonly box: Box }, top: number): Group {
  return { kind: 'group', offset: point(GAP - box.left, top - box.top), children: shapes };
}
