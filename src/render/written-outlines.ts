/** The outlines of a nest as it was written, read back from its SVG. */
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import type { Segment } from '../geometry/segment';

/** What is drawn of a piece in one size: its sewing line, or the line to cut where that alone is drawn. */
export interface WrittenOutline {
  readonly size: string;
  readonly piece: string;
  /** A closed loop in mm, in the coordinates of the piece. */
  readonly segments: readonly Segment[];
}

const GROUP_OR_PATH =
  /<g [^>]*data-size="([^"]*)"|<g [^>]*data-piece="([^"]*)"|<path data-part="(outline|cut-line)"[^>]* d="([^"]*)"/gu;

/**
 * Every outline of a drawing that `svg` wrote of a nest; other texts have none. Labels and names are as
 * they were typed.
 */
export function writtenOutlines(text: string): readonly WrittenOutline[] {
  const found = new Map<string, WrittenOutline & { readonly part: string }>();
  let [size, piece] = ['', ''];
  for (const [, sized, pieced, part, data = ''] of text.matchAll(GROUP_OR_PATH)) {
    if (sized !== undefined) size = typed(sized);
    else if (pieced !== undefined) piece = typed(pieced);
    else if (part !== undefined) {
      const key = JSON.stringify([size, piece]);
      if (found.get(key)?.part === 'outline') continue;
      found.set(key, { size, piece, part, segments: loop(data) });
    }
  }
  return [...found.values()];
}

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
