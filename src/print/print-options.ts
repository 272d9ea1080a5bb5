/** What can be chosen for printing, read from texts. */
import { lengthWithUnit } from '../table/length-with-unit';
import { InputError } from '../errors';
import type { BookletChoice } from './booklet/booklet';
import type { Paper } from './paper';
import { readPaper } from './paper';

/** How sheets are put together: one glued on a strip of the other, or edge to edge. */
export const JOINS = ['overlap', 'butt'] as const;
/** One of them. */
export type SheetJoin = (typeof JOINS)[number];

/** Choices as a person writes them. */
export interface PrintRequest {
  /** Papers such as `a4`, `letter`, `roll=36in`, `projector`. */
  readonly paper: readonly string[];
  /** What a printer leaves blank along each side of a sheet, such as `10mm`; 10 mm if absent. */
  readonly margin?: string;
  /** `overlap` if absent. */
  readonly join?: SheetJoin;
  /** What stands before the sheets; `full` if absent. */
  readonly booklet?: BookletChoice;
}

/** Choices that were read and fit together. */
export interface PrintOptions {
  readonly papers: readonly Paper[];
  /** mm. */
  readonly margin: number;
  readonly join: SheetJoin;
  readonly booklet: BookletChoice;
}

/** mm. Most home printers reach within 3 to 6 mm of the edge; a few leave more at one end. */
const MARGIN = 10;

/** Throws InputError `paper-unknown`, and `bad-option` for a margin without its unit or that leaves too little room. */
export function readPrintOptions({
  paper,
  margin,
  join = 'overlap',
  booklet = 'full',
}: PrintRequest): PrintOptions {
  const papers = paper.map(readPaper);
  const names = papers.map(({ name }) => name);
  const twice = names.find((name, i) => names.indexOf(name) !== i);
  if (twice !== undefined)
    throw new InputError('bad-option', {
      what: 'the paper is asked for twice',
      allowed: 'each paper once, and one roll',
      got: twice,
      place: { field: 'paper' },
    });
  const width = margin === undefined ? MARGIN : lengthWithUnit(margin, 'mm', 'margin');
  const most = Math.min(...papers.map(widestMargin));
  if (width === undefined || !(width >= 0) || width > most)
    throw new InputError('bad-option', {
      what: 'the margin is not usable',
      allowed: `a length of 0 to ${most} mm on the paper chosen, such as 10mm or 3/8in`,
      got: margin ?? `${MARGIN}mm`,
      place: { field: 'margin' },
    });
  return { papers, margin: width, join, booklet };
}

/** mm that the first page needs inside its margins: both test squares and what stands beside them. */
const FRONT_ROOM = { width: 165, height: 238 } as const;

/** Whole millimeters that leave room for the test squares. */
function widestMargin(paper: Paper): number {
  if (paper.kind !== 'sheet') return 50;
  const spare = Math.min(paper.width - FRONT_ROOM.width, paper.height - FRONT_ROOM.height);
  return Math.min(50, Math.floor(spare / 2));
}
