/** One cell of a chart as a body measurement, or why it cannot be one. */
import type { InputErrorCode, Place } from '../errors';
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import { UNIT_WORDS, toMillimeters } from '../units';
import { dateWords } from '../table/date-cell';
import { mayPartThousands, parseNumberCell } from '../table/number-cell';
import { excerpt, tidyText } from '../table/tidy-text';

/** A length in millimeters, or the refusal of the cell. */
export type CellReading =
  | { readonly kind: 'length'; readonly mm: number }
  | {
      readonly kind: 'refused';
      readonly code: InputErrorCode;
      readonly what: string;
      readonly allowed: string;
    };

/** `1 020` and `1'020` are no decimals in any habit. */
const PARTED = /^\d{1,3}(?:[ '’.,]\d{3})+$/u;
/** `26/28` is a fraction only by accident: no body measurement is a part of a unit. */
const RANGE = /^\d+ ?\/ ?\d+$/u;

/** Reads a cell of a chart whose lengths are in `unit`. */
export function readCell(text: string, unit: LengthUnit): CellReading {
  const allowed = `a number of ${UNIT_WORDS[unit]} above zero, such as ${EXAMPLES[unit]}`;
  const refused = (code: InputErrorCode, what: string): CellReading => ({
    kind: 'refused',
    code,
    what,
    allowed,
  });

  const cell = parseNumberCell(text);
  switch (cell.kind) {
    case 'blank':
      return refused('cell-missing', 'a measurement is missing, and is to be filled in');
    case 'not-a-number':
      return refused(
        'cell-not-a-number',
        `a measurement is not a number${withoutMark(text)}${dateWords(text)}${stepWords(text)}`,
      );
    case 'number':
      if (cell.value <= 0) {
        return refused('cell-not-positive', 'a measurement is not above zero');
      }
      if (cell.unit !== undefined && cell.unit !== unit) {
        return refused(
          'unit-contradicted',
          `a cell is in ${UNIT_WORDS[cell.unit]}, its chart in ${UNIT_WORDS[unit]}`,
        );
      }
      if (RANGE.test(tidyText(text)) || (unit === 'mm' && mayPartThousands(text))) {
        return refused(
          'cell-not-a-number',
          `a measurement can be read in two ways${withoutMark(text)}`,
        );
      }
      return { kind: 'length', mm: toMillimeters(cell.value, unit) };
  }
}

/** Asks whether a mark that parts thousands was meant as one. */
function withoutMark(text: string): string {
  const tidy = tidyText(text);
  return PARTED.test(tidy) ? ` (did you mean ${tidy.replace(/\D/gu, '')}?)` : '';
}

/** What a row grows by stands where a girth is asked for. */
function stepWords(text: string): string {
  return /^\+ ?[\d.,]/u.test(tidyText(text))
    ? ' but what it grows by, and a chart has the measurement of each size'
    : '';
}

/** The error of a refused cell, for the caller to throw. */
export function cellError(
  reading: Extract<CellReading, { kind: 'refused' }>,
  text: string,
  place: Place,
): InputError {
  const { code, what, allowed } = reading;
  return new InputError(code, { what, allowed, got: excerpt(text), place });
}

const EXAMPLES: Readonly<Record<LengthUnit, string>> = {
  in: '`26.5` or `26 1/2`',
  cm: '`67.5`',
  mm: '`675`',
};
