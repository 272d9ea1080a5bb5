/** The marks of a nest, so that each can be told: in its size's own place, in combs and on scales. */
import type { Box } from '../geometry/bounds';
import { EMPTY_BOX, boxesOverlap, joinBoxes } from '../geometry/bounds';
import { add, distance, point, quarterTurn, scale } from '../geometry/point';
import { SAME_PLACE } from '../tolerance';
import type { Kept, MarkRow, SideMarks } from './mark-comb';
import { markComb } from './mark-comb';
import { markScale } from './mark-scale';
import type { MarkSite } from './mark-sites';
import { markSites } from './mark-sites';
import { isClear } from './chords';
import { drawnLines, markPoints, shownMarks } from './piece-lines';
import type { NestedPiece } from './nested-piece';
import { DOUBLE, NOTCH_DEPTH, markShapes } from './piece-marks';
import type { RowFrame, RowSide } from './row-frame';
import { edgeBetween, rowFrame, sideOf } from './row-frame';
import type { Shape } from './scene';
import { shapeBox } from './shape-box';
import { INK } from './size-style';
import { downOf, readingAngle } from './sketch';
import { CAP_MIDDLE, text, textBox } from './type';

/** The marks of all sizes of a piece. */
export interface SizeMarks {
  /** In the order of the sizes. */
  readonly sizes: readonly (readonly Shape[])[];
  readonly common: readonly Shape[];
  /** What they take beside the piece. */
  readonly box: Box;
  /** What combs take inside the piece. */
  readonly inside: readonly Box[];
  /** Sides with a scale, at which nothing else is labeled. */
  readonly scaled: readonly RowSide[];
}

/** mm from the end of a piece to where leaders begin to spread, or its scale begins. */
const CLEAR = 2;
/** mm from the lowest drill hole to its comb: beyond the tip of the dart, 15 mm from the hole. */
const BEYOND_TIP = 18;
/** mm. Radius of a hole that stands among others. */
const SMALL_HOLE = 0.8;
/** mm. The thinnest stroke of a mark. No tolerance: a look. */
const THINNEST = 0.15;
/** From a mark to its size in type sizes. */
const BESIDE = 0.5;

/**
 * Marks that all sizes share are drawn once, in ink. `kept` is what labels of corners take of a side;
 * `type` is in mm.
 */
export function sizeMarks(
  nested: NestedPiece,
  type: number,
  kept: (side: RowSide) => readonly Kept[],
): SizeMarks {
  const sites = markSites(nested, 1.25 * type);
  const isHole = ({ marks }: MarkSite): boolean => marks.some(({ part }) => part === 'drill-hole');
  const sides = (['up', 'down', 'left', 'right'] as const).map((side) => {
    const frame = rowFrame(side);
    const own = sites.filter((site) => !isHole(site) && sideOf(site.outward) === side);
    const startOf = (from: number, to: number): number =>
      edgeBetween(nested.chords, frame, from, to) + CLEAR;
    return { side, ...row(nested, own, { frame, startOf, type }, kept(side)) };
  });
  const frame = rowFrame('down');
  const holes = sites.filter(isHole);
  const lowest = Math.max(0, ...holes.flatMap(({ marks }) => marks.map(({ at }) => at.y)));
  // Below the tips, or else below the marked line that is next to them: no words stand on a line. Leaders cross
  // both lines of a double one straight, so that they still meet where the paper is cut there and moved.
  const levels = levelsBelow(nested, lowest);
  const next = levels.findLast((y) => y - (levels[0] ?? y) <= DOUBLE + SAME_PLACE);
  const starts = [lowest + BEYOND_TIP, ...(next === undefined ? [] : [next + CLEAR])];
  const combs = starts.map((start) =>
    row(nested, holes, { frame, startOf: () => start, type, levels }, []),
  );
  const readable = combs.find(({ own }) =>
    own.every(({ shapes }) => shapes.every((shape) => isReadable(shape, nested))),
  );
  const comb = readable ?? combs[0];
  const inner = comb && { ...comb, common: readableWords(comb, nested) };
  const all: readonly SideMarks[] = [...sides, ...(inner ? [inner] : [])];
  const boxOf = ({ own, common }: SideMarks): Box =>
    joinBoxes([...own.flatMap(({ shapes }) => shapes), ...common].map(shapeBox));
  return {
    sizes: nested.sizes.map((_, i) =>
      all.flatMap(({ own }) => own.flatMap(({ size, shapes }) => (size === i ? shapes : []))),
    ),
    common: all.flatMap(({ common }) => common),
    box: joinBoxes([EMPTY_BOX, ...sides.map(boxOf)]),
    inside: inner && holes.length > 0 ? [boxOf(inner)] : [],
    scaled: sides.flatMap(({ side, isScaled }) => (isScaled ? [side] : [])),
  };
}

/** Depths of the lines drawn within a piece below one, of all sizes, the highest first. */
function levelsBelow({ sizes, lines }: NestedPiece, lowest: number): readonly number[] {
  return sizes
    .flatMap((size) =>
      shownMarks(size, lines)
        .flatMap((mark) => drawnLines(mark.name, markPoints(size.piece, mark)))
        .map((line) => Math.max(...line.map(({ y }) => y))),
    )
    .filter((y) => y > lowest)
    .toSorted((a, b) => a - b);
}

/** mm. How far words are moved aside at most, and by how much at once, until nothing crosses them. */
const ASIDE = 90;
const ASIDE_STEP = 3;

/** The words of a comb, each beside its numbers if it would cross a line below them; else left out. */
function readableWords({ own, common }: SideMarks, nested: NestedPiece): readonly Shape[] {
  const taken = own.flatMap(({ shapes }) => shapes).map(shapeBox);
  const steps = Array.from({ length: Math.floor(ASIDE / ASIDE_STEP) }, (_, i) => i + 1);
  const ways = [0, ...steps.flatMap((step) => [-step * ASIDE_STEP, step * ASIDE_STEP])];
  return common.flatMap((words): readonly Shape[] => {
    if (words.kind !== 'text') return [words];
    const level = Math.max(...taken.map(({ bottom }) => bottom)) - words.size / 2;
    const beside = ways.map((x) => ({
      ...words,
      anchor: 'middle' as const,
      rotation: 0,
      at: point(words.at.x + x, level),
    }));
    const isFree = (one: typeof words): boolean =>
      isReadable(one, nested) && !taken.some((box) => boxesOverlap(box, shapeBox(one)));
    const free = [words, ...beside].find(isFree);
    if (free !== undefined) taken.push(shapeBox(free));
    return free === undefined ? [] : [free];
  });
}

function isReadable(shape: Shape, { chords }: NestedPiece): boolean {
  return shape.kind !== 'text' || isClear(textBox(shape), chords);
}

/** The marks of one row, with what names them. */
function row(
  nested: NestedPiece,
  sites: readonly MarkSite[],
  place: MarkRow,
  kept: readonly Kept[],
): SideMarks & { readonly isScaled: boolean } {
  const { frame, type } = place;
  const numbered = sites
    .filter(({ lie }) => lie === 'nested')
    .flatMap((site) => {
      const numbers = beside(nested, site, type);
      return numbers === undefined ? [] : [{ site, numbers }];
    });
  const apart = numbered.map(({ site }) => site);
  // The legs of a dart lead from its hole, which is named, to its notches.
  const isLed = ({ name, lie }: MarkSite): boolean =>
    lie === 'shared' || (name === 'dart' && hasHoles(nested));
  const inRow = sites.filter((site) => !apart.includes(site) && !isLed(site));
  const isScaled = stand(inRow, frame, type);
  const shared = sites.filter(({ lie }) => lie === 'shared');
  const named = isScaled
    ? markScale(nested, [...inRow, ...shared], place, kept)
    : markComb(nested, inRow, place, kept);
  // On a straight edge that all sizes share a scale says all there is to say.
  const outs = inRow.flatMap(({ marks }) => marks.map(({ at }) => frame.out(at)));
  const isStraight = Math.max(...outs) - Math.min(...outs) <= SAME_PLACE;
  const drawn = isScaled && isStraight ? sites.filter((site) => !inRow.includes(site)) : sites;
  const strokes = drawn.map((site) => ticks(nested, site));
  const numbers = numbered.flatMap((one) => one.numbers);
  return {
    isScaled,
    own: [...strokes.flatMap(({ own }) => own), ...numbers, ...named.own],
    common: [...strokes.flatMap(({ common }) => common), ...named.common],
  };
}

/** Whether marks of one site stand among those of another, so that leaders would cross. */
function stand(sites: readonly MarkSite[], frame: RowFrame, type: number): boolean {
  const spans = sites
    .map(({ marks }) => marks.map(({ at }) => frame.along(at)))
    .map((places) => ({ from: Math.min(...places), to: Math.max(...places) }))
    .toSorted((a, b) => a.from - b.from);
  return spans.some(({ from }, i) => i > 0 && from < (spans[i - 1]?.to ?? from) + type / 2);
}

/** A site as it is drawn at the edge: thinner strokes, and one for two, where others are near. */
function ticks(nested: NestedPiece, { marks, lie }: MarkSite): SideMarks {
  const [first] = marks;
  if (lie === 'shared' && first !== undefined)
    return { own: [], common: markShapes(first, { color: INK, width: first.width }) };
  const gap = Math.min(
    ...marks.flatMap((a, i) =>
      marks.slice(i + 1).flatMap((b) => {
        const between = distance(a.at, b.at);
        return between <= SAME_PLACE ? [] : [between];
      }),
    ),
  );
  const own = marks.map((mark) => {
    // In ink where sizes share it, since the last color would hide the others.
    const isOwn = marks.every(
      (other) => other === mark || distance(other.at, mark.at) > SAME_PLACE,
    );
    const color = (isOwn ? nested.sizes[mark.size]?.style.outline.color : undefined) ?? INK;
    const width = Math.max(THINNEST, Math.min(mark.width, gap / 2));
    const isNear = lie === 'along' && gap < 2 * DOUBLE;
    const one = isNear ? ({ ...mark, marks: 1 } as const) : mark;
    const depth = mark.part === 'drill-hole' && isNear ? SMALL_HOLE : NOTCH_DEPTH;
    return { size: mark.size, shapes: markShapes(one, { color, width }, depth) };
  });
  return { own, common: [] };
}

function hasHoles({ reference }: NestedPiece): boolean {
  return reference.plan.drillHoles.length > 0;
}

/** Each size beside its mark, on the line on which that stands; undefined where a line is in the way. */
function beside(
  nested: NestedPiece,
  { marks, outward }: MarkSite,
  type: number,
): SideMarks['own'] | undefined {
  const { sizes, chords } = nested;
  return [1, -1]
    .map((way) => {
      const along = scale(quarterTurn(outward), way);
      const angle = readingAngle(along);
      const isBack = Math.abs(angle - (Math.atan2(along.y, along.x) * 180) / Math.PI) > 1;
      const down = downOf(angle);
      return marks.map((mark) => {
        const { label = '', style } = sizes[mark.size] ?? {};
        const off = BESIDE * type + (mark.marks === 2 ? DOUBLE / 2 : 0);
        // Inside the line, between it and the next.
        const middle = add(add(mark.at, scale(along, off)), scale(outward, -0.625 * type));
        const words = text(label, add(middle, scale(down, CAP_MIDDLE * type)), type, {
          anchor: isBack ? 'end' : 'start',
          rotation: angle,
          color: style?.outline.color ?? INK,
          weight: style?.base === true ? 'bold' : 'normal',
        });
        return { size: mark.size, shapes: [words] };
      });
    })
    .find((own) =>
      own.every(({ shapes }) => shapes.every((shape) => isClear(textBox(shape), chords))),
    );
}
