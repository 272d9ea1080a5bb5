/** How pieces are cut in two runs, read from their nests: lines to cut, and how often each is cut. */
import { grouped } from '../../lists/grouped';
import { loopArea, loopLength } from '../../geometry/loop';
import { writtenCuttings, writtenLines } from '../../render/written-outlines';
import { CUT_ALIKE } from '../../tolerance';
import { trimmed } from '../../units';

/** What a piece has otherwise, in a size or, where that is empty, in all. */
export interface CutChange {
  readonly piece: string;
  readonly size: string;
  /** `cut line`, or `cut` for how often. */
  readonly value: 'cut line' | 'cut';
  /** Words; empty where there is none. */
  readonly before: string;
  readonly after: string;
}

/** A line to cut: mm around it, and the square mm in it. */
interface CutLine {
  readonly piece: string;
  readonly size: string;
  readonly around: number;
  readonly area: number;
}

/**
 * What is cut otherwise, of pieces and sizes that both nests draw. Where a zero lies does not count, nor
 * in which unit the nest is labeled: every drawing is in mm.
 */
export function cutChanges(before: string, now: string): readonly CutChange[] {
  if (before === now) return [];
  const [old, present] = [cutLines(before), cutLines(now)];
  const lines = [...present].flatMap(([key, after]): readonly CutChange[] => {
    const was = old.get(key);
    if (was === undefined || isSame(was, after)) return [];
    const { piece, size } = after;
    return [{ piece, size, value: 'cut line', before: lineWords(was), after: lineWords(after) }];
  });
  const counts = writtenCuttings(before);
  const pieces = new Set([...old.values()].map(({ piece }) => piece));
  const cut = [...new Set([...present.values()].map(({ piece }) => piece))].flatMap(
    (piece): readonly CutChange[] => {
      const [was, is] = [counts.get(piece) ?? '', writtenCuttings(now).get(piece) ?? ''];
      if (was === is || !pieces.has(piece)) return [];
      return [{ piece, size: '', value: 'cut', before: was, after: is }];
    },
  );
  return [...lines, ...cut];
}

/** A sentence for each piece, of a line only where its points, which moved it, are not told already. */
export function cutWords(
  changes: readonly CutChange[],
  isTold: (piece: string) => boolean,
): readonly string[] {
  const lines = grouped(
    changes.filter(({ value }) => value === 'cut line'),
    ({ piece }) => piece,
  );
  return [
    ...[...lines].flatMap(([piece, [first, ...others]]) => {
      if (first === undefined || isTold(piece)) return [];
      const more = others.length === 0 ? '' : ` and ${others.length} more`;
      return [`${piece}: the cut line of ${first.size}${more} was ${wasAndIs(first)}.`];
    }),
    ...changes
      .filter(({ value }) => value === 'cut')
      .map((change) => `${change.piece}: its label said ${wasAndIs(change)}.`),
  ];
}

function wasAndIs({ before, after }: CutChange): string {
  const [was, is] = [before, after].map((words) => (words === '' ? 'nothing' : words));
  return `${was}, now ${is}`;
}

/** By piece and size; a sewing line that has no line to cut is a line to cut of nothing. */
function cutLines(text: string): ReadonlyMap<string, CutLine> {
  const found = new Map<string, CutLine>();
  for (const { piece, size, part, segments } of writtenLines(text)) {
    const key = JSON.stringify([piece, size]);
    if (part === 'cut-line')
      found.set(key, {
        ...{ piece, size },
        around: loopLength(segments),
        area: Math.abs(loopArea(segments)),
      });
    else if (!found.has(key)) found.set(key, { piece, size, around: 0, area: 0 });
  }
  return found;
}

function isSame(one: CutLine, other: CutLine): boolean {
  const isAsLong = Math.abs(one.around - other.around) <= CUT_ALIKE;
  return isAsLong && Math.abs(one.area - other.area) <= CUT_ALIKE * other.around;
}

function lineWords({ around, area }: CutLine): string {
  return area === 0 ? '' : `${trimmed(around / 10, 1)} cm around ${trimmed(area / 100, 1)} cm²`;
}
