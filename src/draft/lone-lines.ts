/** Lines above the rows of a style file or a project that say what only a row can set. */
import { InputError } from '../errors';
import { matchName } from '../table/name-match';
import type { LinePart } from '../table/statement-words';
import type { Statements } from '../table/statements';
import { REMARK } from '../table/statements';
import { excerpt, tidyText } from '../table/tidy-text';
import type { TypedSetting } from './style-file';

/** What a line may state of such a file. */
const STATED: readonly (string | undefined)[] = [
  ...['unit', 'title', 'designer', 'version', 'date', 'copyright', 'based on', 'not read'],
];

const MARKED = /^(?<label>[^:=]+?)\s*[:=]\s*(?<value>.+)$/u;
/** `paper letter`, where the line states something else beside it. */
const BARE = /^(?<label>\S+)\s(?<value>\S+)$/u;

/**
 * Throws InputError `sheet-malformed` for a line such as `# base: 12` that gives one of these `names` a
 * value, where no row gives it the same: whoever wrote it takes it for read.
 */
export function refuseLoneLines(
  { comments }: Statements,
  rows: readonly Pick<TypedSetting, 'parameter' | 'value'>[],
  names: readonly string[],
): void {
  for (const { text, parts, place } of comments) {
    for (const part of parts) {
      const { label = '', value = '' } = ordered(part, parts)?.groups ?? {};
      const name = matchName(label, names);
      if (name === undefined) continue;
      const typed = rows.find(({ parameter }) => parameter === name)?.value;
      if (typed !== undefined && tidyText(typed) === tidyText(value)) continue;
      throw new InputError('sheet-malformed', {
        what: `a line above the rows gives ${name} a value, which is read from rows alone`,
        allowed: `a row ${name},${value}; ${REMARK}`,
        got: excerpt(text),
        place,
      });
    }
  }
}

function ordered({ name, typed }: LinePart, all: readonly LinePart[]): RegExpExecArray | null {
  if (STATED.includes(name)) return null;
  const isAmongOthers = all.some((other) => other.name !== undefined);
  return MARKED.exec(typed) ?? (isAmongOthers ? BARE.exec(typed) : null);
}
