/** Papers: sheets of the standards, rolls of any width, and the picture of a projector. */
import { lengthWithUnit } from '../table/length-with-unit';
import { InputError } from '../errors';
import { toMillimeters } from '../units';
import { wantedNames } from '../table/near-names';

/** A sheet in mm, `width` the shorter side. */
export interface SheetPaper {
  readonly kind: 'sheet';
  readonly name: string;
  readonly width: number;
  readonly height: number;
}

/** Paper from a roll: as long as it needs to be. */
export interface RollPaper {
  readonly kind: 'roll';
  readonly name: string;
  readonly width: number;
}

/** One picture without paper. */
export interface ProjectorPicture {
  readonly kind: 'projector';
  readonly name: string;
}

/** What a pattern can be printed on, told apart by `kind`; lengths in mm. */
export type Paper = SheetPaper | RollPaper | ProjectorPicture;

const iso = (name: string, width: number, height: number): SheetPaper => ({
  kind: 'sheet',
  name,
  width,
  height,
});
const ansi = (name: string, width: number, height: number): SheetPaper =>
  iso(name, toMillimeters(width, 'in'), toMillimeters(height, 'in'));

/** The A series of ISO 216 in mm; sizes A and B of ANSI/ASME Y14.1 in inches, by their trade names. */
export const SHEETS: readonly SheetPaper[] = [
  iso('a4', 210, 297),
  iso('a3', 297, 420),
  iso('a2', 420, 594),
  iso('a1', 594, 841),
  iso('a0', 841, 1189),
  ansi('letter', 8.5, 11),
  ansi('tabloid', 11, 17),
  // What A4 and Letter have in common, centered on either when it is printed at its own size.
  iso('a4-letter', 210, toMillimeters(11, 'in')),
];

/** The sheet of that name. Throws a RangeError if there is none. */
export function sheetNamed(name: string): SheetPaper {
  const found = SHEETS.find((sheet) => sheet.name === name);
  if (found === undefined) throw new RangeError(`there is no sheet ${name}`);
  return found;
}

/** The name of a sheet as it is written: `A4`, `Letter`, `A4 or Letter`. */
export function paperTitle({ name }: SheetPaper): string {
  const titles = name.split('-').map((part) => part.charAt(0).toUpperCase() + part.slice(1));
  return titles.join(' or ');
}

/** mm. Plotters take rolls from A4 width up to the widest of plotter paper. */
const ROLL_LEAST = 200;
const ROLL_MOST = 2500;

/**
 * The paper that a text names: `a4`, `letter`, `roll=36in`, `projector`. Throws InputError
 * `paper-unknown`, and `bad-option` for a width without its unit.
 */
export function readPaper(text: string): Paper {
  const name = text.trim().toLowerCase();
  if (name === 'projector') return { kind: 'projector', name };
  const roll = /^roll\s*=\s*(.+)$/.exec(name);
  if (roll !== null) {
    const width = lengthWithUnit(roll[1] ?? '', 'mm', 'paper');
    if (width !== undefined && width >= ROLL_LEAST && width <= ROLL_MOST) {
      return { kind: 'roll', name: 'roll', width };
    }
  }
  const sheet = SHEETS.find((paper) => paper.name === name);
  if (sheet !== undefined) return sheet;
  throw new InputError('paper-unknown', {
    what: 'there is no such paper',
    ...wantedNames(
      text,
      [...SHEETS.map((paper) => paper.name), 'projector'],
      `${SHEETS.map((paper) => paper.name).join(', ')}, projector, or roll=<width> ` +
        `with a width of ${ROLL_LEAST} to ${ROLL_MOST} mm, such as roll=36in`,
    ),
    got: text,
    place: { field: 'paper' },
  });
}
