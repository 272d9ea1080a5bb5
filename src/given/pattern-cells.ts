/** Cells of a pattern file that are no plain words: kinds of points, cuttings, allowances. */
import { InputError } from '../errors';
import { WIDEST_ALLOWANCE } from '../pattern/allowance';
import { FACES } from '../pattern/face-up';
import type { Cutting } from '../pattern/piece';
import type { LengthUnit } from '../units';
import type { RawPoint } from './raw-point';
import { POINT_KINDS } from './raw-point';
import { isDash } from '../table/blanks';
import type { TypedCell } from '../table/typed-table';
import { mayPartThousands } from '../table/number-cell';
import { lengthCell } from '../table/typed-table';

/** An allowance in mm. Throws InputError `parameter-out-of-range` and what `lengthCell` throws. */
export function allowanceCell(cell: TypedCell, unit: LengthUnit): number {
  const width = lengthCell(cell, unit);
  if (width >= 0 && width <= WIDEST_ALLOWANCE) return width;
  throw new InputError('parameter-out-of-range', {
    what: 'an allowance is not usable',
    allowed: '0 to 20 cm',
    got: cell.text,
    place: cell.place,
  });
}

/** A coordinate in mm. Throws InputError `cell-not-a-number` for `1.090` in mm, and what `lengthCell` throws. */
export function placeCell(cell: TypedCell, unit: LengthUnit): number {
  const mm = lengthCell(cell, unit);
  const text = cell.text.replace(/^[-+\u2212] ?/u, '');
  if (unit !== 'mm' || !mayPartThousands(text)) return mm;
  throw new InputError('cell-not-a-number', {
    what: `a length can be read in two ways (did you mean ${text.replace(/\D/gu, '')}?)`,
    allowed: 'millimeters without a mark that parts thousands, and without a third decimal',
    got: cell.text,
    place: cell.place,
  });
}

/** The kind of a point. Throws InputError `outline-malformed`. */
export function kindCell({ text, place }: TypedCell): RawPoint['kind'] {
  const typed = text.toLowerCase();
  const kind = POINT_KINDS.find((known) => known === (typed || 'corner'));
  if (kind !== undefined) return kind;
  throw new InputError('outline-malformed', {
    what: 'the kind of a point is not known',
    allowed: `${POINT_KINDS.join(', ')}; a corner if blank`,
    got: text,
    place,
  });
}

/** Whether an edge lies on the fold. Throws InputError `outline-malformed`. */
export function foldCell(cell: TypedCell): boolean {
  const typed = cell.text.toLowerCase();
  if (typed === '' || isDash(cell) || /^(?:no|n|0|false|none)$/u.test(typed)) return false;
  if (/^(?:(?:(?:cut )?on )?(?:the )?fold|yes|y|x|1|true|\u2713)$/u.test(typed)) return true;
  throw new InputError('outline-malformed', {
    what: 'it is not clear whether the edge lies on the fold',
    allowed: 'fold or yes; blank or no',
    got: cell.text,
    place: cell.place,
  });
}

/** How often a piece is cut, such as `1 on fold` or `1 of lining, wrong side up`. Throws InputError `outline-malformed`. */
export function cuttingCell({ text, place }: TypedCell): Cutting {
  const parts =
    /^(\d+)( on fold)?(?: of (shell|lining|interfacing))?(?:,? (right|wrong) side up)?$/iu.exec(
      text,
    );
  if (parts === null) {
    throw new InputError('outline-malformed', {
      what: 'it is not clear how often the piece is cut',
      allowed: 'such as 2, 1 on fold, 2 of lining, 1 of lining wrong side up',
      got: text,
      place,
    });
  }
  const cloth = (parts[3]?.toLowerCase() ?? 'shell') as Cutting['cloth'];
  const up = FACES.find((face) => face === parts[4]?.toLowerCase());
  return { cloth, count: Number(parts[1]), onFold: parts[2] !== undefined, ...(up && { up }) };
}
