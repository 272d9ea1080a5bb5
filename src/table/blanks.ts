/** What a blank cell or a dash stands for in a sheet. */
import { InputError } from '../errors';
import type { Statements } from './statements';
import { statedBy } from './statements';
import { withPlainHyphens } from './tidy-text';
import type { TypedCell } from './typed-table';

/** How a sheet writes zero besides `0`. */
export interface Blanks {
  /** Tells a cell that says nothing. */
  readonly isBlank: (cell: TypedCell) => boolean;
  /** mm that such a cell stands for; undefined where it is missing. */
  readonly mm: 0 | undefined;
}

/** The line `# blank: 0` makes zeros of empty cells and of dashes. Throws InputError `bad-option`. */
export function statedBlanks(statements: Statements): Blanks {
  const stated = statedBy(statements, 'blank');
  if (stated === undefined) return { isBlank: ({ text }) => text === '', mm: undefined };
  if (/^(?:0|zeros?)$/iu.test(stated.text)) {
    return { isBlank: (cell) => cell.text === '' || isDash(cell), mm: 0 };
  }
  throw new InputError('bad-option', {
    what: 'the file states an unknown meaning of blank cells',
    allowed: '# blank: 0, or no such line where a blank is a number left out',
    got: stated.text,
    place: stated.place,
  });
}

/** True for a cell with nothing but a dash, of any length. */
export function isDash({ text }: TypedCell): boolean {
  return /^-+$/u.test(withPlainHyphens(text));
}
