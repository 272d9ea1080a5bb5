/** The furniture of a sheet: title, legend of the sizes, facts, test squares, notes. */
import { point } from '../geometry/point';
import { toMillimeters } from '../units';
import type { Shape } from './scene';
import { polyline, rectangle } from './scene';
import type { KeyEntry } from './size-style';
import { INK, SOFT_INK } from './size-style';
import type { Sketch } from './sketch';
import { sketchOf } from './sketch';
import { CAP_MIDDLE, LEADING, text, textWidth, wrapped } from './type';

/** Type sizes, mm. */
const TITLE = 20;
const SUBTITLE = 10;
const BODY = 8;
const NOTE = 9;
/** mm from one row to the next. */
const ROW = 12;

/** Title and subtitle, wrapped to `width` mm, over a rule. */
export function titleBlock(title: string, subtitle: string, width: number): Sketch {
  const head = paragraph(title, TITLE, width, 0, 'bold');
  const under = paragraph(subtitle, SUBTITLE, width, head.bottom + TITLE / 4);
  return sketchOf([...head.shapes, ...under.shapes, rule(under.bottom + SUBTITLE / 2, width)]);
}

/** Sentences one below the other, wrapped to `width` mm, under a rule. */
export function notes(sentences: readonly string[], width: number): Sketch {
  const shapes: Shape[] = [rule(0, width)];
  let y = SUBTITLE / 2;
  for (const sentence of sentences) {
    const lines = paragraph(sentence, NOTE, width, y);
    shapes.push(...lines.shapes);
    y = lines.bottom;
  }
  return sketchOf(shapes);
}

function rule(y: number, width: number): Shape {
  return polyline('rule', [point(0, y), point(width, y)], { color: INK, width: 0.8 });
}

/** Words wrapped to `width` mm from the level `top` down, and the level below the last line. */
export function paragraph(
  words: string,
  size: number,
  width: number,
  top: number,
  weight: 'normal' | 'bold' = 'normal',
): { readonly shapes: readonly Shape[]; readonly bottom: number } {
  const lines = wrapped(words, size, width);
  const shapes = lines.map((line, i) =>
    text(line, point(0, top + size + i * LEADING * size), size, { weight }),
  );
  return { shapes, bottom: top + lines.length * LEADING * size };
}

const SAMPLE = 44;
/** Rows in a column of the legend before a further column is begun. */
const MOST_ROWS = 10;

/** Each line with a sample of it, in columns. */
export function legend(entries: readonly KeyEntry[]): Sketch {
  const columns = Math.ceil(entries.length / MOST_ROWS);
  const rows = Math.ceil(entries.length / columns);
  const widest = Math.max(...entries.map(({ words }) => textWidth(words, BODY)));
  const columnWidth = SAMPLE + BODY + widest + 2 * BODY;
  const shapes = entries.flatMap(({ words, stroke, base }, i): Shape[] => {
    const left = Math.floor(i / rows) * columnWidth;
    const y = HEADED + ROW * (i % rows);
    const middle = y - CAP_MIDDLE * BODY;
    return [
      polyline('sample', [point(left, middle), point(left + SAMPLE, middle)], stroke),
      text(words, point(left + SAMPLE + BODY, y), BODY, {
        weight: base ? 'bold' : 'normal',
      }),
    ];
  });
  return sketchOf([heading('Lines'), ...shapes]);
}

/** Facts of the sheet, each a name and a value. */
export function facts(rows: readonly (readonly [name: string, value: string])[]): Sketch {
  const values = Math.max(...rows.map(([name]) => textWidth(name, BODY))) + BODY;
  const shapes = rows.flatMap(([name, value], i) => {
    const y = HEADED + ROW * i;
    return [
      text(name, point(0, y), BODY, { color: SOFT_INK }),
      text(value, point(values, y), BODY),
    ];
  });
  return sketchOf([heading('This sheet'), ...shapes]);
}

/** mm between the two test squares. */
const BETWEEN_SQUARES = 20;

/** A square of 100 mm and one of 4 in: a printer that is off shows in one of them at once. */
export function testSquares(): Sketch {
  const metric = testSquare(0, 100, '100 mm');
  const inch = testSquare(100 + BETWEEN_SQUARES, toMillimeters(4, 'in'), '4 in');
  return sketchOf([heading('Print at 100%, then measure both squares'), ...metric, ...inch]);
}

function testSquare(left: number, side: number, length: string): readonly Shape[] {
  const top = BODY + 6;
  const box = { left, top, right: left + side, bottom: top + side };
  const middle = point(left + side / 2, top + side / 2);
  return [
    rectangle('test-square', box, { color: INK, width: 0.4 }),
    text('TEST SQUARE', point(middle.x, middle.y), BODY, { weight: 'bold', anchor: 'middle' }),
    text(length, point(middle.x, box.bottom - 5), BODY, { anchor: 'middle' }),
    text(length, point(left + 5 + 0.72 * BODY, middle.y), BODY, {
      anchor: 'middle',
      rotation: -90,
    }),
  ];
}

/** mm from the top of a block to the baseline of its first row below the heading. */
const HEADED = BODY + 14;

function heading(words: string): Shape {
  return text(words, point(0, BODY), BODY, { weight: 'bold' });
}
