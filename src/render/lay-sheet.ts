/** A lay on a sheet, at a fifth of its size: the cloth as it lies on the table, with its pieces. */
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import type { BuyLength } from '../fabric/fabric-needs';
import type { ClothName, ClothWidth } from '../fabric/cloth';
import type { Lay } from '../fabric/lay';
import {
  fromMillimeters,
  inchFraction,
  toMillimeters,
  trimmed,
  yardsToMillimeters,
  yardsTold,
} from '../units';
import { foldingTold } from './lay-captions';
import { clothBox, clothShapes, edgeWords, foldShapes } from './lay-cloth';
import { layPiece } from './lay-piece';
import type { Scene, Shape } from './scene';
import { polyline } from './scene';
import { INK, SOFT_INK } from './size-style';
import { CAP_MIDDLE, LEADING, text, wrapped } from './type';
import { ARITHMETIC } from '../tolerance';

/** A lay with what is told about it: whose it is, on which cloth, and how much of that to buy. */
export interface LayDrawing {
  /** Of the pattern. */
  readonly title: string;
  /** Label of the size that is laid. */
  readonly size: string;
  readonly cloth: ClothName;
  /** As the shop states it; lengths are told in its unit. */
  readonly width: ClothWidth;
  readonly lay: Lay;
  readonly buy: BuyLength;
  /** Share of the lay that is bought besides it. */
  readonly spare: number;
}

/** mm on the cloth for one on the sheet. */
const REDUCTION = 5;
const MARGIN = 12;
const TITLE = 6;
const BODY = 3.6;
const SMALL = 3;
/** mm beside the cloth for the words at its edges, and for the lengths. */
const EDGE_WORDS = 9;
const LENGTHS = 22;
const LEAST_WIDTH = 175;
/** mm. A width in inches is told to an eighth. */
const EIGHTH = toMillimeters(1 / 8, 'in');

const END = { color: SOFT_INK, width: 0.3, dash: [2, 1.5] };

/** The sheet of one lay, in mm on paper; it is as long as the cloth that is bought needs. */
export function laySheet(drawing: LayDrawing): Scene {
  const { lay, width, buy } = drawing;
  const bought =
    width.unit === 'in' ? yardsToMillimeters(buy.yards) : toMillimeters(buy.centimeters, 'cm');
  const table = { lay, bought };
  const box = clothBox(table);
  const left = MARGIN + EDGE_WORDS;
  const right = left + (box.right - box.left) / REDUCTION;
  const sheetWidth = Math.max(LEAST_WIDTH, right + EDGE_WORDS + LENGTHS + MARGIN);
  const head = heading(drawing, sheetWidth - 2 * MARGIN);
  const top = head.bottom + EDGE_WORDS;
  const toPaper = ({ x, y }: Point): Point =>
    point(left + (x - box.left) / REDUCTION, top + y / REDUCTION);
  const end = top + bought / REDUCTION;
  const length = width.unit === 'in' ? `${yardsTold(buy.yards)} yd` : `${buy.centimeters} cm`;
  return {
    title: `${drawing.title}: lay of the ${drawing.cloth}, size ${drawing.size}`,
    width: Math.ceil(sheetWidth),
    height: Math.ceil(end + EDGE_WORDS + MARGIN),
    shapes: [
      ...head.shapes,
      ...clothShapes(table, toPaper),
      ...edgeWords(table, toPaper, EDGE_WORDS / 2, BODY),
      text('cut end', point(left, top - 1.5), SMALL, { color: SOFT_INK }),
      ...lay.placements.map((placement) => ({
        kind: 'group' as const,
        data: { piece: placement.piece.piece.plan.name },
        children: layPiece(placement, toPaper),
      })),
      ...foldShapes(table, toPaper),
      text(`${length} bought`, point(left, end + SMALL + 1.5), SMALL, { color: SOFT_INK }),
      polyline(
        'lay-end',
        [toPaper(point(box.left, lay.length)), toPaper(point(box.right, lay.length))],
        END,
      ),
      ...lengthScale(width.unit, right + EDGE_WORDS, top, bought / REDUCTION, lay.length),
    ],
  };
}

/** Title and facts, from the top of the sheet. */
function heading(
  { title, size, cloth, width, lay, buy, spare }: LayDrawing,
  room: number,
): { readonly shapes: readonly Shape[]; readonly bottom: number } {
  const { nap, width: across } = lay.cloth;
  const other =
    width.unit === 'in'
      ? `${trimmed(fromMillimeters(across, 'cm'), 1)} cm`
      : `${inchFraction(EIGHTH * Math.round(across / EIGHTH))} in`;
  const long = (mm: number): string =>
    `${trimmed(fromMillimeters(mm, width.unit), 1)} ${width.unit}`;
  const up = nap === 'with' ? 'all pieces the same way up' : 'pieces may lie upside down';
  const sentences = [
    `Cloth ${width.value} ${width.unit} (${other}) wide, ${foldingTold(lay, long)}; ${up}.`,
    `Buy ${buy.centimeters} cm, or ${yardsTold(buy.yards)} yd: the lay of ${long(lay.length)} and ` +
      `${trimmed(100 * spare, 1)} % for shrinkage and straight ends, rounded up.`,
    `The pieces fill ${trimmed(100 * lay.utilization, 0)} % of the lay. ` +
      `No lay of them is shorter than ${long(lay.bounds.best)}.`,
    `Drawn at 1:${REDUCTION}. Cut lines with allowances; arrows along the grain.`,
  ];
  const shapes: Shape[] = [];
  let y = MARGIN;
  const lines = (words: string, type: number, weight: 'normal' | 'bold'): void => {
    for (const line of wrapped(words, type, room)) {
      shapes.push(text(line, point(MARGIN, y + type), type, { weight }));
      y += LEADING * type;
    }
  };
  lines(`${title}: ${cloth}, size ${size}`, TITLE, 'bold');
  y += BODY / 2;
  for (const sentence of sentences) lines(sentence, BODY, 'normal');
  return { shapes, bottom: y };
}

/**
 * A ruler along the cloth, in 10 cm or in quarters of a yard, to the end of what is bought; and the
 * length of the lay.
 */
function lengthScale(
  unit: ClothWidth['unit'],
  x: number,
  top: number,
  long: number,
  lay: number,
): readonly Shape[] {
  const [value, word] = unit === 'in' ? ([9, 'in'] as const) : ([10, 'cm'] as const);
  const pitch = toMillimeters(value, word) / REDUCTION;
  const whole = Math.ceil(long / pitch - ARITHMETIC);
  const marks = [...Array.from({ length: whole }, (_, i) => i * pitch), long];
  const level = (y: number): number => y + CAP_MIDDLE * SMALL;
  const end = top + lay / REDUCTION;
  const line = { color: SOFT_INK, width: 0.3 };
  const shapes: Shape[] = [polyline('ruler', [point(x, top), point(x, top + long)], line)];
  for (const mark of marks) {
    const y = top + mark;
    shapes.push(polyline('ruler', [point(x, y), point(x + 2, y)], line));
    const number = trimmed((mark / pitch) * value, 2);
    const label = mark === long ? `${number} ${word}` : number;
    // The end of the lay has its own words there, and so has the end of the cloth.
    const crowded = mark < long && long - mark <= SMALL;
    if (Math.abs(y - end) > SMALL && !crowded)
      shapes.push(text(label, point(x + 3, level(y)), SMALL, { color: SOFT_INK }));
  }
  const words = `${trimmed(fromMillimeters(lay, unit), 1)} ${word}`;
  shapes.push(
    polyline('lay-end', [point(x - 1, end), point(x + 3, end)], { color: INK, width: 0.4 }),
    text(words, point(x + 3.5, level(end)), SMALL, { weight: 'bold' }),
  );
  return shapes;
}
