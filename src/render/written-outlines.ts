/** The outlines of a nest as it was written, read back from its SVG. */
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import type { Segment } from '../geometry/segment';

/** A line around a piece in one size. */
export interface WrittenOutline {
  readonly size: string;
  readonly piece: string;
  readonly part: 'outline' | 'cut-line';
  /** A closed loop in mm, in the coordinates of the piece. */
  readonly segments: readonly Segment[];
}

const GROUP_OR_PATH =
  /<g [^>]*data-size="([^"]*)"|<g [^>]*data-piece="([^"]*)"|<path data-part="(outline|cut-line)"[^>]* d="([^"]*)"/gu;

/**
 * Every outline of a drawing that `svg` wrote of a nest, of each piece and size the sewing line, or the
 * line to cut where that alone is drawn; other texts have none. Labels and names are as they were typed.
 */
export function writtenOutlines(text: string): readonly WrittenOutline[] {
  const found = new Map<string, WrittenOutline>();
  for (const line of writtenLines(text)) {
    const key = JSON.stringify([line.size, line.piece]);
    if (found.get(key)?.part !== 'outline') found.set(key, line);
  }
  return [...found.values()];
}

/** Every sewing line and line to cut of such a drawing. */
export function writtenLines(text: string): readonly WrittenOutline[] {
  const found: WrittenOutline[] = [];
  let [size, piece] = ['', ''];
  for (const [, sized, pieced, part, data = ''] of text.matchAll(GROUP_OR_PATH)) {
    if (sized !== undefined) size = typed(sized);
    else if (pieced !== undefined) piece = typed(pieced);
    else if (part === 'outline' || part === 'cut-line')
      found.push({ size, piece, part, segments: loop(data) });
  }
  return found;
}

/** How often each piece of such a drawing is cut, as its label says: `Cut 1 on fold, Cut 2 of lining`. */
export function writtenCuttings(text: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  let piece = '';
  for (const [, pieced, words] of text.matchAll(PIECE_OR_CUTTING)) {
    if (pieced !== undefined) piece = typed(pieced);
    else found.set(piece, [found.get(piece) ?? [], typed(words ?? '')].flat().join(', '));
  }
  return found;
}

const PIECE_OR_CUTTING = /<g [^>]*data-piece="([^"]*)"|<text [^>]*>(Cut \d[^<]*)</gu;

/** The loop of path data as `pathData` writes it: absolute moves, lines and cubics, closed by Z. */
function loop(data: string): readonly Segment[] {
  const segments: Segment[] = [];
  let [start, pen]: [Point | undefined, Point] = [undefined, point(0, 0)];
  for (const [, command = '', numbers = ''] of data.matchAll(/([MLCZ])([^MLCZ]*)/gu)) {
    const values = (numbers.match(/-?[\d.]+(?:e-?\d+)?/gu) ?? []).map(Number);
    const at = (i: number): Point => point(values[2 * i] ?? NaN, values[2 * i + 1] ?? NaN);
    if (command === 'M') {
      pen = at(0);
      start ??= pen;
    } else if (command === 'C') {
      segments.push({ kind: 'cubic', from: pen, leave: at(0), arrive: at(1), to: at(2) });
      pen = at(2);
    } else {
      const to = command === 'Z' ? (start ?? pen) : at(0);
      if (to.x !== pen.x || to.y !== pen.y) segments.push({ kind: 'line', from: pen, to });
      pen = to;
    }
  }
  return segments;
}

const SIGNS: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
};

/** A text as it was before it was marked up. */
function typed(markup: string): string {
  return markup.replace(/&(?:#(\d+)|(amp|lt|gt|quot));/gu, (_, code?: string, name?: string) =>
    name === undefined ? String.fromCharCode(Number(code)) : (SIGNS[name] ?? ''),
  );
}
