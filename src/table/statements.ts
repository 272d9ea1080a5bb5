/** What a file states of itself above or beside its table, such as `# unit: cm` and `# base: 12`. */
import type { SheetComment, SheetRecord } from './sheet';
import { excerpt, isBlank, tidyText } from './tidy-text';
import { unitNamed } from './unit-name';
import type { Place } from '../errors';
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import { LENGTH_UNITS } from '../units';

/** The comments of a file and the lines above its header. */
export interface Statements {
  /** Name for messages. */
  readonly file: string;
  readonly comments: readonly SheetComment[];
}

/** A title line states what it states with or without `#`: `unit: cm`, or `unit` and `cm`. */
export function statementsOf(
  file: string,
  comments: readonly SheetComment[],
  titles: readonly SheetRecord[],
): Statements {
  const lines = titles.map(({ row, cells }): SheetComment => {
    const [first = '', ...rest] = cells.map(tidyText).filter((cell) => !isBlank(cell));
    const isWhole = rest.length === 0 || /[:=]/u.test(first);
    return { row, text: isWhole ? [first, ...rest].join(', ') : `${first}: ${rest.join(', ')}` };
  });
  return { file, comments: [...comments, ...lines].sort((a, b) => a.row - b.row) };
}

/** What people write where the engine's own files have the shorter word. */
const ALSO: ReadonlyMap<string, string> = new Map([
  ['units', 'unit'],
  ['measurements in', 'unit'],
  ['all measurements in', 'unit'],
  ['y axis', 'y'],
  ['y-axis', 'y'],
  ['base size', 'base'],
  ['sample size', 'base'],
]);

/** A unit without a colon: `units cm`, `cm`, `all lengths in cm`. */
const UNIT_ALONE = /^(?:units? |(?:[\p{L}]+ ){0,4}in )?\(?(?<unit>\p{L}+)\)?\.?$/iu;
/** A direction of y without a colon: `y up`, `y runs up`. */
const DIRECTION_ALONE = /^y(?:[- ]axis)?(?: runs)? (?<way>up|down)\.?$/iu;

/** A statement parted into its name and what it states; both empty for any other line. */
function parted(line: string): readonly [name: string, stated: string] {
  const text = tidyText(line);
  const unit = unitNamed(UNIT_ALONE.exec(text)?.groups?.unit ?? '');
  if (unit !== undefined) return ['unit', unit];
  const way = DIRECTION_ALONE.exec(text)?.groups?.way;
  if (way !== undefined) return ['y', way];
  const [, key = '', value = ''] = /^([^:=]+)[:=](.*)$/u.exec(text) ?? [];
  const word = tidyText(key).toLowerCase();
  const name = ALSO.get(word) ?? word;
  const stated = tidyText(value);
  return [name, name === 'unit' ? (unitNamed(stated) ?? stated) : stated];
}

/**
 * What a line such as `# base: 12` states, and its place; undefined if none does. Throws InputError
 * `sheet-malformed` where two lines state different things.
 */
export function statedBy(
  { comments, file }: Statements,
  name: string,
): { readonly text: string; readonly place: Place } | undefined {
  const [first, ...others] = comments.flatMap(({ row, text }) => {
    const [key, stated] = parted(text);
    return key === name ? [{ text: stated, place: { file, row } }] : [];
  });
  const other = others.find(({ text }) => text !== first?.text);
  if (first === undefined || other === undefined) return first;
  throw new InputError('sheet-malformed', {
    what: `the file states its ${name} twice, as ${excerpt(first.text)} in row ${first.place.row}`,
    allowed: 'one statement of each kind',
    got: excerpt(other.text),
    place: other.place,
  });
}

/** The unit that `# unit: cm` states. Throws InputError `unit-unknown`. */
export function statedUnit(statements: Statements): LengthUnit | undefined {
  const stated = statedBy(statements, 'unit');
  if (stated === undefined) return undefined;
  const unit = unitNamed(stated.text);
  if (unit !== undefined) return unit;
  throw new InputError('unit-unknown', {
    what: 'the file states an unknown unit',
    allowed: LENGTH_UNITS.join(', '),
    got: stated.text,
    place: stated.place,
  });
}

/**
 * The one unit that a file states and that the labels of its columns name; undefined if neither
 * does. Throws InputError `unit-contradicted`.
 */
export function agreedUnit(
  statements: Statements,
  labeled: Iterable<LengthUnit>,
): LengthUnit | undefined {
  const stated = statedUnit(statements);
  const [unit, ...others] = new Set([...(stated === undefined ? [] : [stated]), ...labeled]);
  if (others.length === 0) return unit;
  throw new InputError('unit-contradicted', {
    what: 'the file names more than one unit',
    allowed: 'one unit, by columns such as dx_in or dx_cm, or by a line "# unit: in"',
    got: [unit, ...others].join(', '),
    place: { file: statements.file },
  });
}

/**
 * 1 if y runs down, as in the engine's own files, or -1 for a file with the line `# y: up`. Throws
 * InputError `bad-option` for anything else.
 */
export function statedDown(statements: Statements): 1 | -1 {
  const stated = statedBy(statements, 'y');
  if (stated === undefined || /^down$/iu.test(stated.text)) return 1;
  if (/^up$/iu.test(stated.text)) return -1;
  throw new InputError('bad-option', {
    what: 'the file states an unknown direction of y',
    allowed: 'down or up',
    got: stated.text,
    place: stated.place,
  });
}
