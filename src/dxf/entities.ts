/**
 * The few DXF entities that patterns need, as text in the form of release 12, which every program
 * reads. Places are on the paper, y down, in mm; in the file y runs up.
 */
import type { Point } from '../geometry/point';

/** Decimals of a millimeter: a tenth of a micrometer. */
const DECIMALS = 1e4;

/** Millimeters to a tenth of a micrometer, without a negative zero. */
export function dxfNumber(mm: number): string {
  if (!Number.isFinite(mm)) throw new RangeError(`${mm} was to be drawn`);
  return String(Math.round(mm * DECIMALS) / DECIMALS + 0);
}

/** Words in plain ASCII: other characters by their code, line breaks as blanks. */
export function dxfText(words: string): string {
  if (/^[ -~]*$/u.test(words)) return words;
  return [...words.replace(/\s+/gu, ' ')]
    .map((character) => {
      const code = character.codePointAt(0) ?? 63;
      if (code >= 32 && code < 127) return character;
      return code > 0xffff ? '?' : `\\U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
    })
    .join('');
}

/** A name of a layer or block: letters, digits, `_`, `-` and `$`. */
export function dxfName(words: string): string {
  return words.normalize('NFKD').replace(/[^A-Za-z0-9_$-]+/gu, '_') || '_';
}

function place({ x, y }: Point): string {
  return `10\n${dxfNumber(x)}\n20\n${dxfNumber(-y)}\n30\n0\n`;
}

/** A straight LINE on a layer; places in mm, y down. */
export function dxfLine(layer: string, from: Point, to: Point): string {
  return (
    `0\nLINE\n8\n${layer}\n${place(from)}` +
    `11\n${dxfNumber(to.x)}\n21\n${dxfNumber(-to.y)}\n31\n0\n`
  );
}

/** How a line is drawn; one of the line types that `dxfDocument` defines. */
export type LineType = 'CONTINUOUS' | 'DASHED';

/** Without a line type it is drawn as its layer says, which is continuous. */
export function dxfPolyline(
  layer: string,
  points: readonly Point[],
  closed: boolean,
  type?: LineType,
): string {
  const drawn = type === undefined ? '' : `6\n${type}\n`;
  let text = `0\nPOLYLINE\n8\n${layer}\n${drawn}66\n1\n10\n0\n20\n0\n30\n0\n70\n${closed ? 1 : 0}\n`;
  for (const at of points) text += `0\nVERTEX\n8\n${layer}\n${place(at)}`;
  return `${text}0\nSEQEND\n8\n${layer}\n`;
}

/** A POINT on a layer, for a notch, a hole or a place that has a rule; in mm, y down. */
export function dxfPoint(layer: string, at: Point): string {
  return `0\nPOINT\n8\n${layer}\n${place(at)}`;
}

/** `height` in mm. */
export function dxfWords(layer: string, at: Point, height: number, words: string): string {
  return `0\nTEXT\n8\n${layer}\n${place(at)}40\n${dxfNumber(height)}\n1\n${dxfText(words)}\n`;
}

/**
 * An INSERT that shows a block with its zero at a place in mm, y down, neither scaled nor turned.
 */
export function dxfInsert(layer: string, block: string, at: Point): string {
  return `0\nINSERT\n8\n${layer}\n2\n${block}\n${place(at)}`;
}
