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
  /** More of the kind in the same input, each to be mended too; the problem is that of the first. */
  readonly also?: readonly InputProblem[];
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

/**
 * What `read` makes of each item. Where it refuses some, throws one InputError for all of them: that of the
 * first, and the others behind it.
 */
export function readEach<Item, Read>(
  items: readonly Item[],
  read: (item: Item, index: number) => Read,
): readonly Read[] {
  const refused: InputError[] = [];
  const all = items.flatMap((item, index) => {
    try {
      return [read(item, index)];
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      refused.push(error);
      return [];
    }
  });
  const [first, ...others] = refused;
  if (first === undefined) return all;
  if (others.length === 0) throw first;
  const also = others.flatMap(({ problem }) => [problem, ...(problem.also ?? [])]);
  throw new InputError(first.code, {
    ...first.problem,
    also: [...(first.problem.also ?? []), ...also],
  });
}

/** Problems that are told behind the first; the rest is counted. */
const MOST_ALSO = 7;

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
  problem: InputProblem,
  fieldWord: (field: string) => string = (field) => field,
): string {
  const { what, near = [], allowed, orField, got, place } = problem;
  const where = place === undefined ? '' : placeText(place, fieldWord);
  const ways = [allowed, orField === undefined ? undefined : fieldWord(orField)].filter(
    (way) => way !== undefined,
  );
  return [
    `${where === '' ? '' : `${where}: `}${cut(what, MOST_ALLOWED)}.`,
    near.length === 0 ? '' : `Did you mean ${inWords(near)}?`,
    ways.length === 0 ? '' : `Allowed: ${ways.map((way) => cut(way, MOST_ALLOWED)).join(', or ')}.`,
    got === undefined ? '' : `Got: ${gotText(got)}.`,
    alsoText(problem, fieldWord),
  ]
    .filter((part) => part !== '')
    .join(' ');
}

/**
 * The others of a problem by their places, with what is not as with the first: `Also row 3, column 5
 * (waist_girth, size 12): a measurement is not a number, got x; row 4, column 4 (hip_girth, size 10), got nothing;
 * and 2 more.`
 */
function alsoText(first: InputProblem, fieldWord: (field: string) => string): string {
  const { also = [] } = first;
  if (also.length === 0) return '';
  const { file, field } = first.place ?? {};
  const told = also.slice(0, MOST_ALSO).map(({ what, near = [], got, place = {} }) => {
    const { file: ownFile, field: ownField, ...within } = place;
    const where = placeText(
      {
        ...within,
        ...(ownFile === undefined || ownFile === file ? {} : { file: ownFile }),
        ...(ownField === undefined || ownField === field ? {} : { field: ownField }),
      },
      fieldWord,
    );
    const saying = what === first.what ? '' : cut(what, MOST_GOT);
    const typed = got === undefined ? '' : `got ${gotText(got)}`;
    const meant = near.length === 0 ? '' : ` (did you mean ${inWords(near)}?)`;
    const subject = [where, saying].filter((part) => part !== '').join(': ');
    return [subject, typed].filter((part) => part !== '').join(', ') + meant;
  });
  const rest = also.length - told.length;
  return `Also ${[...told, ...(rest > 0 ? [`and ${rest} more`] : [])].join('; ')}.`;
}

function gotText(got: string): string {
  return got === '' ? 'nothing' : cut(got, MOST_GOT);
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
