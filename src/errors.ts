/** The one error of the engine for input that cannot be used. */

/** Where the trouble is; every field that is known is filled in. Rows and columns count from 1. */
export interface Place {
  readonly file?: string;
  readonly row?: number;
  readonly column?: number;
  readonly size?: string;
  readonly measurement?: string;
  readonly parameter?: string;
  readonly point?: string;
  /** The field of the request, such as `base` or `sizes`; the command line words it as its option. */
  readonly field?: string;
}

/** What a program may test for; the words of a message may change, its code does not. */
export type InputErrorCode =
  | 'bad-option'
  | 'file-unreadable'
  | 'file-unwritable'
  | 'file-too-large'
  | 'output-is-input'
  | 'output-changed'
  | 'csv-malformed'
  | 'character-unseen'
  | 'chart-empty'
  | 'chart-no-header'
  | 'unit-missing'
  | 'unit-unknown'
  | 'unit-contradicted'
  | 'measurement-missing'
  | 'measurement-twice'
  | 'measurement-doubtful'
  | 'cell-missing'
  | 'cell-not-a-number'
  | 'cell-not-positive'
  | 'cell-is-date'
  | 'size-missing'
  | 'size-twice'
  | 'size-unknown'
  | 'sizes-too-few'
  | 'range-turns'
  | 'standard-unknown'
  | 'population-unknown'
  | 'style-unknown'
  | 'parameter-unknown'
  | 'parameter-twice'
  | 'parameter-out-of-range'
  | 'formula-malformed'
  | 'formula-not-allowed'
  | 'formula-unknown-name'
  | 'formula-cycle'
  | 'formula-dimension'
  | 'formula-not-finite'
  | 'point-unknown'
  | 'sheet-malformed'
  | 'column-missing'
  | 'column-unknown'
  | 'piece-unknown'
  | 'point-twice'
  | 'outline-malformed'
  | 'base-missing'
  | 'rule-missing'
  | 'rule-twice'
  | 'rule-contradicted'
  | 'rule-unknown'
  | 'rule-moves-base'
  | 'rule-too-far'
  | 'edge-unknown'
  | 'seam-contradicted'
  | 'measure-unknown'
  | 'dxf-malformed'
  | 'rule-table-malformed'
  | 'paper-unknown'
  | 'paper-too-small'
  | 'paper-too-large'
  | 'character-unprintable';

/** What is wrong, what is allowed, what was got, and where. */
export interface InputProblem {
  readonly what: string;
  readonly allowed?: string;
  /** Names that are nearly what was got, nearest first; told as what was probably meant. */
  readonly near?: readonly string[];
  /** A field of the request that would mend it too: allowed is what `allowed` says, or this field. */
  readonly orField?: string;
  readonly got?: string;
  readonly place?: Place;
}

/** Input that cannot be used: tested for by its code, told by its message, found by its place. */
export class InputError extends Error {
  readonly code: InputErrorCode;
  readonly problem: InputProblem;
  readonly place: Place;

  constructor(code: InputErrorCode, problem: InputProblem) {
    super(problemText(problem));
    this.name = 'InputError';
    this.code = code;
    this.problem = problem;
    this.place = problem.place ?? {};
  }
}

/** Characters of a part of a message; more would hide what is wrong. */
const MOST_GOT = 300;
const MOST_ALLOWED = 1_000;

/** The beginning of a text, marked where more of it follows. */
export function cut(text: string, most: number): string {
  return text.length > most ? `${text.slice(0, most)}…` : text;
}

/**
 * A problem in sentences: `sizes, chart.csv: the chart has no such size. Allowed: 8, 10. Got: 9.`
 * What is long is cut. `fieldWord` words a field of the request as its caller knows it, by its own name
 * if absent.
 */
export function problemText(
  { what, near = [], allowed, orField, got, place }: InputProblem,
  fieldWord: (field: string) => string = (field) => field,
): string {
  const where = place === undefined ? '' : placeText(place, fieldWord);
  const ways = [allowed, orField === undefined ? undefined : fieldWord(orField)].filter(
    (way) => way !== undefined,
  );
  return [
    `${where === '' ? '' : `${where}: `}${cut(what, MOST_ALLOWED)}.`,
    near.length === 0 ? '' : `Did you mean ${inWords(near)}?`,
    ways.length === 0 ? '' : `Allowed: ${ways.map((way) => cut(way, MOST_ALLOWED)).join(', or ')}.`,
    got === undefined ? '' : `Got: ${got === '' ? 'nothing' : cut(got, MOST_GOT)}.`,
  ]
    .filter((part) => part !== '')
    .join(' ');
}

/** `a`, `a or b`, `a, b or c`. */
function inWords(names: readonly string[]): string {
  const last = names.slice(-1).join('');
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} or ${last}`;
}

/** A place in words: `chart.csv, row 3, column 4 (waist_girth, size 8)`. */
function placeText(place: Place, fieldWord: (field: string) => string): string {
  const position = [
    place.field === undefined ? undefined : fieldWord(place.field),
    place.file,
    place.row === undefined ? undefined : `row ${place.row}`,
    place.column === undefined ? undefined : `column ${place.column}`,
  ].filter((part) => part !== undefined);
  const subject = [
    place.measurement,
    place.parameter === undefined ? undefined : `parameter ${place.parameter}`,
    place.point === undefined ? undefined : `point ${place.point}`,
    place.size === undefined ? undefined : `size ${place.size}`,
  ]
    .filter((part) => part !== undefined)
    .map((part) => cut(part, MOST_GOT));
  if (position.length === 0) return subject.join(', ');
  return position.join(', ') + (subject.length === 0 ? '' : ` (${subject.join(', ')})`);
}
