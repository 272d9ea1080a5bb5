/** What a file states of itself above or beside its table, such as `# unit: cm` and `# base: 12`. */
import type { SaidLine, Stated } from './said-line';
import { allStated, saidLine } from './said-line';
import type { SheetRecord } from './sheet';
import type { StatementName } from './statement-words';
import { statementsIn } from './statement-words';
import {
  seemsFraction,
  seemsOtherUnit,
  seemsOtherWay,
  seemsScale,
  seemsUnit,
  seemsUnitBesides,
} from './seeming';
import { excerpt, isBlank, tidyText } from './tidy-text';
import { oneUnit } from './unit-statement';
import { InputError } from '../errors';
import type { LengthUnit } from '../units';

/** The comments of a file and the lines above its header. */
export interface Statements {
  /** Name for messages. */
  readonly file: string;
  readonly comments: readonly SaidLine[];
}

/** A title line states what it states with or without `#`: `unit: cm`, or `unit` and `cm`. */
export function statementsOf(
  file: string,
  comments: readonly SaidLine[],
  titles: readonly SheetRecord[],
): Statements {
  const lines = titles.map(({ row, cells }) => {
    const [first = '', ...rest] = cells.map(tidyText).filter((cell) => !isBlank(cell));
    const marked = `${first}: ${rest.join(', ')}`;
    // A cell with the name of a statement has its colon at the border of the cell.
    const isName = rest.length > 0 && !/[:=]/u.test(first) && statementsIn(marked)[0]?.name;
    return saidLine(isName ? marked : [first, ...rest].join(', '), { file, row });
  });
  return { file, comments: [...comments, ...lines].sort((a, b) => a.place.row - b.place.row) };
}

/**
 * What a line such as `# base: 12` states, and its place; undefined if none does. Throws InputError
 * `sheet-malformed` where two lines state different things.
 */
export function statedBy(
  statements: Statements,
  name: Exclude<StatementName, 'unit'>,
): Stated | undefined {
  const [first, ...others] = allStated(statements.comments, name);
  const other = others.find(({ text }) => text !== first?.text);
  if (first === undefined || other === undefined) return first;
  throw new InputError('sheet-malformed', {
    what: `the file states its ${name} twice, as ${excerpt(first.text)} in row ${first.place.row ?? '?'}`,
    allowed: 'one statement of each kind',
    got: excerpt(other.text),
    place: other.place,
  });
}

/** Characters. What is longer is prose, and states nothing. */
const LONGEST_STATEMENT = 200;

/** What a line may seem to state in words that are not read. */
export interface Unread {
  /** In words, such as `the unit`. */
  readonly what: string;
  readonly seems: (text: string) => boolean;
  /** The line to be written instead. */
  readonly allowed: string;
  /** Statements in which to look besides prose. */
  readonly also?: readonly StatementName[];
}

/** What is said to whoever meant something else by a line that seems to state something. */
export const REMARK = 'a remark about something else in a line "# not read: ..."';

/** Throws InputError `sheet-malformed` for a line that seems to state something in other words. */
export function refuseUnread(
  { comments }: Pick<Statements, 'comments'>,
  { what, seems, allowed, also = [] }: Unread,
): void {
  for (const line of comments) {
    if (!isSeeming(line, { seems, also })) continue;
    throw new InputError('sheet-malformed', {
      what: `a line seems to state ${what}, but in words that are not understood`,
      allowed: `${allowed}; ${REMARK}`,
      got: excerpt(line.text),
      place: line.place,
    });
  }
}

/** Whether what a line says besides its statements, in part or together, seems to be this. */
export function isSeeming(
  { parts, text: line }: SaidLine,
  { seems, also = [] }: Pick<Unread, 'seems' | 'also'>,
): boolean {
  const prose = parts
    .filter(({ name }) => name === undefined || also.includes(name))
    .map(({ text }) => text);
  // What `and`, a comma or a slash parts may say something together only.
  const together = prose.length === parts.length ? [line] : [];
  return [...new Set([...prose, prose.join(', '), ...together])].some(
    (part) => part.length <= LONGEST_STATEMENT && seems(part),
  );
}

/**
 * The one unit that a file states and that the labels of its columns name; undefined if neither
 * does. Throws InputError `unit-unknown`, `unit-contradicted`, and `sheet-malformed` for a line that
 * seems to state it where nothing else does.
 */
export function agreedUnit(
  statements: Statements,
  labeled: Iterable<LengthUnit>,
): LengthUnit | undefined {
  const unit = oneUnit([
    ...allStated(statements.comments, 'unit'),
    ...[...labeled].map((text) => ({ text, place: { file: statements.file } })),
  ]);
  refuseCounting(statements, unit);
  if (unit !== undefined) return unit;
  refuseUnread(statements, {
    what: 'the unit',
    seems: seemsUnit,
    allowed: UNIT_LINE,
  });
  return undefined;
}

const UNIT_LINE = 'a line "# unit: in", "# unit: cm" or "# unit: mm"';

/** The same, or else `usual`. Throws InputError `unit-missing` where there is neither, too. */
export function unitOrUsual(
  statements: Statements,
  labeled: Iterable<LengthUnit>,
  usual: LengthUnit | undefined,
): LengthUnit {
  const unit = agreedUnit(statements, labeled) ?? usual;
  if (unit !== undefined) return unit;
  throw new InputError('unit-missing', {
    what: 'the file does not say in which unit it is',
    allowed: 'a line such as "# unit: cm", with in, cm or mm',
    place: { file: statements.file },
  });
}

/**
 * Throws InputError `sheet-malformed` for a line by which numbers seem to count fractions of a unit,
 * another unit than `unit` or one that is not read, or lengths at another scale than 1:1.
 */
export function refuseCounting(statements: Statements, unit: LengthUnit | undefined): void {
  refuseUnread(statements, {
    what: 'that numbers count fractions of a unit',
    seems: seemsFraction,
    allowed: `whole units, ${UNIT_LINE}, and fractions in the cells, such as 3/16`,
    also: ['title', 'pieces'],
  });
  refuseUnread(statements, {
    what: 'another unit',
    seems: (text) => seemsOtherUnit(text) || (unit !== undefined && seemsUnitBesides(text, unit)),
    allowed: UNIT_LINE,
    also: ['title', 'pieces'],
  });
  refuseUnread(statements, {
    what: 'a scale',
    seems: seemsScale,
    allowed: 'lengths at full size, and a line "# scale: 1:1" or none',
    also: ['title', 'pieces'],
  });
}

/**
 * 1 if y runs down, as in the engine's own files, or -1 for a file with the line `# y: up`. Throws
 * InputError `bad-option` for anything else, and `sheet-malformed` for a line that seems to say another
 * direction, or one that is not understood.
 */
export function statedDown(statements: Statements): 1 | -1 {
  const stated = statedBy(statements, 'y');
  const way = stated?.text.toLowerCase() === 'up' ? 'up' : 'down';
  refuseUnread(statements, {
    what: `a direction of the axes${stated === undefined ? '' : ` besides that y runs ${way}`}`,
    seems: (text) => seemsOtherWay(text, way),
    allowed: 'a line "# y: up" or "# y: down" alone; x runs from the center to the side',
    also: ['title', 'pieces'],
  });
  if (stated === undefined) return 1;
  if (/^down$/iu.test(stated.text)) return 1;
  if (/^up$/iu.test(stated.text)) return -1;
  throw new InputError('bad-option', {
    what: 'the file states an unknown direction of y',
    allowed: 'down or up',
    got: stated.text,
    place: stated.place,
  });
}
